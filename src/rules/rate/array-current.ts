import { arrayShortCircuitCurrent } from '../../electrical/short-circuit.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { Step } from '../../model/fact.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { list } from '../../words/figures.js';
import { cited } from '../../words/origin.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = [
  'basis',
  'current',
  'port',
  'arrays',
  'arrayGroups',
  'inputUse',
  'faultCurrent',
  'kind',
  'thresholds',
] as const;

export const arrayCurrent = {
  id: 'rate/array-current',
  title: 'Short-circuit current of an array',
  why: 'In daylight an array drives current through a failed protector until someone stops it.',
  sources: sources({ of: ALL, cite: ['array-current', 'short-circuit-current-rating', 'pv-dc-protection'] }),
  answers: 'rate/short-circuit',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    if (f.current !== 'dc' || (f.port !== 'dc-in' && f.port !== 'output')) {
      return { outcome: 'outside', because: 'no DC port of an array' };
    }
    if (f.kind === 'array' && f.faultCurrent) {
      const { value, from } = f.faultCurrent;
      const source = from.map((o) => cited(o.fact.origin)).join('; ');
      return {
        outcome: 'asks',
        value,
        working: workingOf(
          [],
          taken('Isc', 'Short-circuit current of the array', value, 'A', 'stated', source),
        ),
        notes: [],
      };
    }
    if (f.arrays.length === 0) {
      return f.inputUse === 'fed'
        ? { outcome: 'outside', because: 'no array is behind this port' }
        : { outcome: 'unknown', because: 'the source of this input isn’t on the list', notes: [] };
    }
    const unknown = f.arrays.filter((a) => !a.iscStc || !a.stringsInParallel).map((a) => a.tag);
    if (unknown.length > 0) {
      return {
        outcome: 'unknown',
        because: `the short-circuit current of ${list(unknown)} isn’t stated (isc_stc, strings_in_parallel)`,
        notes: [],
      };
    }
    const steps: Step[] = [];
    const currents = new Map<string, number>();
    for (const array of f.arrays) {
      if (!array.iscStc || !array.stringsInParallel) continue;
      const one = arrayShortCircuitCurrent({
        iscStc: array.iscStc.value,
        stringsInParallel: array.stringsInParallel.value,
        share: f.thresholds.shortCircuitShare,
        basis: f.basis,
      });
      currents.set(array.tag, one.value);
      steps.push(
        ...statedAt(one.working, {
          Isc: cited(array.iscStc.origin),
          p: cited(array.stringsInParallel.origin),
        }).steps,
      );
    }
    const { value, last } = together(f.arrayGroups, currents);
    if (last) steps.push(last);
    return { outcome: 'asks', value, working: { value, unit: 'A', steps }, notes: [] };
  },
} satisfies AnyRatingRule;

/**
 * What flows at once: the sum of the arrays of one group, and the largest of the groups.
 * @param groups tags of arrays that feed a port at once
 * @param currents A, by tag
 * @returns the figure, and its step where it isn't that of one array
 */
function together(
  groups: readonly (readonly string[])[],
  currents: ReadonlyMap<string, number>,
): { readonly value: number; readonly last: Step | undefined } {
  const sums = groups.map((group) => group.reduce((sum, tag) => sum + (currents.get(tag) ?? 0), 0));
  const value = Math.max(0, ...sums);
  if (currents.size < 2) return { value, last: undefined };
  const named = groups.map((group) => group.join(' + ')).filter((group) => group !== '');
  const isSum = named.length === 1;
  const last: Step = {
    symbol: 'Isc,sum',
    says: isSum
      ? 'Sum of the arrays on this conductor'
      : 'Largest of the sources, of which one feeds this input',
    formula: isSum ? 'sum of Isc,max' : 'largest of Isc,max',
    substituted: isSum ? (named[0] ?? '') : `max(${named.join(', ')})`,
    value,
    unit: 'A',
    sure: 'computed',
    source: isSum ? 'computed: sources in parallel add' : 'computed: which source feeds it isn’t stated',
  };
  return { value, last };
}
