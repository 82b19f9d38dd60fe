import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, Indication, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { NEC, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'fedByUtility', 'fedBySource'] as const;

export const groundedSystemLine = {
  id: 'indicate/grounded-system-line',
  title: 'The light of an ungrounded conductor of a grounded AC system',
  why: 'While the supply is on, this wire has its full voltage to ground, so its light is lit.',
  sources: sources(
    { of: NEC, also: practice('Both indicators lit on a 120/240 V service.') },
    { of: ['iec'], also: practice('The indicator of each line is lit while the supply is on.') },
  ),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'power' || f.grounded || f.floating) {
      return { outcome: 'outside', because: 'no ungrounded conductor of a grounded AC system' };
    }
    const indications: Indication[] = [];
    if (f.fedByUtility) {
      indications.push({
        state: 'utility on',
        shows: 'lit',
        because: 'the utility gives it its voltage to ground',
        cause: 'energised',
      });
    }
    if (f.fedBySource || !f.fedByUtility) {
      indications.push({
        state: 'source on',
        shows: 'lit',
        because: 'the inverter or generator gives it its voltage to ground',
        cause: 'energised',
      });
    }
    indications.push({
      state: 'source off',
      shows: 'dark',
      because: 'nothing feeds it: not a fault',
      cause: 'de-energised',
    });
    return { outcome: 'shows', indications };
  },
} satisfies AnyIndicatorRule;
