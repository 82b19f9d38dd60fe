import type { Clause } from '../../model/plan.js';
import { standardName } from '../../words/standard.js';

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
