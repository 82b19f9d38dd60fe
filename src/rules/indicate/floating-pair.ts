import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'floating', 'groundingUnknown', 'turbineDriven', 'sunAndWind'] as const;

const recorded = (unknown: boolean): string =>
  `${unknown ? 'its grounding isn’t known' : 'neither pole is tied to ground'}: recorded at commissioning; a change from the record: call`;

export const floatingPair = {
  id: 'indicate/floating-pair',
  title: 'The lights of a floating DC pair',
  why: 'Neither wire is tied to ground, so what the lights show is written down on the first day and compared later.',
  sources: sources({
    of: ALL,
    also: practice('Recorded at commissioning; a change from the record is a reason to call.'),
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (!f.floating || (f.circuit !== 'array' && f.circuit !== 'battery')) {
      return { outcome: 'outside', because: 'no floating DC pair' };
    }
    const because = recorded(f.groundingUnknown);
    if (f.circuit === 'battery') {
      return {
        outcome: 'shows',
        indications: [{ state: 'always', shows: 'either', because, cause: 'floating' }],
      };
    }
    if (f.sunAndWind) {
      return {
        outcome: 'shows',
        indications: [
          { state: 'sun', shows: 'either', because, cause: 'floating' },
          { state: 'turning', shows: 'either', because, cause: 'floating' },
        ],
      };
    }
    if (f.turbineDriven) {
      return {
        outcome: 'shows',
        indications: [
          { state: 'turning', shows: 'either', because, cause: 'floating' },
          {
            state: 'still',
            shows: 'dark',
            because: 'a turbine that stands still gives no voltage: not a fault',
            cause: 'standing-still',
          },
        ],
      };
    }
    return {
      outcome: 'shows',
      indications: [
        { state: 'sun', shows: 'either', because, cause: 'floating' },
        {
          state: 'night',
          shows: 'dark',
          because: 'modules give no voltage at night: look in daylight',
          cause: 'no-sunlight',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
