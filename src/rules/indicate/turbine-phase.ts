import type { Given } from '../../model/rule.js';
import { figure } from '../../words/figures.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'frequency', 'turbineOutputKnown', 'indicatorMinVoltage'] as const;

export const turbinePhase = {
  id: 'indicate/turbine-phase',
  title: 'The light of a phase of a turbine',
  why: 'A slow turbine makes its lights flicker, and that is normal.',
  sources: sources({
    of: ALL,
    also: practice('The indicators flicker at the turbine’s frequency: pole pairs x rpm / 60.'),
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'turbine') return { outcome: 'outside', because: 'no phase of a turbine' };
    const at =
      f.frequency === undefined
        ? 'at the frequency of its generator'
        : `at the frequency of its generator, up to ${figure(f.frequency, 'Hz')}`;
    const least = f.indicatorMinVoltage;
    const slow =
      least === undefined
        ? ''
        : `; dark while it turns too slowly for the ${figure(least, 'V')} that it needs`;
    return {
      outcome: 'shows',
      indications: [
        f.turbineOutputKnown
          ? {
              state: 'turning',
              shows: 'flickers',
              because: `it flickers ${at}: normal${slow}`,
              cause: 'turning-alternator',
            }
          : {
              state: 'turning',
              shows: 'either',
              because: 'whether the turbine gives alternating or direct current isn’t stated',
              cause: 'output-unknown',
            },
        {
          state: 'still',
          shows: 'dark',
          because: 'a turbine that stands still gives no voltage: not a fault',
          cause: 'standing-still',
        },
      ],
    };
  },
} satisfies AnyIndicatorRule;
