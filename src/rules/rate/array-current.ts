import { arrayShortCircuitCurrent } from '../../electrical/short-circuit.js';
import { computed, statedAt, taken, workingOf } from '../../electrical/working.js';
import { isNec } from '../../model/editions.js';
import { amperes, bare } from '../../model/quantity.js';
import { withoutDust } from '../../model/rounding.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { reason } from '../../model/reason.js';
import { subject, type Step } from '../../model/step.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'current',
  'port',
  'arrays',
  'arrayGroups',
  'joined',
  'inputUse',
  'faultCurrent',
  'kind',
  'thresholds',
] as const;

const NO_DC_PORT = reason('array-current/no-dc-port');
const NO_ARRAY = reason('array-current/no-array');
const NOT_LISTED = reason('array-current/source-not-listed');
const PARALLEL = reason('source/parallel-sources');
const ONE_OF_THEM = reason('source/feeding-source-not-stated');
const STATED = subject('array-current/stated');

const CITED_UNDER_NEC: readonly Cited[] = ['array-current', 'short-circuit-current-rating'];

export const arrayCurrent = {
  id: 'rate/array-current',
  title: 'Short-circuit current of an array',
  why: 'In daylight an array drives current through a failed protector until someone stops it.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['array-current', 'pv-dc-protection'],
  }),
  answers: 'rate/short-circuit',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    if (f.current !== 'dc' || (f.port !== 'dc-in' && f.port !== 'output')) {
      return { outcome: 'outside', because: NO_DC_PORT };
    }
    if (f.kind === 'array' && f.faultCurrent) {
      const { value, from } = f.faultCurrent;
      const source = reason('source/places', { places: from.map((o) => o.fact.origin) });
      const working = workingOf([], taken('Isc', STATED, value, 'A', 'stated', source));
      return { outcome: 'asks', value, working, notes: [] };
    }
    if (f.arrays.length === 0) {
      return f.inputUse === 'fed'
        ? { outcome: 'outside', because: NO_ARRAY }
        : { outcome: 'unknown', because: NOT_LISTED, notes: [] };
    }
    const unknown = f.arrays.filter((a) => !a.iscStc || !a.stringsInParallel).map((a) => a.tag);
    if (unknown.length > 0) {
      return {
        outcome: 'unknown',
        because: reason('array-current/not-stated', { arrays: unknown }),
        notes: [],
      };
    }
    if (f.joined && f.joined.othersUnknown > 0) {
      const { othersUnknown: count, at } = f.joined;
      const because = reason('array-current/others-not-stated', { count, at });
      return { outcome: 'unknown', because, notes: [] };
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
          Isc: array.iscStc.origin,
          p: array.stringsInParallel.origin,
        }).steps,
      );
    }
    const own = together(f.arrayGroups, currents);
    if (own.last) steps.push(own.last);
    const { value, more } = withJoined(f, own.value);
    steps.push(...more);
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
  const feeding = groups.filter((group) => group.length > 0);
  const [only, another] = feeding;
  const isSum = only !== undefined && another === undefined;
  const what = isSum
    ? subject('array-current/sum', { arrays: only })
    : subject('array-current/largest', { sources: feeding });
  const last = computed('Isc,sum', what, {
    value,
    unit: 'A',
    sure: 'computed',
    uses: ['Isc,max'],
    source: isSum ? PARALLEL : ONE_OF_THEM,
  });
  return { value, last };
}

/**
 * Adds what else feeds a fault on the circuit: other arrays on it, and what each input on it sends back.
 * @param own A; of the arrays that feed the port itself
 */
function withJoined(
  { basis, joined, thresholds }: Pick<RatingFacts, 'basis' | 'joined' | 'thresholds'>,
  own: number,
): { readonly value: number; readonly more: readonly Step[] } {
  const parts = [own];
  const more: Step[] = [];
  if (joined && joined.others > 0) {
    const share = thresholds.shortCircuitShare;
    const value = withoutDust(share * joined.othersCurrent);
    const { others: count, at, othersCurrent } = joined;
    const values = { count, at, share: bare(share), current: amperes(othersCurrent) };
    const source = reason('source/array-current', { practice: isNec(basis) ? 'nec' : 'iec' });
    const result = { value, unit: 'A', sure: 'memory', uses: [], source } as const;
    more.push(computed('Isc,others', subject('array-current/others', values), result));
    parts.push(value);
  }
  for (const { tag, inputs, fact } of joined?.backfeed ?? []) {
    const back = subject('array-current/backfeed', { converter: tag, inputs });
    more.push(taken('Iback', back, fact.value, 'A', 'stated', fact.origin));
    for (let input = 0; input < inputs; input += 1) parts.push(fact.value);
  }
  if (parts.length === 1) return { value: own, more };
  const value = withoutDust(parts.reduce((sum, one) => sum + one, 0));
  const total = subject('array-current/total', { parts: parts.map(amperes) });
  const uses = [...new Set(['Isc,max', ...more.map((step) => step.symbol)])];
  more.push(computed('Isc,total', total, { value, unit: 'A', sure: 'computed', uses, source: PARALLEL }));
  return { value, more };
}
