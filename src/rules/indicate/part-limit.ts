import type { Given } from '../../model/rule.js';
import { figure } from '../../words/figures.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['indicator', 'indicatorMinVoltage', 'usualVoltage', 'grounded'] as const;

export const partLimit = {
  id: 'indicate/part-limit',
  title: 'What the part itself lets its indicator show',
  why: 'Some parts have a flag instead of a light, and some lights need more voltage than the wire has.',
  sources: sources({ of: ALL, also: practice('As the catalogue says.') }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.indicator === 'none') {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'always',
            shows: 'dark',
            because: 'this part has no indicator: nothing shows whether the channel is used up',
            cause: 'no-indicator',
          },
        ],
      };
    }
    if (f.indicator === 'flag') {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'always',
            shows: 'either',
            because: 'a flag, not a light: it needs no voltage and is read by the part’s own instructions',
            cause: 'flag',
          },
        ],
      };
    }
    const least = f.indicatorMinVoltage;
    if (least !== undefined && f.usualVoltage !== undefined && !f.grounded && f.usualVoltage < least) {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'always',
            shows: 'dark',
            because: `the light of this part needs ${figure(least, 'V')}, and this conductor has about ${figure(f.usualVoltage, 'V')}: dark because of the part`,
            cause: 'below-indicator-voltage',
          },
        ],
      };
    }
    return { outcome: 'outside', because: 'the part lets its light show what the conductor does' };
  },
} satisfies AnyIndicatorRule;
