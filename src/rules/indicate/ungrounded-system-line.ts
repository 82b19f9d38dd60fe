import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, Indication, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'liftedNeutral'] as const;

const OUTSIDE = reason('light-outside/ungrounded-system-line');
const UNGROUNDED = reason('light/ungrounded-system');
const NEUTRAL_HELD = reason('light/neutral-held');
const NEUTRAL_FREE = reason('light/neutral-free');
const NOTHING_FEEDS = reason('light/nothing-feeds');

const ONE_DARK_OTHERS_BRIGHTER = practice(
  'One line dark and the others brighter, or N lit that an impedance holds near ground: a ground fault may be on a line.',
);
const CITED_UNDER_NEC: readonly Cited[] = ['voltage-to-ground', ONE_DARK_OTHERS_BRIGHTER];

/** A star point that an impedance holds near ground has no voltage for its light until a line has a ground fault. */
function sourceOn(neutral: IndicatorFacts['liftedNeutral']): Indication {
  const state = 'source on';
  if (neutral === 'held') return { state, shows: 'dark', because: NEUTRAL_HELD, cause: 'neutral-at-rest' };
  const because = neutral === 'free' ? NEUTRAL_FREE : UNGROUNDED;
  return { state, shows: 'either', because, cause: 'ungrounded-system' };
}

export const ungroundedSystemLine = {
  id: 'indicate/ungrounded-system-line',
  title: 'The light of a conductor of an AC system that isn’t solidly grounded',
  why: 'Nothing ties these wires to ground, so how bright their lights are isn’t fixed.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [ONE_DARK_OTHERS_BRIGHTER],
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'power' || f.grounded || !f.floating) {
      return { outcome: 'outside', because: OUTSIDE };
    }
    return {
      outcome: 'shows',
      indications: [
        sourceOn(f.liftedNeutral),
        {
          state: 'source off',
          shows: 'dark',
          because: NOTHING_FEEDS,
          cause: 'de-energised',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
