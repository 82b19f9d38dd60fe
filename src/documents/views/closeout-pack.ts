import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../context.js';
import type { PlacementSheet } from '../drawing/placement.js';
import {
  calculationView,
  calculationViews,
  CalculationViewSchema,
  leftOutParts,
  LeftOutSchema,
} from './calculations.js';
import { CautionSchema, siteCautions } from './cautions.js';
import { changeTexts } from './changes.js';
import { CheckListSchema, checkLists, RecordSchema, records } from './checks.js';
import { JobViewSchema, jobView } from './job.js';
import { DEFERENCE, limitTexts } from './limits.js';
import { blockingItems, OpenItemGroupSchema, openItemGroups, OpenItemViewSchema } from './open-items.js';
import { PhotoSchema, photoViews } from './photos.js';
import { placementView, PlacementViewSchema } from './placement.js';
import { ScheduleRowSchema, scheduleRows } from './schedule.js';
import { NotPlacedViewSchema, notPlacedViews, SiteViewSchema, siteView } from './site.js';
import { SourceViewSchema, sourceViews } from './sources.js';
import { WiringNoteSchema, wiringNotes } from './wiring-note.js';

export const CloseoutPackSchema = z.object({
  language: z.literal('en'),
  title: z.string(),
  style: z.string(),
  job: JobViewSchema,
  blocking: z.array(OpenItemViewSchema),
  /** Absent before the first pack. */
  changes: z.object({ lines: z.array(z.string()) }).nullable(),
  cautions: z.array(CautionSchema),
  deference: z.string(),
  schedule: z.array(ScheduleRowSchema),
  orders: z.array(z.object({ part: z.string(), quantity: z.number().int() })),
  placement: PlacementViewSchema,
  notes: z.array(WiringNoteSchema),
  calculations: z.array(CalculationViewSchema),
  leftOut: z.array(LeftOutSchema),
  siteCalculations: z.array(CalculationViewSchema),
  checkLists: z.array(CheckListSchema),
  records: z.array(RecordSchema),
  openItems: z.array(OpenItemGroupSchema),
  notPlaced: z.array(NotPlacedViewSchema),
  site: SiteViewSchema,
  photos: z.array(PhotoSchema),
  sources: z.array(SourceViewSchema),
  limits: z.array(z.string()),
});
export type CloseoutPackView = z.infer<typeof CloseoutPackSchema>;

/** The view of the closeout pack. */
export function closeoutPackView(
  plan: Plan,
  context: DocumentContext,
  sheets: readonly PlacementSheet[],
  style: string,
): CloseoutPackView {
  const { previous, photos } = context;
  return {
    language: 'en',
    title: `Closeout pack, job ${plan.job}`,
    style,
    job: jobView(plan, context),
    blocking: blockingItems(plan),
    changes: previous === undefined ? null : { lines: changeTexts(previous, plan) },
    cautions: siteCautions(plan),
    deference: DEFERENCE,
    schedule: scheduleRows(plan),
    orders: plan.orders.map((o) => ({ ...o })),
    placement: placementView(plan, sheets),
    notes: wiringNotes(plan, context.settings),
    calculations: calculationViews(plan),
    leftOut: leftOutParts(plan),
    siteCalculations: plan.siteCalculations.map((c) => calculationView(c)),
    checkLists: checkLists(plan),
    records: records(plan),
    openItems: openItemGroups(plan),
    notPlaced: notPlacedViews(plan),
    site: siteView(plan),
    photos: photoViews(plan, photos ?? []),
    sources: sourceViews(plan),
    limits: limitTexts(plan),
  };
}
