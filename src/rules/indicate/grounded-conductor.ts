import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['grounded', 'circuit', 'conductor'] as const;

export const groundedConductor = {
  id: 'indicate/grounded-conductor',
  title: 'The light of a grounded conductor',
  why: 'A light needs a voltage to ground, and a grounded wire has none: its light stays dark, and that is normal.',
  sources: sources({
    of: ALL,
    cite: ['array-ground-fault'],
    also: practice('Its indicator stays dark, which is normal.'),
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (!f.grounded) return { outcome: 'outside', because: 'this conductor isn’t grounded' };
    const what =
      f.conductor === 'N'
        ? 'N of a grounded system'
        : f.circuit === 'power'
          ? 'the grounded phase'
          : 'the grounded pole';
    const dark = {
      state: 'always',
      shows: 'dark',
      because: `${what} has no voltage to ground: normal, and this light can’t show whether the channel is used up`,
      cause: 'grounded-conductor',
    } as const;
    if (f.circuit !== 'array') return { outcome: 'shows', indications: [dark] };
    return {
      outcome: 'shows',
      indications: [
        dark,
        {
          state: 'ground-fault device open',
          shows: 'either',
          because:
            'the pole floats once the ground-fault device has opened: if this light is ever lit, call and touch nothing',
          cause: 'ground-fault-device-open',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
