import { computed, taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { amperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import { subject, type Step, type Working } from '../../model/step.js';
import type { AnyRatingRule, FaultCurrentFacts, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['port', 'current', 'faultCurrent'] as const;

const NO_PORT = reason('fault-current/no-port');
const NOT_STATED = reason('fault-current/not-stated');
const PARALLEL = reason('source/parallel-sources');
const ONE_AT_A_TIME = reason('source/one-at-a-time');
const TRANSFORMER = reason('source/transformer-impedance');

const UPSTREAM_AS_BOUND = practice(
  'A port without its own figure takes that of the port upstream as the upper bound.',
);
const TOGETHER = practice(
  'Sources that can feed together add; of those that a transfer switch keeps apart the highest counts.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['short-circuit-current-rating', UPSTREAM_AS_BOUND, TOGETHER];

export const faultCurrent = {
  id: 'rate/fault-current',
  title: 'Fault current at an AC port or a battery bus',
  why: 'If a protector fails, it must not burst from the current that the supply can drive through it.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['short-circuit-current-rating', UPSTREAM_AS_BOUND, TOGETHER],
  }),
  answers: 'rate/short-circuit',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const isBus = f.port === 'battery' || f.port === 'dc-bus';
    const asked = isBus || (f.current === 'ac' && f.port !== 'terminals');
    if (!asked) return { outcome: 'outside', because: NO_PORT };
    const known = f.faultCurrent;
    if (!known) return { outcome: 'unknown', because: NOT_STATED, notes: [] };
    const because = whyUnknown(known);
    const isOne = !because && known.from.length === 1 && known.apart.length === 0;
    const working = isOne ? boundOf(known) : togetherOf(known, isBus);
    return because
      ? { outcome: 'unknown', because, notes: [], atLeast: working }
      : { outcome: 'asks', value: known.value, working, notes: [] };
  },
} satisfies AnyRatingRule;

/** What of it isn't known; undefined: it is known. */
function whyUnknown({ unknown: sources, passing }: FaultCurrentFacts): Reason | undefined {
  const reasons = [
    ...(sources.length > 0 ? [reason('fault-current/not-stated-of', { sources })] : []),
    ...(passing.length > 0 ? [reason('fault-current/passed-on-by', { sources: passing })] : []),
  ];
  return reasons.length > 1 ? reason('several', { reasons }) : reasons[0];
}

type Source = FaultCurrentFacts['from'][number];

/** The figure of the port itself, or the one that stands ahead of it. */
function boundOf(known: FaultCurrentFacts): Working {
  const [only] = known.from;
  if (only?.by)
    return workingOf(ratedSteps(only.tag, only.by), boundStep('Isc', only.tag, only.by, known.value));
  const what = known.own
    ? subject('fault-current/own')
    : subject('fault-current/upstream', { at: known.from.map((o) => o.tag) });
  const each = known.from.map((o) => ({ tag: o.tag, place: o.fact.origin }));
  return workingOf([], taken('Isc', what, known.value, 'A', 'stated', reason('source/of-each', { each })));
}

type Transformer = NonNullable<Source['by']>;

function ratedSteps(at: string, { kva, impedance }: Transformer): Step[] {
  const power = subject('fault-current/transformer-power', { at });
  const share = subject('fault-current/transformer-impedance', { at });
  return [
    taken('S', power, kva.value, 'kVA', 'stated', kva.origin),
    taken('Z', share, impedance.value, '%', 'stated', impedance.origin),
  ];
}

/** What a transformer drives at most, with an unlimited supply ahead of it. */
function boundStep(symbol: string, at: string, { system }: Transformer, value: number): Step {
  return computed(symbol, subject('fault-current/transformer', { at, system }), {
    value,
    unit: 'A',
    sure: 'computed',
    uses: ['S', 'Z'],
    source: TRANSFORMER,
  });
}

/** What can feed a fault at one time adds; what feeds only in place of that is shown beside it. */
function togetherOf(known: FaultCurrentFacts, isBus: boolean): Working {
  const stepsOf = ({ tag, fact, by }: Source): Step[] => {
    if (by) return [...ratedSteps(tag, by), boundStep('Isc', tag, by, fact.value)];
    const what = isBus
      ? subject('fault-current/of-battery', { battery: tag })
      : subject('fault-current/from', { at: tag });
    return [taken('Isc', what, fact.value, 'A', 'stated', fact.origin)];
  };
  const each = known.from.map((o) => amperes(o.fact.value));
  const sum = isBus
    ? subject('fault-current/sum', { each })
    : subject('fault-current/together', {
        each,
        of: known.from.map((o) => o.tag),
        apart: known.apart.map((o) => o.tag),
        without: [...new Set([...known.unknown, ...known.passing])],
      });
  return workingOf(
    [...known.from, ...known.apart].flatMap(stepsOf),
    computed('Isc,sum', sum, {
      value: known.value,
      unit: 'A',
      sure: 'computed',
      uses: ['Isc'],
      source: known.apart.length > 0 ? ONE_AT_A_TIME : PARALLEL,
    }),
  );
}
