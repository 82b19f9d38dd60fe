import { computed, taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { amperes } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Working } from '../../model/step.js';
import type { AnyRatingRule, FaultCurrentFacts, RatingFacts } from '../rating-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['port', 'current', 'faultCurrent'] as const;

const NO_PORT = reason('fault-current/no-port');
const NOT_STATED = reason('fault-current/not-stated');
const PARALLEL = reason('source/parallel-sources');
const TRANSFORMER = reason('source/transformer-impedance');

const UPSTREAM_AS_BOUND = practice(
  'A port without its own figure takes that of the port upstream as the upper bound.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['short-circuit-current-rating', UPSTREAM_AS_BOUND];

export const faultCurrent = {
  id: 'rate/fault-current',
  title: 'Fault current at an AC port or a battery bus',
  why: 'If a protector fails, it must not burst from the current that the supply can drive through it.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['short-circuit-current-rating', UPSTREAM_AS_BOUND],
  }),
  answers: 'rate/short-circuit',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const isBus = f.port === 'battery' || f.port === 'dc-bus';
    const asked = isBus || (f.current === 'ac' && f.port !== 'terminals');
    if (!asked) return { outcome: 'outside', because: NO_PORT };
    const known = f.faultCurrent;
    if (!known) return { outcome: 'unknown', because: NOT_STATED, notes: [] };
    const working = isBus && known.from.length > 1 ? sumOf(known) : boundOf(known);
    return known.unknown.length > 0
      ? {
          outcome: 'unknown',
          because: reason('fault-current/not-stated-of', { sources: known.unknown }),
          notes: [],
          atLeast: working,
        }
      : { outcome: 'asks', value: known.value, working, notes: [] };
  },
} satisfies AnyRatingRule;

/** The figure of the port itself, or of the port upstream. */
function boundOf(known: FaultCurrentFacts): Working {
  const highest = known.from.find((o) => o.fact.value === known.value);
  if (highest?.by) return transformerBound(highest.tag, highest.by, known.value);
  const what = known.own
    ? subject('fault-current/own')
    : subject('fault-current/upstream', { at: [...new Set(known.from.map((o) => o.tag))] });
  const each = known.from.map((o) => ({ tag: o.tag, place: o.fact.origin }));
  const source = reason('source/of-each', { each });
  return workingOf([], taken('Isc', what, known.value, 'A', 'stated', source));
}

/** What a transformer drives at most, with an unlimited supply ahead of it. */
function transformerBound(
  tag: string,
  { kva, impedance, system }: NonNullable<FaultCurrentFacts['from'][number]['by']>,
  value: number,
): Working {
  const steps = [
    taken(
      'S',
      subject('fault-current/transformer-power', { at: tag }),
      kva.value,
      'kVA',
      'stated',
      kva.origin,
    ),
    taken(
      'Z',
      subject('fault-current/transformer-impedance', { at: tag }),
      impedance.value,
      '%',
      'stated',
      impedance.origin,
    ),
  ];
  const bound = subject('fault-current/transformer', { at: tag, system });
  return workingOf(
    steps,
    computed('Isc', bound, { value, unit: 'A', sure: 'computed', uses: ['S', 'Z'], source: TRANSFORMER }),
  );
}

/** The batteries of one bus feed a fault together. */
function sumOf(known: FaultCurrentFacts): Working {
  const each = known.from.map(({ tag, fact }) =>
    taken(
      'Isc',
      subject('fault-current/of-battery', { battery: tag }),
      fact.value,
      'A',
      'stated',
      fact.origin,
    ),
  );
  const sum = subject('fault-current/sum', { each: known.from.map((o) => amperes(o.fact.value)) });
  return workingOf(
    each,
    computed('Isc,sum', sum, {
      value: known.value,
      unit: 'A',
      sure: 'computed',
      uses: ['Isc'],
      source: PARALLEL,
    }),
  );
}
