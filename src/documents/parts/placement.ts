import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { PlacementSheet } from '../drawing/placement.js';
import { drawing } from '../drawing/svg.js';
import { SvgSchema } from '../drawing/svg.js';
import { protectorSymbol } from '../drawing/symbols.js';

export const PlacementSheetSchema = z.object({
  number: z.number().int(),
  of: z.number().int(),
  first: z.boolean(),
  several: z.boolean(),
  svg: SvgSchema,
});

export const PlacementViewSchema = z.object({
  sheets: z.array(PlacementSheetSchema),
  /** The standard symbol of a protector, for the legend. */
  symbol: SvgSchema,
  legend: z.array(z.string()),
  /** Protectors that no equipment of the list can carry in the drawing. */
  undrawn: z.array(z.string()),
});
export type PlacementView = z.infer<typeof PlacementViewSchema>;

const LEGEND = [
  'Surge protector, channels to ground (IEC 60617, IEEE 315): its tag, and its reach along the cable.',
  '"Its run": not limited within its run. "No reach": its level and leads are above the withstand, or the withstand is not known.',
  'Two symbols in one dashed box: one housing that two ports share.',
  'Dashed frame on grey: a place. Figure over a line: length of the run, one way.',
  'Arrow: the line goes on where the words say.',
];

/** The placement drawing as a document shows it. */
export function placementView(plan: Plan, sheets: readonly PlacementSheet[]): PlacementView {
  const known = new Set(plan.site.equipments.map((e) => e.tag));
  return {
    sheets: sheets.map(({ number, of, svg }) => ({ number, of, first: number === 1, several: of > 1, svg })),
    symbol: drawing(24, 52, 'Symbol of a surge protector to ground', 'symbol', protectorSymbol(12, 3)),
    legend: [...LEGEND],
    undrawn: plan.protectors.filter((p) => !known.has(p.ports[0]?.equipment ?? '')).map((p) => p.tag),
  };
}
