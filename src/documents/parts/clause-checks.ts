import type { Clause, Plan } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import { isNec } from '../../model/editions.js';

type Named = Pick<Clause, 'standard' | 'clause'>;

const normal = (text: string): string => text.trim().replace(/\s+/g, ' ');

/** A clause in few words: `230.67` of the code itself, `IEC 60664-1 Table F.1` of another standard. */
export function clauseName({ standard, clause }: Named, basis: Plan['basis']): string {
  return normal(isNec(basis) && standard.startsWith('NEC') ? clause : `${standard} ${clause}`);
}

/**
 * True where someone of the company has read a clause against the edition in force: `checkedClauses` names it by its number, with
 * its standard before it or without.
 */
export function isChecked(named: Named, basis: Plan['basis'], { checkedClauses }: Settings): boolean {
  const names = [normal(named.clause), normal(`${named.standard} ${named.clause}`)];
  return checkedClauses.some((one) => one.basis === basis && names.includes(normal(one.clause)));
}

/** The clauses that the papers of a job cite and that nobody of the company has checked, each once. */
export function uncheckedClauses(plan: Plan, settings: Settings): string[] {
  const open = plan.clauses.filter((c) => !c.commonPractice && !isChecked(c, plan.basis, settings));
  return [...new Set(open.map((clause) => clauseName(clause, plan.basis)))];
}
