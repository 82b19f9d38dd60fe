import type { Clause, Plan } from '../../model/plan.js';
import type { CheckedClause, Settings } from '../../model/settings.js';
import { isNec } from '../../model/editions.js';

/** How the setting `checkedClauses` names a clause: `230.67` of the code itself, `IEC 60664-1 Table F.1` of another standard. */
export function clauseKey(clause: Pick<Clause, 'standard' | 'clause'>, basis: Plan['basis']): string {
  const ofCode = isNec(basis) && clause.standard.startsWith('NEC');
  return normal(ofCode ? clause.clause : `${clause.standard} ${clause.clause}`);
}

const normal = (text: string): string => text.trim().replace(/\s+/g, ' ');

function isChecked(key: string, basis: Plan['basis'], checked: readonly CheckedClause[]): boolean {
  return checked.some((one) => one.basis === basis && normal(one.clause) === key);
}

function uncheckedOf(clauses: readonly Clause[], { basis }: Plan, { checkedClauses }: Settings): string[] {
  const keys = clauses.filter((c) => !c.commonPractice).map((c) => clauseKey(c, basis));
  return [...new Set(keys)].filter((key) => !isChecked(key, basis, checkedClauses));
}

/** The clauses behind the required lines of the schedule that nobody of the company has checked against the edition in force. */
export function uncheckedRequired(plan: Plan, settings: Settings): string[] {
  const reasons = plan.protectors.flatMap((protector) => protector.reasons);
  const required = new Set(reasons.filter((r) => r.strength === 'required').map((r) => r.rule));
  return uncheckedOf(
    plan.clauses.filter((clause) => required.has(clause.rule)),
    plan,
    settings,
  );
}

/** All clauses that the papers of a job cite and that nobody of the company has checked. */
export function uncheckedClauses(plan: Plan, settings: Settings): string[] {
  return uncheckedOf(plan.clauses, plan, settings);
}
