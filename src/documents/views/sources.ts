import { z } from 'zod';
import type { Clause, Plan } from '../../model/plan.js';

export const SourceViewSchema = z.object({
  rule: z.string(),
  title: z.string(),
  /** `NEC 2023, 230.67`, `see IEC ...`, `common practice, no source`. */
  source: z.string(),
  says: z.string(),
});
export type SourceView = z.infer<typeof SourceViewSchema>;

/** How a clause is named: `see` where its text wasn't at hand. */
export function clauseText(clause: Clause): string {
  if (clause.commonPractice) return 'common practice, no source';
  const name = [[clause.standard, clause.edition].filter((t) => t !== '').join(' '), clause.clause]
    .filter((t) => t !== '')
    .join(', ');
  return clause.memory ? `see ${name}` : name;
}

/** The clauses behind the rules that fired, under the job's own basis. */
export function sourceViews(plan: Plan): SourceView[] {
  return plan.clauses.map((clause) => ({
    rule: clause.rule,
    title: clause.title,
    source: clauseText(clause),
    says: clause.memory
      ? 'The text was not at hand when this rule was written: read the clause itself.'
      : clause.says,
  }));
}
