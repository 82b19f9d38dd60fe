import type { Plan } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import { clauseName, isChecked } from '../parts/clause-checks.js';
import { requiringClauses } from '../parts/contents/required-by.js';

/** The clauses behind the required lines of the schedule that nobody of the company has checked against the edition in force. */
export function uncheckedRequired(plan: Plan, settings: Settings): string[] {
  const required = new Set(plan.protectors.flatMap((protector) => requiringClauses(protector, plan)));
  const open = plan.clauses.filter(
    (clause) => required.has(clause.clause) && !isChecked(clause, plan.basis, settings),
  );
  return [...new Set(open.map((clause) => clauseName(clause, plan.basis)))];
}
