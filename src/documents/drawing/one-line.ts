import type { Plan } from '../../model/plan.js';
import { drawing, rect, textAt } from './svg.js';

/** What the sheets leave for the drawing; mm. */
export interface OneLineRooms {
  readonly first: { readonly width: number; readonly height: number };
  readonly next: { readonly width: number; readonly height: number };
}

/** A one-line drawing on as many sheets as it needs. */
export interface OneLine {
  readonly sheets: readonly { svg: string; width: number; height: number; alt: string }[];
  readonly legend: readonly { svg: string; words: string }[];
}

/** Stands here until the drawing is there. */
export function oneLine(plan: Plan, rooms: OneLineRooms, family: 'ieee-315' | 'iec-60617'): Promise<OneLine> {
  const mm = 72 / 25.4;
  const width = Math.min(230, rooms.first.width);
  const alt = `One-line drawing of ${plan.job}, ${family}`;
  const svg = drawing(
    width * mm,
    110 * mm,
    alt,
    'one-line',
    rect(0, 0, width * mm, 110 * mm, { fill: 'none', stroke: '#000' }) +
      textAt(20, 40, alt, { 'font-size': 10 }),
  );
  return Promise.resolve({
    sheets: [{ svg, width, height: 110, alt }],
    legend: [
      {
        svg: drawing(20, 10, 'symbol', 'symbol', rect(0, 0, 20, 10, { fill: 'none', stroke: '#000' })),
        words: 'surge protector',
      },
    ],
  });
}
