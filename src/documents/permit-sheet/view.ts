import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../parts/context.js';
import { shortened } from '../parts/css.js';
import type { PlacementSheet } from '../drawing/placement.js';
import { notKnown } from '../parts/figures.js';
import { calculationView, calculationViews, CalculationViewSchema } from '../parts/calculations.js';
import { CautionSchema, siteCautions } from '../parts/cautions.js';
import { ClauseRowSchema, clauseStrip } from './clause-strip.js';
import { groundingItems, handoverItems, ItemSchema } from './handover-items.js';
import { JobViewSchema, jobView } from '../parts/job.js';
import type { JobView } from '../parts/job.js';
import { DEFERENCE, limitTexts } from '../parts/limits.js';
import {
  blockingItems,
  OpenItemGroupSchema,
  openItemGroups,
  OpenItemViewSchema,
} from '../parts/open-items.js';
import { placementView, PlacementViewSchema } from '../parts/placement.js';
import { SettledViewSchema, settledViews } from '../parts/settled.js';
import { ScheduleRowSchema, scheduleRows } from '../parts/schedule.js';
import { FactViewSchema, NotPlacedViewSchema, notPlacedViews, siteView, statedText } from '../parts/site.js';

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
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  /** Which sheets this file holds. */
  parts: z.object({
    summary: z.boolean(),
    drawing: z.boolean(),
    schedule: z.boolean(),
    openItems: z.boolean(),
    calculations: z.boolean(),
    clauses: z.boolean(),
  }),
  job: JobViewSchema.describe('Job, company, basis, revision, date and status'),
  strip: z
    .array(z.string())
    .describe(
      'Lines of the strip below a drawing; long texts are shortened, they stand whole in the summary',
    ),
  blocking: z.array(OpenItemViewSchema).describe('The items that make the sheet a draft'),
  temperature: z.string().describe('Lowest temperature and where it comes from'),
  facts: z.array(FactViewSchema).describe('Facts of the job as stated'),
  grounding: z.array(ItemSchema).describe('Grounding of each system, as stated or assumed'),
  handover: z
    .array(ItemSchema)
    .describe('What IEC 62446-1 cl. 4.3.5 asks a handover to name besides the schedule'),
  cautions: z.array(CautionSchema).describe('Safety messages after ANSI Z535.6 that fit the site'),
  deference: z.string().describe('The sentence that defers to local code, authority and licensed practice'),
  schedule: z.array(ScheduleRowSchema).describe('One line a housing'),
  placement: PlacementViewSchema.describe('The placement drawing: its sheets, its symbol and its legend'),
  calculations: z
    .array(CalculationViewSchema)
    .describe('Each calculation once, with the protectors that share it'),
  siteCalculations: z.array(CalculationViewSchema).describe('Calculations about the site as a whole'),
  settled: z
    .array(SettledViewSchema)
    .describe(
      'Defaults that the company settled once, with who did and when; nobody is asked to confirm them',
    ),
  openItems: z.array(OpenItemGroupSchema).describe('Open items and items to confirm, by who can supply them'),
  notPlaced: z.array(NotPlacedViewSchema).describe('Every port without a protector, with the reason'),
  clauses: z
    .array(ClauseRowSchema)
    .describe('The clauses of the basis of the job, and how the job stands to each'),
  limits: z.array(z.string()).describe('What the plan does not cover'),
});
export type PermitSheetView = z.infer<typeof PermitSheetSchema>;

function temperatureText(plan: Plan): string {
  const fact = (field: string): string | undefined => {
    const found = plan.facts.find((f) => f.field === field);
    return found && statedText(found);
  };
  const lowest = fact('lowest_temp');
  if (lowest === undefined || lowest === '') return notKnown('the list states no lowest temperature');
  const source = fact('lowest_temp_source');
  return `${lowest}, source: ${source === undefined || source === '' ? notKnown('the list does not state it') : source}`;
}

/** The strip has room for six lines beside the stamp. */
function stripLines(job: JobView): string[] {
  return [
    shortened(`${job.id}: ${job.name}`, 84),
    shortened(`${job.basis}; revision ${job.revision}; ${job.date}`, 84),
    // One line each: whoever seals the sheet is named whole.
    ...[job.company.name, job.company.licence].filter((t) => t !== '').map((t) => shortened(t, 64)),
  ];
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
    strip: stripLines(jobView(plan, context)),
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
    settled: settledViews(plan),
    openItems: openItemGroups(plan),
    notPlaced: notPlacedViews(plan),
    clauses: clauseStrip(plan),
    limits: limitTexts(plan),
  };
}
