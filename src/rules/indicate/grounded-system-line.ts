import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, Indication, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'fedByUtility', 'fedBySource'] as const;

const OUTSIDE = reason('light-outside/grounded-system-line');
const UTILITY = reason('light/utility');
const OWN_SOURCE = reason('light/own-source');
const NOTHING_FEEDS = reason('light/nothing-feeds');

const CITED_UNDER_NEC: readonly Cited[] = [practice('Both indicators lit on a 120/240 V service.')];

export const groundedSystemLine = {
  id: 'indicate/grounded-system-line',
  title: 'The light of an ungrounded conductor of a grounded AC system',
  why: 'While the supply is on, this wire has its full voltage to ground, so its light is lit.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [practice('The indicator of each line is lit while the supply is on.')],
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'power' || f.grounded || f.floating) {
      return { outcome: 'outside', because: OUTSIDE };
    }
    const indications: Indication[] = [];
    if (f.fedByUtility) {
      indications.push({
        state: 'utility on',
        shows: 'lit',
        because: UTILITY,
        cause: 'energised',
      });
    }
    if (f.fedBySource || !f.fedByUtility) {
      indications.push({
        state: 'source on',
        shows: 'lit',
        because: OWN_SOURCE,
        cause: 'energised',
      });
    }
    indications.push({
      state: 'source off',
      shows: 'dark',
      because: NOTHING_FEEDS,
      cause: 'de-energised',
    });
    return { outcome: 'shows', indications };
  },
} satisfies AnyIndicatorRule;
