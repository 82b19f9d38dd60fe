import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['grounded', 'circuit', 'conductor'] as const;

const OUTSIDE = reason('light-outside/grounded-conductor');
const NEUTRAL = reason('light/grounded', { conductor: 'neutral' });
const PHASE = reason('light/grounded', { conductor: 'phase' });
const POLE = reason('light/grounded', { conductor: 'pole' });
const DEVICE_OPEN = reason('light/ground-fault-device-open');

const DARK_IS_NORMAL = practice('Its indicator stays dark, which is normal.');
const CITED_UNDER_NEC: readonly Cited[] = ['array-ground-fault', DARK_IS_NORMAL];

export const groundedConductor = {
  id: 'indicate/grounded-conductor',
  title: 'The light of a grounded conductor',
  why: 'A light needs a voltage to ground, and a grounded wire has none: its light stays dark, and that is normal.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [DARK_IS_NORMAL],
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (!f.grounded) return { outcome: 'outside', because: OUTSIDE };
    const dark = {
      state: 'always',
      shows: 'dark',
      because: f.conductor === 'N' ? NEUTRAL : f.circuit === 'power' ? PHASE : POLE,
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
          because: DEVICE_OPEN,
          cause: 'ground-fault-device-open',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
