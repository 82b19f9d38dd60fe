import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'frequency', 'turbineOutputKnown', 'indicatorMinVoltage'] as const;

const OUTSIDE = reason('light-outside/turbine-phase');
const NOT_STATED = reason('light/output-not-stated');
const STILL = reason('light/turbine-still');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('The indicators flicker at the turbine’s frequency: pole pairs x rpm / 60.'),
];

export const turbinePhase = {
  id: 'indicate/turbine-phase',
  title: 'The light of a phase of a turbine',
  why: 'A slow turbine makes its lights flicker, and that is normal.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  ofPart: ['indicatorMinVoltage'],
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'turbine') return { outcome: 'outside', because: OUTSIDE };
    const { frequency, indicatorMinVoltage: least } = f;
    return {
      outcome: 'shows',
      indications: [
        f.turbineOutputKnown
          ? {
              state: 'turning',
              shows: 'flickers',
              because: reason('light/flickers', {
                frequency: frequency === undefined ? null : { value: frequency, unit: 'Hz' },
                least: least === undefined ? null : volts(least),
              }),
              cause: 'turning-alternator',
            }
          : {
              state: 'turning',
              shows: 'either',
              because: NOT_STATED,
              cause: 'output-unknown',
            },
        {
          state: 'still',
          shows: 'dark',
          because: STILL,
          cause: 'standing-still',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
