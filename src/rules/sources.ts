import { BASES, type Basis } from '../model/editions.js';
import type { Source, SourcesByBasis } from '../model/fact.js';
import { clause, type ClauseSubject } from './clauses.js';

/** A source that is the trade's common practice and nothing else. */
export function practice(says: string): Source {
  return { commonPractice: true, says };
}

/** What a rule rests on: a subject of the tables of clauses, or common practice. */
export type Cited = ClauseSubject | Source;

/**
 * The sources of a rule, said for every basis: the compiler asks for each one that is added.
 * @param cited what it rests on, basis by basis; null: the rule doesn't belong to that basis
 * @throws Error where the tables have no clause of that subject under that basis
 */
export function sources(cited: { readonly [B in Basis]: readonly Cited[] | null }): SourcesByBasis {
  // Of a cycle that isn't decided yet there is no entry: a job under it is a conflict.
  const decided = BASES.filter((basis) => Object.hasOwn(cited, basis));
  const entries = decided.map((basis) => [basis, cited[basis]?.map((one) => sourceOf(one, basis)) ?? null]);
  return Object.fromEntries(entries) as SourcesByBasis;
}

/** What is cited together, a step each: all of them constants of the rules, so that there are few. */
interface CitedTogether {
  readonly next: Map<Cited, CitedTogether>;
  sources: readonly Source[] | undefined;
}

const together = new Map<Basis, CitedTogether>();

/**
 * Those of a rule's sources that hold at one place, where others of them don't.
 * @param basis the job's own
 * @param cited subjects that the rule names for that basis, and its common practice
 * @returns without those that a cycle which isn't decided yet has no clause for: a job under it is a conflict
 */
export function citing(basis: Basis, ...cited: readonly Cited[]): readonly Source[] {
  let at = stepTo(together, basis);
  for (const one of cited) at = stepTo(at.next, one);
  return (at.sources ??= cited.flatMap((one) =>
    typeof one === 'string' ? (clause(one, basis) ?? []) : one,
  ));
}

function stepTo<K>(steps: Map<K, CitedTogether>, key: K): CitedTogether {
  let step = steps.get(key);
  if (!step) steps.set(key, (step = { next: new Map(), sources: undefined }));
  return step;
}

function sourceOf(cited: Cited, basis: Basis): Source {
  if (typeof cited !== 'string') return cited;
  const found = clause(cited, basis);
  if (!found) throw new Error(`${basis} has no clause about ${cited}`);
  return found;
}
