import { taken, workingOf } from '../../electrical/working.js';
import type { Given, RatingDecision } from '../../model/rule.js';
import { list } from '../../text/figures.js';
import { cited } from '../../text/origin.js';
import type { AnyRatingRule, RatingFacts } from '../rating-facts.js';
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
  facts: FACTS,
  decide(f: Given<RatingFacts, typeof FACTS>): RatingDecision {
    const asked = f.port === 'battery' || (f.current === 'ac' && f.port !== 'terminals');
    if (!asked) return { outcome: 'outside', because: 'neither an AC port nor a battery bus' };
    const known = f.faultCurrent;
    if (!known) return { outcome: 'unknown', because: 'the available fault current isn’t stated', notes: [] };
    const from = known.from.map((o) => `${o.tag}: ${cited(o.fact.origin)}`).join('; ');
    const says = known.own
      ? 'Available fault current'
      : `Available fault current upstream, at ${list([...new Set(known.from.map((o) => o.tag))])}: the upper bound`;
    const working = workingOf([], taken('Isc', says, known.value, 'A', 'stated', from));
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
