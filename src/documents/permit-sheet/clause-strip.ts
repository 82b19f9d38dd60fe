import { say } from '../../words/reasons/say.js';
import { z } from 'zod';
import type { Plan, PlannedStanding } from '../../model/plan.js';
import { clausesByRule, clauseSummary } from '../parts/sources.js';

/** One rule of the job's own code cycle with its clauses, and how this job stands to it. */
export const ClauseRowSchema = z.object({
  rule: z.string(),
  title: z.string(),
  clauses: z.array(z.string()),
  /** `met at P-1, P-2`, `not met at P-3: because`, `to confirm at P-4: because`, `open at P-5: because`, `does not apply at X: because`. */
  standing: z.array(z.string()),
});
export type ClauseRow = z.infer<typeof ClauseRowSchema>;

function standingText({ standing, at, because }: PlannedStanding): string {
  const where = at.length === 0 ? standing : `${standing} at ${at.join(', ')}`;
  return because === null ? where : `${where}: ${say(because)}`;
}

/** The strip of clauses, in the rulebook's order: the rules that fired, and those that ask for nothing on this site. */
export function clauseStrip(plan: Plan): ClauseRow[] {
  const byRule = new Map<string, string[]>();
  for (const one of plan.standings) {
    const known = byRule.get(one.rule);
    if (known === undefined) byRule.set(one.rule, [standingText(one)]);
    else known.push(standingText(one));
  }
  const cited = new Map(
    clausesByRule([...plan.clauses, ...plan.otherClauses]).map((entry) => [entry.rule, entry]),
  );
  return [...byRule].map(([rule, standing]) => {
    const { title = rule, clauses = [] } = cited.get(rule) ?? {};
    return { rule, title, clauses: clauseSummary(clauses), standing };
  });
}
