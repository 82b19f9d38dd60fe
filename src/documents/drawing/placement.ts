import type { Plan, PlannedProtector } from '../../model/plan.js';
import { drawnLength } from '../../words/lengths.js';
import { FONT, LINE } from './cell.js';
import { cellSvg } from './cell-svg.js';
import type { Layout } from './layout.js';
import { joints } from './joints.js';
import type { DrawnSheet, Room } from './sheets.js';
import { fits, layoutSheets, scaleFor, STRIP_GAP } from './sheets.js';
import { siteGraph } from './site-graph.js';
import { drawing, element, rect, textAt } from './svg.js';

/** One sheet of the placement drawing. */
export interface PlacementSheet {
  readonly number: number;
  readonly of: number;
  readonly svg: string;
  /** Size as drawn, in points. */
  readonly width: number;
  readonly height: number;
}

/** The reach of a protector as the drawing writes it. */
export function reachWord(protector: PlannedProtector, plan: Plan): string {
  const figures = protector.figures;
  if (figures === null || figures.up === null) return 'reach not known';
  if (figures.reach === null) return 'reach: its run';
  if (figures.reach === 0) return 'no reach';
  return `reach ${drawnLength(figures.reach, plan.basis)}`;
}

function altText(plan: Plan, sheet: DrawnSheet, number: number, of: number): string {
  const cells = sheet.strips.flatMap((strip) => strip.cells.map((c) => c.cell));
  const tags = new Set(cells.map((c) => c.unit.equipment.tag));
  const places = new Set(sheet.strips.flatMap((strip) => strip.frames.map((f) => f.title.join(' '))));
  const protectors = cells
    .flatMap((c) => [...c.rows.flatMap((r) => r.row.taps), ...c.shared.map((s) => s.protector)])
    .map((p) => `${p.tag} at ${p.ports.map((port) => `${port.equipment} ${port.port}`).join(' and ')}`);
  const runs = plan.site.runs.filter((r) => tags.has(r.from.equipment) && tags.has(r.to.equipment));
  return [
    `Single-line drawing of job ${plan.job}, sheet ${number} of ${of}.`,
    `Places: ${[...places].join('; ')}.`,
    `Equipment: ${[...tags].join(', ')}.`,
    `Runs: ${runs.length === 0 ? 'none' : runs.map((r) => `${r.from.equipment} to ${r.to.equipment}`).join(', ')}.`,
    `Surge protectors: ${protectors.length === 0 ? 'none' : protectors.join(', ')}.`,
  ].join(' ');
}

function framesSvg(strip: Layout): string {
  return strip.frames
    .map((frame) => {
      const box = rect(frame.x, frame.y, frame.width, frame.height, {
        fill: '#f3f3f3',
        stroke: '#555',
        'stroke-width': 0.9,
        'stroke-dasharray': '6 3',
        'data-place': frame.title.join(' '),
      });
      const title = frame.title.map((text, index) =>
        textAt(frame.x + 9, frame.y + LINE * (index + 1), text, { 'font-size': FONT }),
      );
      return box + title.join('');
    })
    .join('');
}

function routesSvg(strip: Layout): string {
  return strip.routes
    .map((points) => {
      const d = points
        .map((p, index) => `${index === 0 ? 'M' : 'L'} ${p.x.toFixed(2)} ${p.y.toFixed(2)}`)
        .join(' ');
      return element('path', { d, fill: 'none', stroke: '#000', 'stroke-width': 1.1, 'data-run': '' });
    })
    .join('');
}

/** A dot where runs of one port part: without it a branch reads as two lines that cross. */
function jointsSvg({ routes }: Layout): string {
  return joints(routes)
    .map(({ x, y }) =>
      element('circle', { cx: x.toFixed(2), cy: y.toFixed(2), r: 2.2, fill: '#000', 'data-joint': '' }),
    )
    .join('');
}

type SheetOf = (key: string) => number | null;

function stripSvg(strip: Layout, sheetOf: SheetOf): string {
  const cells = strip.cells.map((c) =>
    element('g', { transform: `translate(${c.x.toFixed(2)} ${c.y.toFixed(2)})` }, cellSvg(c.cell, sheetOf)),
  );
  return framesSvg(strip) + routesSvg(strip) + jointsSvg(strip) + cells.join('');
}

function sheetSvg(sheet: DrawnSheet, sheetOf: SheetOf): string {
  let y = 0;
  return sheet.strips
    .map((strip) => {
      const part = element('g', { transform: `translate(0 ${y.toFixed(2)})` }, stripSvg(strip, sheetOf));
      y += strip.height + STRIP_GAP;
      return part;
    })
    .join('');
}

/** The sheets of a site, laid out once and drawn for several rooms. */
export interface Placement {
  readonly sheets: readonly DrawnSheet[];
}

/**
 * Lays out the placement drawing: a single-line drawing of the site on as many sheets as it needs, each protector once, at
 * the end of the run that it guards.
 * @param plan the plan of the job
 * @param room for the drawing on one sheet, in points
 * @returns no sheet for a plan without equipment
 */
export async function layoutPlacement(plan: Plan, room: Room): Promise<Placement> {
  const graph = siteGraph(plan);
  const sheets = graph.units.length === 0 ? [] : await layoutSheets(graph, (p) => reachWord(p, plan), room);
  return { sheets };
}

/** True where the drawing is one sheet and goes onto a smaller room as well. */
export function fitsOn(placement: Placement, room: Room): boolean {
  const [only, ...more] = placement.sheets;
  return only !== undefined && more.length === 0 && fits(only, room);
}

/** Draws the sheets onto rooms of a size. */
export function drawPlacement(plan: Plan, placement: Placement, room: Room): PlacementSheet[] {
  const { sheets } = placement;
  const numbers = new Map(
    sheets.flatMap((sheet, index) =>
      sheet.strips.flatMap((s) =>
        s.cells.flatMap((c) => c.cell.rows.map((r) => [r.row.key, index + 1] as const)),
      ),
    ),
  );
  return sheets.map((sheet, index) => {
    const number = index + 1;
    const scale = scaleFor(sheet, room);
    const sheetOf = (key: string): number | null => {
      const other = numbers.get(key) ?? number;
      return other === number ? null : other;
    };
    const inner = element('g', { transform: `scale(${scale.toFixed(4)})` }, sheetSvg(sheet, sheetOf));
    const [width, height] = [sheet.width * scale, sheet.height * scale];
    const alt = altText(plan, sheet, number, sheets.length);
    return { number, of: sheets.length, width, height, svg: drawing(width, height, alt, 'placement', inner) };
  });
}
