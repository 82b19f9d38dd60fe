import type { Source, SourcesByBasis } from '../model/fact.js';
import { BASES, type Basis } from '../model/editions.js';
import { clause, type ClauseSubject } from './clauses.js';

/** A source that is the trade's common practice and nothing else. */
export function practice(says: string): Source {
  return { commonPractice: true, says };
}

/** The bases of the NEC. */
export const NEC: readonly Basis[] = ['nec-2017', 'nec-2020', 'nec-2023'];

/**
 * The sources of a rule by basis: for each basis, the clauses of the subjects that its edition knows, then the common practice.
 * @param parts which subjects or practices count under which bases
 */
export function sources(
  ...parts: readonly {
    readonly of: readonly Basis[];
    readonly cite?: readonly ClauseSubject[];
    readonly also?: Source;
  }[]
): SourcesByBasis {
  const found: { -readonly [B in Basis]?: Source[] } = {};
  for (const part of parts) {
    for (const basis of part.of) {
      const list = (found[basis] ??= []);
      for (const subject of part.cite ?? []) {
        const one = clause(subject, basis);
        if (one) list.push(one);
      }
      if (part.also) list.push(part.also);
    }
  }
  return found;
}

/** Every basis. */
export const ALL: readonly Basis[] = BASES;
