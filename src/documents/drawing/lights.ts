import type { OwnerStrings, PlainLook } from '../../words/languages/owner-strings.js';
import type { LightGroup } from '../parts/owner-lights.js';
import { plainNumber } from '../parts/figures.js';
import { drawing, element, line, rect, textAt } from './svg.js';
import { lineWidth } from '../parts/text-width.js';

const FONT = 8.5;
const RADIUS = 6.5;
const GAP = 12;
/** Height of a row of pictures. */
const ROW = 45;
/** Width for pictures: beside a protector's place and its notes, or beside the notes alone. */
export const PICTURE_ROOM = { beside: 228, alone: 300 } as const;

/** A light by its look; each look has a shape and a word of its own, so that it reads without colour. */
export function lightSymbol(x: number, y: number, look: PlainLook, radius = RADIUS): string {
  const ring = { cx: x, cy: y, r: radius, stroke: '#000', 'stroke-width': 1.2 };
  if (look === 'lit') {
    const rays = [0, 45, 90, 135, 180, 225, 270, 315].map((angle) => {
      const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
      const [from, to] = [radius + 1.5, radius + 4];
      return line(x + c * from, y + s * from, x + c * to, y + s * to, {
        stroke: '#000',
        'stroke-width': 1.2,
      });
    });
    return element('circle', { ...ring, fill: '#ffd84d' }) + rays.join('');
  }
  if (look === 'flickers') {
    const half = `M ${x} ${y - radius} A ${radius} ${radius} 0 0 1 ${x} ${y + radius} Z`;
    return (
      element('circle', { ...ring, fill: '#fff' }) +
      element('path', { d: half, fill: '#ffd84d', stroke: '#000', 'stroke-width': 1.2 })
    );
  }
  if (look === 'dark') return element('circle', { ...ring, fill: '#555' });
  if (look === 'good') {
    const frame = { fill: '#fff', stroke: '#000', 'stroke-width': 1.2 };
    return rect(x - radius, y - radius + 1, 2 * radius, 2 * radius - 2, frame);
  }
  if (look === 'none') return line(x - radius, y, x + radius, y, { stroke: '#000', 'stroke-width': 1.2 });
  const mark = textAt(x, y + 3, '?', { 'text-anchor': 'middle', 'font-size': FONT });
  return element('circle', { ...ring, fill: '#fff', 'stroke-dasharray': '2.5 2' }) + mark;
}

interface Block {
  readonly inner: string;
  readonly width: number;
}

function groupBlock(group: LightGroup, strings: OwnerStrings): Block {
  let inner = '';
  let x = 0;
  for (const state of group.states) {
    const widths = state.lights.map((l) =>
      Math.max(26, lineWidth(`${l.number} ${strings.looks[l.look]}`, FONT, 400, 'Atkinson') + 6),
    );
    const lights = widths.reduce((a, b) => a + b, 0);
    inner += textAt(x, 8, state.state, { 'font-size': FONT, 'font-weight': 700 });
    let lightX = x;
    state.lights.forEach((light, index) => {
      const own = widths[index] ?? 26;
      inner += lightSymbol(lightX + own / 2, 22, light.look);
      inner += textAt(lightX + own / 2, 42, `${light.number} ${strings.looks[light.look]}`, {
        'text-anchor': 'middle',
        'font-size': FONT,
      });
      lightX += own;
    });
    x += Math.max(lineWidth(state.state, FONT, 700, 'Atkinson') + 4, lights) + GAP;
  }
  return { inner, width: x - GAP };
}

/** The pictures of one protector's lights, a column a state; a second group stands beside the first where there is room. */
export function lightsPicture(
  groups: readonly LightGroup[],
  strings: OwnerStrings,
  alt: string,
  room: number,
): string {
  let [x, y, width] = [0, 0, 0];
  const parts = groups.map((group) => {
    const block = groupBlock(group, strings);
    if (x > 0 && x + block.width > room) {
      x = 0;
      y += ROW;
    }
    const part = element('g', { transform: `translate(${plainNumber(x)} ${plainNumber(y)})` }, block.inner);
    x += block.width + 2 * GAP;
    width = Math.max(width, x - 2 * GAP);
    return part;
  });
  return drawing(width, y + ROW, alt, 'lights', parts.join(''));
}
