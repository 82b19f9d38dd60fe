import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating'] as const;

export const batteryPole = {
  id: 'indicate/battery-pole',
  title: 'The light of the ungrounded pole of a battery',
  why: 'A battery never sleeps: this light is lit day and night.',
  sources: sources({ of: ALL, also: practice('Lit always.') }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'battery' || f.grounded || f.floating)
      return { outcome: 'outside', because: 'no ungrounded pole of a grounded battery' };
    return {
      outcome: 'shows',
      indications: [
        {
          state: 'always',
          shows: 'lit',
          because: 'the battery gives it its voltage to ground',
          cause: 'battery-connected',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
