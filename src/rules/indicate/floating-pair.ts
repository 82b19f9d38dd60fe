import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'circuit',
  'floating',
  'groundingUnknown',
  'turbineDriven',
  'sunAndWind',
  'rapidShutdown',
] as const;

const OUTSIDE = reason('light-outside/floating-pair');
const NOT_KNOWN = reason('light/grounding-not-known');
const FLOATING = reason('light/floating', { neither: 'pole' });
const NIGHT = reason('light/night');
const STILL = reason('light/turbine-still');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('Recorded at commissioning; a change from the record is a reason to call.'),
];

export const floatingPair = {
  id: 'indicate/floating-pair',
  title: 'The lights of a floating DC pair',
  why: 'Neither wire is tied to ground, so what the lights show is written down on the first day and compared later.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (!f.floating || (f.circuit !== 'array' && f.circuit !== 'battery')) {
      return { outcome: 'outside', because: OUTSIDE };
    }
    const because = f.groundingUnknown ? NOT_KNOWN : FLOATING;
    if (f.circuit === 'battery') {
      return {
        outcome: 'shows',
        indications: [{ state: 'always', shows: 'either', because, cause: 'floating' }],
      };
    }
    const inTheSun = f.rapidShutdown ? 'sun, inverter on' : 'sun';
    if (f.sunAndWind) {
      return {
        outcome: 'shows',
        indications: [
          { state: inTheSun, shows: 'either', because, cause: 'floating' },
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
            because: STILL,
            cause: 'standing-still',
          },
        ],
      };
    }
    return {
      outcome: 'shows',
      indications: [
        {
          state: inTheSun,
          shows: 'either',
          because,
          cause: 'floating',
        },
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
