import { amperes, bare } from '../model/quantity.js';
import { keeping } from '../model/keeping.js';
import { reason } from '../model/reason.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Working } from '../model/step.js';
import type { Basis } from '../model/editions.js';
import { computed, taken, workingOf } from './working.js';

const SOURCES = {
  nec: reason('source/array-current', { practice: 'nec' }),
  iec: reason('source/array-current', { practice: 'iec' }),
};

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
export const arrayShortCircuitCurrent = keeping(
  ({ iscStc, stringsInParallel, share, basis }: ArrayShortCircuitInput) =>
    `${iscStc}|${stringsInParallel}|${share}|${basis}`,
  workedOut,
);

function workedOut(input: ArrayShortCircuitInput): {
  readonly value: number;
  readonly working: Working;
} {
  const { iscStc, stringsInParallel, share, basis } = input;
  const value = withoutDust(share * iscStc * stringsInParallel);
  const array = subject('array-current/array', {
    share: bare(share),
    module: amperes(iscStc),
    strings: bare(stringsInParallel),
  });
  const result = computed('Isc,max', array, {
    value,
    unit: 'A',
    sure: 'memory',
    uses: ['Isc', 'p'],
    source: SOURCES[basis === 'iec' ? 'iec' : 'nec'],
  });
  const steps = [
    taken('Isc', subject('array-current/module'), iscStc, 'A'),
    taken('p', subject('array-current/strings'), stringsInParallel, ''),
  ];
  return { value, working: workingOf(steps, result) };
}
