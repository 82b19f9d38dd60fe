import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import type { DocumentContext } from '../context.js';
import {
  CalculationGroupSchema,
  calculationGroups,
  CalculationViewSchema,
  calculationView,
} from './calculations.js';
import { CautionSchema, siteCautions } from './cautions.js';
import { JobViewSchema, jobView } from './job.js';
import { DEFERENCE, limitTexts } from './limits.js';
import { OpenItemGroupSchema, openItemGroups } from './open-items.js';
import { ScheduleRowSchema, scheduleRows } from './schedule.js';
import { FactViewSchema, NotPlacedViewSchema, notPlacedViews, siteView } from './site.js';
import { SourceViewSchema, sourceViews } from './sources.js';

export const PermitSheetSchema = z.object({
  language: z.literal('en'),
  title: z.string(),
  style: z.string(),
  job: JobViewSchema,
  facts: z.array(FactViewSchema),
  cautions: z.array(CautionSchema),
  deference: z.string(),
  schedule: z.array(ScheduleRowSchema),
  calculations: z.array(CalculationGroupSchema),
  siteCalculations: z.array(CalculationViewSchema),
  openItems: z.array(OpenItemGroupSchema),
  notPlaced: z.array(NotPlacedViewSchema),
  sources: z.array(SourceViewSchema),
  limits: z.array(z.string()),
});
export type PermitSheetView = z.infer<typeof PermitSheetSchema>;

/** The view of the permit sheet. */
export function permitSheetView(plan: Plan, context: DocumentContext, style: string): PermitSheetView {
  return {
    language: 'en',
    title: `Permit sheet, job ${plan.job}`,
    style,
    job: jobView(plan, context),
    facts: siteView(plan).facts,
    cautions: siteCautions(plan),
    deference: DEFERENCE,
    schedule: scheduleRows(plan),
    calculations: calculationGroups(plan),
    siteCalculations: plan.siteCalculations.map(calculationView),
    openItems: openItemGroups(plan),
    notPlaced: notPlacedViews(plan),
    sources: sourceViews(plan),
    limits: limitTexts(plan),
  };
}
