import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, Indication, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'turbineDriven', 'sunAndWind', 'rapidShutdown'] as const;

const OUTSIDE = reason('light-outside/array-pole');
const SUN = reason('light/sun');
const INVERTER_ON = reason('light/sun-inverter-on');
const NIGHT = reason('light/night');
const TURBINE = reason('light/turbine');
const STILL = reason('light/turbine-still');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('Look in daylight: lit in the sun, dark at night.'),
];

export const arrayPole = {
  id: 'indicate/array-pole',
  title: 'The light of the ungrounded pole of an array or a DC turbine',
  why: 'The sun, or the wind, gives this wire its voltage; at night, or in still air, it has none.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'array' || f.grounded || f.floating) return { outcome: 'outside', because: OUTSIDE };
    if (f.sunAndWind) {
      return {
        outcome: 'shows',
        indications: [
          inTheSun(f.rapidShutdown),
          {
            state: 'turning',
            shows: 'lit',
            because: TURBINE,
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
            because: TURBINE,
            cause: 'turning-dc',
          },
          {
            state: 'still',
            shows: 'dark',
            because: STILL,
            cause: 'standing-still',
          },
        ],
      };
    }
    return {
      outcome: 'shows',
      indications: [
        inTheSun(f.rapidShutdown),
        {
          state: 'night',
          shows: 'dark',
          because: NIGHT,
          cause: 'no-sunlight',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;

/** Behind a rapid-shutdown box the sun alone says nothing: the box lets the voltage through while the inverter is on. */
function inTheSun(rapidShutdown: boolean): Indication {
  return rapidShutdown
    ? { state: 'sun, inverter on', shows: 'lit', because: INVERTER_ON, cause: 'sunlight-inverter-on' }
    : { state: 'sun', shows: 'lit', because: SUN, cause: 'sunlight' };
}
