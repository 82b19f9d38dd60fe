import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../context.js';
import type { PlacementSheet } from '../drawing/placement.js';
import { notKnown } from '../figures.js';
import { calculationView, calculationViews, CalculationViewSchema } from './calculations.js';
import { CautionSchema, siteCautions } from './cautions.js';
import { ClauseRowSchema, clauseStrip } from './clause-strip.js';
import { groundingItems, handoverItems, ItemSchema } from './handover-items.js';
import { JobViewSchema, jobView } from './job.js';
import { DEFERENCE, limitTexts } from './limits.js';
import { blockingItems, OpenItemGroupSchema, openItemGroups, OpenItemViewSchema } from './open-items.js';
import { placementView, PlacementViewSchema } from './placement.js';
import { ScheduleRowSchema, scheduleRows } from './schedule.js';
import { FactViewSchema, NotPlacedViewSchema, notPlacedViews, siteView } from './site.js';

/** The sheets of a permit sheet, in their order; with `--separate` each is a file. */
export const PERMIT_PARTS = [
  'summary',
  'drawing',
  'schedule',
  'open-items',
  'calculations',
  'clauses',
] as const;
export type PermitPart = (typeof PERMIT_PARTS)[number];

export const PermitSheetSchema = z.object({
  language: z.literal('en'),
  title: z.string(),
  style: z.string(),
  /** Which sheets this file holds. */
  parts: z.object({
    summary: z.boolean(),
    drawing: z.boolean(),
    schedule: z.boolean(),
    openItems: z.boolean(),
    calculations: z.boolean(),
    clauses: z.boolean(),
  }),
  job: JobViewSchema,
  blocking: z.array(OpenItemViewSchema),
  temperature: z.string(),
  facts: z.array(FactViewSchema),
  grounding: z.array(ItemSchema),
  handover: z.array(ItemSchema),
  cautions: z.array(CautionSchema),
  deference: z.string(),
  schedule: z.array(ScheduleRowSchema),
  placement: PlacementViewSchema,
  calculations: z.array(CalculationViewSchema),
  siteCalculations: z.array(CalculationViewSchema),
  openItems: z.array(OpenItemGroupSchema),
  notPlaced: z.array(NotPlacedViewSchema),
  clauses: z.array(ClauseRowSchema),
  limits: z.array(z.string()),
});
export type PermitSheetView = z.infer<typeof PermitSheetSchema>;

function temperatureText(plan: Plan): string {
  const fact = (field: string): string | undefined => plan.facts.find((f) => f.field === field)?.text;
  const lowest = fact('lowest_temp');
  if (lowest === undefined || lowest === '') return notKnown('the list states no lowest temperature');
  const source = fact('lowest_temp_source');
  return `${lowest}, source: ${source === undefined || source === '' ? notKnown('the list does not state it') : source}`;
}

/** The view of the permit sheet, or of some of its sheets. */
export function permitSheetView(
  plan: Plan,
  context: DocumentContext,
  sheets: readonly PlacementSheet[],
  parts: ReadonlySet<PermitPart>,
  style: string,
): PermitSheetView {
  return {
    language: 'en',
    title: `Permit sheet, job ${plan.job}`,
    style,
    parts: {
      summary: parts.has('summary'),
      drawing: parts.has('drawing'),
      schedule: parts.has('schedule'),
      openItems: parts.has('open-items'),
      calculations: parts.has('calculations'),
      clauses: parts.has('clauses'),
    },
    job: jobView(plan, context),
    blocking: blockingItems(plan),
    temperature: temperatureText(plan),
    facts: siteView(plan).facts,
    grounding: groundingItems(plan),
    handover: handoverItems(plan),
    cautions: siteCautions(plan),
    deference: DEFERENCE,
    schedule: scheduleRows(plan),
    placement: placementView(plan, sheets),
    calculations: calculationViews(plan),
    siteCalculations: plan.siteCalculations.map((c) => calculationView(c)),
    openItems: openItemGroups(plan),
    notPlaced: notPlacedViews(plan),
    clauses: clauseStrip(plan),
    limits: limitTexts(plan),
  };
}
