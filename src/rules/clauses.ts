import { editionOf, isNec, type Basis, type NecCycle } from '../model/editions.js';
import type { ClauseSource } from './clause-kit.js';
import { IEC_CLAUSES, OTHER_CLAUSES } from './clauses-iec.js';
import { NEC_CLAUSES } from './clauses-nec.js';

/** What a clause is about. */
export type ClauseSubject = keyof typeof NEC_CLAUSES | keyof typeof IEC_CLAUSES | keyof typeof OTHER_CLAUSES;

function hasKey<T extends object>(table: T, key: PropertyKey): key is keyof T {
  return Object.hasOwn(table, key);
}

/** A table of clauses, each with its subject in it. */
function named<K extends string>(
  entries: Readonly<Record<K, ClauseSource>>,
): Readonly<Record<K, ClauseSource>> {
  const pairs = Object.entries<ClauseSource>(entries).map(([subject, one]) => [subject, { ...one, subject }]);
  return Object.fromEntries(pairs) as Record<K, ClauseSource>;
}

const NAMED_IEC = named(IEC_CLAUSES);
const NAMED_OTHERS = named(OTHER_CLAUSES);

/** Made once each: every place cites some. */
const necClauses = new Map<NecCycle, Map<string, ClauseSource | undefined>>();

function necClause(subject: keyof typeof NEC_CLAUSES, basis: NecCycle): ClauseSource | undefined {
  let known = necClauses.get(basis);
  if (!known) necClauses.set(basis, (known = new Map<string, ClauseSource | undefined>()));
  if (!known.has(subject)) known.set(subject, necClauseAnew(subject, basis));
  return known.get(subject);
}

function necClauseAnew(subject: keyof typeof NEC_CLAUSES, basis: NecCycle): ClauseSource | undefined {
  const entry = NEC_CLAUSES[subject];
  const found = entry[basis];
  // Absent: a cycle that the tables don't know yet.
  if (!found) return undefined;
  return {
    standard: entry.standard ?? 'NEC (NFPA 70)',
    edition: editionOf(basis),
    clause: found.clause,
    says: found.says,
    subject,
    ...(entry.sure === undefined ? {} : { sure: entry.sure }),
  };
}

/**
 * The clause that rules a subject under a basis.
 *
 * NEC clauses stand as pairs (cycle, number): one rule has another number in each cycle. IEC clauses hold for `iec` only;
 * standards that both sides use (UL, IEEE, ANSI, ASTM, IEC 60664-1, books) hold under every basis.
 * @param subject what it is about
 * @param basis the job's own
 * @returns the clause; undefined where that basis has none
 */
export function clause(subject: ClauseSubject, basis: Basis): ClauseSource | undefined {
  if (hasKey(OTHER_CLAUSES, subject)) return NAMED_OTHERS[subject];
  if (isNec(basis)) return hasKey(NEC_CLAUSES, subject) ? necClause(subject, basis) : undefined;
  return hasKey(IEC_CLAUSES, subject) ? NAMED_IEC[subject] : undefined;
}

/** All subjects, in the order of the tables. */
export const CLAUSE_SUBJECTS: readonly ClauseSubject[] = [
  ...new Set([...keysOf(NEC_CLAUSES), ...keysOf(IEC_CLAUSES), ...keysOf(OTHER_CLAUSES)]),
];

function keysOf<K extends string>(table: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(table) as K[];
}

/** The clauses that a basis knows, by subject: for the rulebook. */
export function clausesOf(basis: Basis): ReadonlyMap<ClauseSubject, ClauseSource> {
  const found = new Map<ClauseSubject, ClauseSource>();
  for (const subject of CLAUSE_SUBJECTS) {
    const one = clause(subject, basis);
    if (one) found.set(subject, one);
  }
  return found;
}

/** Subjects of the NEC whose clause isn't decided for a basis: neither a clause, nor that there is none. */
export function undecidedClauses(basis: Basis): readonly ClauseSubject[] {
  if (!isNec(basis)) return [];
  return keysOf(NEC_CLAUSES).filter((subject) => !Object.hasOwn(NEC_CLAUSES[subject], basis));
}
