import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating'] as const;

const OUTSIDE = reason('light-outside/battery-pole');
const BATTERY = reason('light/battery');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [practice('Lit always.')];

export const batteryPole = {
  id: 'indicate/battery-pole',
  title: 'The light of the ungrounded pole of a battery',
  why: 'A battery never sleeps: this light is lit day and night.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'battery' || f.grounded || f.floating) return { outcome: 'outside', because: OUTSIDE };
    return {
      outcome: 'shows',
      indications: [
        {
          state: 'always',
          shows: 'lit',
          because: BATTERY,
          cause: 'battery-connected',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
