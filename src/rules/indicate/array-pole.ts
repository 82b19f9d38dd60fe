import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'turbineDriven', 'sunAndWind'] as const;

export const arrayPole = {
  id: 'indicate/array-pole',
  title: 'The light of the ungrounded pole of an array or a DC turbine',
  why: 'The sun, or the wind, gives this wire its voltage; at night, or in still air, it has none.',
  sources: sources({ of: ALL, also: practice('Look in daylight: lit in the sun, dark at night.') }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'array' || f.grounded || f.floating)
      return { outcome: 'outside', because: 'no ungrounded pole of a grounded DC source' };
    if (f.sunAndWind) {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'sun',
            shows: 'lit',
            because: 'in the sun the modules give it its voltage to ground',
            cause: 'sunlight',
          },
          {
            state: 'turning',
            shows: 'lit',
            because: 'the turbine gives it its voltage to ground',
            cause: 'turning-dc',
          },
        ],
      };
    }
    if (f.turbineDriven) {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'turning',
            shows: 'lit',
            because: 'the turbine gives it its voltage to ground',
            cause: 'turning-dc',
          },
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
        {
          state: 'sun',
          shows: 'lit',
          because: 'in the sun the modules give it its voltage to ground',
          cause: 'sunlight',
        },
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
