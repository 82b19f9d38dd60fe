import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../parts/context.js';
import type { PlacementSheet } from '../drawing/placement.js';
import {
  calculationView,
  calculationViews,
  CalculationViewSchema,
  leftOutParts,
  LeftOutSchema,
} from '../parts/calculations.js';
import { CautionSchema, siteCautions } from '../parts/cautions.js';
import { changeTexts } from './changes.js';
import { CheckListSchema, checkLists, RecordSchema, records } from './checks.js';
import { isolationView, IsolationViewSchema } from './isolation-view.js';
import { JobViewSchema, jobView } from '../parts/job.js';
import { DEFERENCE, limitTexts } from '../parts/limits.js';
import {
  blockingItems,
  OpenItemGroupSchema,
  openItemGroups,
  OpenItemViewSchema,
} from '../parts/open-items.js';
import { PhotoSchema, photoViews } from './photos.js';
import { placementView, PlacementViewSchema } from '../parts/placement.js';
import { SettledViewSchema, settledViews } from '../parts/settled.js';
import { ScheduleRowSchema, scheduleRows } from '../parts/schedule.js';
import { NotPlacedViewSchema, notPlacedViews, SiteViewSchema, siteView } from '../parts/site.js';
import { SourceViewSchema, sourceViews } from '../parts/sources.js';
import { WiringNoteSchema, type WiringNote } from './wiring-note-view.js';

export const CloseoutPackSchema = z.object({
  language: z.literal('en'),
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  job: JobViewSchema.describe('Job, company, basis, revision, date and status'),
  blocking: z.array(OpenItemViewSchema).describe('The items that make the pack a draft'),
  /** Absent before the first pack. */
  changes: z.object({ lines: z.array(z.string()) }).nullable(),
  cautions: z.array(CautionSchema).describe('Safety messages after ANSI Z535.6 that fit the site'),
  isolation: IsolationViewSchema.describe(
    'How the site is made dead, step by step, and live again, with its log',
  ),
  deference: z.string().describe('The sentence that defers to local code, authority and licensed practice'),
  schedule: z.array(ScheduleRowSchema).describe('One line a housing'),
  orders: z.array(z.object({ part: z.string(), quantity: z.number().int() })).describe('Parts to order'),
  placement: PlacementViewSchema.describe('The placement drawing: its sheets, its symbol and its legend'),
  notes: z
    .array(WiringNoteSchema)
    .describe('A page of the wiring notes each: kinds of places that are wired alike'),
  calculations: z
    .array(CalculationViewSchema)
    .describe('Each calculation once, with the protectors that share it'),
  leftOut: z.array(LeftOutSchema).describe('Parts of the catalogue that were left out, and why'),
  siteCalculations: z.array(CalculationViewSchema).describe('Calculations about the site as a whole'),
  checkLists: z.array(CheckListSchema).describe('The checks of the installer, in the order of the work'),
  records: z.array(RecordSchema).describe('The commissioning record of each housing'),
  settled: z
    .array(SettledViewSchema)
    .describe(
      'Defaults that the company settled once, with who did and when; nobody is asked to confirm them',
    ),
  openItems: z.array(OpenItemGroupSchema).describe('Open items and items to confirm, by who can supply them'),
  notPlaced: z.array(NotPlacedViewSchema).describe('Every port without a protector, with the reason'),
  site: SiteViewSchema.describe('The site as it was read, with where each fact comes from'),
  photos: z.array(PhotoSchema).describe('Photos with their captions'),
  sources: z
    .array(SourceViewSchema)
    .describe('The clauses and the common practice behind each rule that fired'),
  limits: z.array(z.string()).describe('What the plan does not cover'),
});
export type CloseoutPackView = z.infer<typeof CloseoutPackSchema>;

/** The view of the closeout pack. */
export function closeoutPackView(
  plan: Plan,
  context: DocumentContext,
  notes: readonly WiringNote[],
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
    isolation: isolationView(plan, 'en'),
    deference: DEFERENCE,
    schedule: scheduleRows(plan),
    orders: plan.orders.map((o) => ({ ...o })),
    placement: placementView(plan, sheets),
    notes: [...notes],
    calculations: calculationViews(plan),
    leftOut: leftOutParts(plan),
    siteCalculations: plan.siteCalculations.map((c) => calculationView(c)),
    checkLists: checkLists(plan),
    records: records(plan),
    settled: settledViews(plan),
    openItems: openItemGroups(plan),
    notPlaced: notPlacedViews(plan),
    site: siteView(plan),
    photos: photoViews(plan, photos ?? []),
    sources: sourceViews(plan),
    limits: limitTexts(plan),
  };
}
