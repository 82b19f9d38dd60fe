import type { Step, Working } from '../model/fact.js';
import type { Basis } from '../model/editions.js';
import { FROM_MEMORY, shown, taken, withoutDust, workingOf } from './working.js';

export interface ArrayShortCircuitInput {
  /** A; short-circuit current of one module at standard test conditions. */
  readonly iscStc: number;
  readonly stringsInParallel: number;
  /** Share of Isc to be borne: the setting `shortCircuitShare`. */
  readonly share: number;
  /** Whose clause the working names; the NEC's where it isn't given. */
  readonly basis?: Basis | undefined;
}

/**
 * Short-circuit current that a DC protector of an array must withstand.
 * @param input A, number of strings in parallel, share, basis
 * @returns A: share x Isc x strings
 * Source: NEC 690.8(A), 125 % of the sum of the parallel currents; IEC 60364-7-712:2017 Annex B, at least 1.25: values
 * from memory.
 */
export function arrayShortCircuitCurrent(input: ArrayShortCircuitInput): {
  readonly value: number;
  readonly working: Working;
} {
  const { iscStc, stringsInParallel, share, basis } = input;
  const value = withoutDust(share * iscStc * stringsInParallel);
  const result: Step = {
    symbol: 'Isc,max',
    says: 'Short-circuit current of the array',
    formula: `${shown(share)} × Isc × p`,
    substituted: `${shown(share)} × ${shown(iscStc)} A × ${shown(stringsInParallel)}`,
    value,
    unit: 'A',
    sure: 'memory',
    source: `${basis === 'iec' ? 'IEC 60364-7-712:2017 Annex B' : 'NEC 690.8(A)'}, ${FROM_MEMORY}`,
  };
  const steps = [
    taken('Isc', 'Short-circuit current of one module at standard test conditions', iscStc, 'A'),
    taken('p', 'Strings in parallel', stringsInParallel, ''),
  ];
  return { value, working: workingOf(steps, result) };
}
