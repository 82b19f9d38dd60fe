import { taken, workingOf } from '../../electrical/working.js';
import type { Working } from '../../model/fact.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { list } from '../../words/figures.js';
import { cited } from '../../words/origin.js';
import type { AnyRatingRule, FaultCurrentFacts, RatingFacts } from '../rating-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['port', 'current', 'faultCurrent'] as const;

export const faultCurrent = {
  id: 'rate/fault-current',
  title: 'Fault current at an AC port or a battery bus',
  why: 'If a protector fails, it must not burst from the current that the supply can drive through it.',
  sources: sources({
    of: ALL,
    cite: ['short-circuit-current-rating', 'discharge-currents'],
    also: practice('A port without its own figure takes that of the port upstream as the upper bound.'),
  }),
  answers: 'rate/short-circuit',
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const asked = f.port === 'battery' || (f.current === 'ac' && f.port !== 'terminals');
    if (!asked) return { outcome: 'outside', because: 'neither an AC port nor a battery bus' };
    const known = f.faultCurrent;
    if (!known) return { outcome: 'unknown', because: 'the available fault current isn’t stated', notes: [] };
    const working = f.port === 'battery' && known.from.length > 1 ? sumOf(known) : boundOf(known);
    return known.unknown.length > 0
      ? {
          outcome: 'unknown',
          because: `the fault current of ${list(known.unknown)} isn’t stated`,
          notes: [],
          atLeast: working,
        }
      : { outcome: 'asks', value: known.value, working, notes: [] };
  },
} satisfies AnyRatingRule;

/** The figure of the port itself, or of the port upstream. */
function boundOf(known: FaultCurrentFacts): Working {
  const from = known.from.map((o) => `${o.tag}: ${cited(o.fact.origin)}`).join('; ');
  const says = known.own
    ? 'Available fault current'
    : `Available fault current upstream, at ${list([...new Set(known.from.map((o) => o.tag))])}: the upper bound`;
  return workingOf([], taken('Isc', says, known.value, 'A', 'stated', from));
}

/** The batteries of one bus feed a fault together. */
function sumOf(known: FaultCurrentFacts): Working {
  const each = known.from.map((o) =>
    taken('Isc', `Available fault current of ${o.tag}`, o.fact.value, 'A', 'stated', cited(o.fact.origin)),
  );
  return workingOf(each, {
    symbol: 'Isc,sum',
    says: 'Sum of the batteries on this bus',
    formula: 'sum of Isc',
    substituted: known.from.map((o) => `${o.fact.value} A`).join(' + '),
    value: known.value,
    unit: 'A',
    sure: 'computed',
    source: 'computed: sources in parallel add',
  });
}
