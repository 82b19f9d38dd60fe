import { arrayShortCircuitCurrent } from '../../electrical/short-circuit.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { Step } from '../../model/fact.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { list } from '../../text/figures.js';
import { cited } from '../../text/origin.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['current', 'port', 'arrays', 'inputUse', 'faultCurrent', 'kind', 'thresholds'] as const;

export const arrayCurrent = {
  id: 'rate/array-current',
  title: 'Short-circuit current of an array',
  why: 'In daylight an array drives current through a failed protector until someone stops it.',
  sources: sources({ of: ALL, cite: ['array-current', 'short-circuit-current-rating', 'pv-dc-protection'] }),
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
    let sum = 0;
    for (const array of f.arrays) {
      if (!array.iscStc || !array.stringsInParallel) continue;
      const one = arrayShortCircuitCurrent({
        iscStc: array.iscStc.value,
        stringsInParallel: array.stringsInParallel.value,
        share: f.thresholds.shortCircuitShare,
      });
      sum += one.value;
      steps.push(
        ...statedAt(one.working, {
          Isc: cited(array.iscStc.origin),
          p: cited(array.stringsInParallel.origin),
        }).steps,
      );
    }
    if (f.arrays.length > 1) {
      steps.push({
        symbol: 'Isc,sum',
        says: 'Sum of the arrays on this conductor',
        formula: 'sum of Isc,max',
        substituted: f.arrays.map((a) => a.tag).join(' + '),
        value: sum,
        unit: 'A',
        sure: 'computed',
        source: 'computed: sources in parallel add',
      });
    }
    return { outcome: 'asks', value: sum, working: { value: sum, unit: 'A', steps }, notes: [] };
  },
} satisfies AnyRatingRule;
