import { z } from 'zod';
import type { Clause, Plan } from '../../model/plan.js';
import { standardName } from '../../words/standard.js';

export const SourceViewSchema = z.object({
  rule: z.string(),
  title: z.string(),
  /** `NEC 2023, 230.67`, `see IEC ...`, `common practice, no source`; what it says in our words. */
  sources: z.array(z.object({ source: z.string(), says: z.string() })),
});
export type SourceView = z.infer<typeof SourceViewSchema>;

/** How a clause is named: `see` where its text wasn't at hand. */
export function clauseText(clause: Clause): string {
  if (clause.commonPractice) return 'common practice, no source';
  const name = [standardName(clause), clause.clause].filter((t) => t !== '').join(', ');
  return clause.memory ? `see ${name}` : name;
}

/** The clauses of each rule, in the order of the first of each. */
export function clausesByRule(of: readonly Clause[]): { rule: string; title: string; clauses: Clause[] }[] {
  const rules = new Map<string, { rule: string; title: string; clauses: Clause[] }>();
  for (const clause of of) {
    const entry = rules.get(clause.rule) ?? { rule: clause.rule, title: clause.title, clauses: [] };
    entry.clauses.push(clause);
    rules.set(clause.rule, entry);
  }
  return [...rules.values()];
}

/** The sources behind the rules that fired. */
export function sourceViews(plan: Plan): SourceView[] {
  return clausesByRule(plan.clauses).map(({ rule, title, clauses }) => ({
    rule,
    title,
    sources: clauses.map((clause) => ({
      source: clauseText(clause),
      says: clause.memory
        ? 'the text was not at hand when this was written: read the clause itself'
        : clause.says,
    })),
  }));
}
