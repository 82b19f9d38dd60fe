import { partsUsed } from '../parts/parts-used.js';
import { z } from 'zod';
import type { Clause, Plan } from '../../model/plan.js';
import { isChecked } from '../parts/clause-checks.js';
import { calculationView, calculationViews, CalculationViewSchema } from '../parts/calculations.js';
import type { DataSheet, DocumentContext } from '../parts/context.js';
import { JobViewSchema, jobView } from '../parts/job.js';
import { DEFERENCE } from '../parts/limits.js';
import { SiteViewSchema, siteView } from '../parts/site.js';
import { clausesByRule, clauseText } from '../parts/sources.js';

const ClauseSchema = z.object({
  source: z.string(),
  says: z.string(),
  /** True: nobody of the company has checked it against the edition in force. */
  dagger: z.boolean(),
});

/** What stands behind the permit sheets when it is asked for. */
export const PermitAppendixSchema = z.object({
  language: z.literal('en'),
  title: z.string().describe('Title of the file, with the id of the job'),
  style: z.string().describe('All CSS: fonts, accent colour, styles and page rules'),
  job: JobViewSchema.describe('Job, company, basis, revision, date and status'),
  /** Whole calculations; absent: not asked for. */
  working: z
    .object({
      siteCalculations: z.array(CalculationViewSchema),
      calculations: z.array(CalculationViewSchema),
    })
    .nullable(),
  /** Where each value and each rule comes from; absent: not asked for. */
  sources: z
    .object({
      site: SiteViewSchema,
      clauses: z.array(z.object({ title: z.string(), clauses: z.array(ClauseSchema) })),
      unchecked: z.boolean().describe('True where a clause has a dagger'),
    })
    .nullable(),
  /** Data sheets of the parts used that follow in this file; absent: none was asked for. */
  dataSheets: z
    .object({
      appended: z.array(z.object({ part: z.string(), pages: z.number().int() })),
      toFollow: z.array(z.string()),
    })
    .nullable(),
  deference: z.string().describe('The sentence that defers to local code, authority and licensed practice'),
});
export type PermitAppendixView = z.infer<typeof PermitAppendixSchema>;

function clausesOf(plan: Plan, settings: DocumentContext['settings']): z.infer<typeof ClauseSchema>[][] {
  const view = (clause: Clause): z.infer<typeof ClauseSchema> => ({
    source: clauseText(clause),
    says: clause.memory
      ? 'the text was not at hand when this was written: read the clause itself'
      : clause.says,
    dagger: !clause.commonPractice && !isChecked(clause, plan.basis, settings),
  });
  return clausesByRule(plan.clauses).map(({ clauses }) => clauses.map(view));
}

function sheetsView(plan: Plan, sheets: readonly DataSheet[]): PermitAppendixView['dataSheets'] {
  const there = new Set(sheets.map((sheet) => sheet.part));
  return {
    appended: sheets.map(({ part, pages }) => ({ part, pages })),
    toFollow: partsUsed(plan).filter((part) => !there.has(part)),
  };
}

/** The view of the appendix. */
export function permitAppendixView(plan: Plan, context: DocumentContext, style: string): PermitAppendixView {
  const asked = new Set(context.appendices);
  const titles = clausesByRule(plan.clauses).map(({ title }) => title);
  const clauses = clausesOf(plan, context.settings);
  return {
    language: 'en',
    title: `Permit appendix, job ${plan.job}`,
    style,
    job: jobView(plan, context),
    working: asked.has('working')
      ? {
          siteCalculations: plan.siteCalculations.map((c) => calculationView(c)),
          calculations: calculationViews(plan),
        }
      : null,
    sources: asked.has('sources')
      ? {
          site: siteView(plan),
          clauses: clauses.map((own, i) => ({ title: titles[i] ?? '', clauses: own })),
          unchecked: clauses.flat().some(({ dagger }) => dagger),
        }
      : null,
    dataSheets: context.dataSheets === undefined ? null : sheetsView(plan, context.dataSheets),
    deference: DEFERENCE,
  };
}
