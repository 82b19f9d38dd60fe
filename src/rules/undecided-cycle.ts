import { BASES, type Basis } from '../model/editions.js';
import { undecidedClauses } from './clauses.js';
import { ALL_RULES } from './rulebook.js';

/**
 * What isn't decided for a basis: ids of rules that say neither strength nor sources for it, nor that it isn't theirs, and subjects
 * of clauses that have no entry. The compiler asks for each; this is for what runs in spite of it.
 * @param basis the job's
 * @returns nothing for a basis that is whole
 */
export function undecidedUnder(basis: Basis): readonly string[] {
  return UNDECIDED.get(basis) ?? [];
}

/** Found once: every job of a batch asks, and neither rules nor clauses change. */
const UNDECIDED: ReadonlyMap<Basis, readonly string[]> = new Map(
  BASES.map((basis) => [basis, findUndecided(basis)]),
);

function findUndecided(basis: Basis): readonly string[] {
  const lacks = (table: object | undefined): boolean => table !== undefined && !Object.hasOwn(table, basis);
  const rules = ALL_RULES.filter((rule) => lacks(rule.sources) || lacks(rule.strength));
  return [...rules.map((rule) => rule.id), ...undecidedClauses(basis)];
}
