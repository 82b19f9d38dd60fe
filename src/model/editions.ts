/**
 * Code cycles of the NEC (NFPA 70), oldest first: permit offices adopt them years apart. To add one, write it behind the newest and
 * compile: every rule and every clause that has to be decided for it is named.
 */
export const NEC_CYCLES = ['nec-2017', 'nec-2020', 'nec-2023'] as const;
export type NecCycle = (typeof NEC_CYCLES)[number];

export const BASES = [...NEC_CYCLES, 'iec'] as const;
/** The set of rules in force for a job. */
export type Basis = (typeof BASES)[number];

/** The cycle that stands for the NEC where none is said, and the basis of a job where neither list nor settings state one. */
export const DEFAULT_CYCLE: NecCycle = 'nec-2023';

/** True for a cycle of the NEC. */
export function isNec(basis: Basis): basis is NecCycle {
  return basis !== 'iec';
}

/**
 * True under a cycle of the NEC that isn't older than the one given: a rule that came with a cycle holds in the later ones.
 * @param basis the job's
 * @param cycle the one that brought the rule
 */
export function since(basis: Basis, cycle: NecCycle): boolean {
  return isNec(basis) && NEC_CYCLES.indexOf(basis) >= NEC_CYCLES.indexOf(cycle);
}

/** Edition of a cycle as it is cited: `2023`. */
export function editionOf(cycle: NecCycle): string {
  return cycle.slice('nec-'.length);
}

/**
 * True where a table by basis has an entry for one: false where the rule doesn't belong to it, and of a cycle that isn't decided yet.
 * @param table what a rule says by basis
 */
export function belongs<T>(table: { readonly [B in Basis]: T | null }, basis: Basis): boolean {
  const entry: T | null | undefined = table[basis];
  return entry !== null && entry !== undefined;
}
