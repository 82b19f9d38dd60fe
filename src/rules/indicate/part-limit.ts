import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['indicator', 'indicatorMinVoltage', 'usualVoltage', 'grounded'] as const;

const OUTSIDE = reason('light-outside/part-limit');
const NO_INDICATOR = reason('light/no-indicator');
const FLAG = reason('light/flag');

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [practice('As the catalogue says.')];

export const partLimit = {
  id: 'indicate/part-limit',
  title: 'What the part itself lets its indicator show',
  why: 'Some parts have a flag instead of a light, and some lights need more voltage than the wire has.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  ofPart: ['indicator', 'indicatorMinVoltage'],
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.indicator === 'none') {
      return {
        outcome: 'shows',
        indications: [
          {
            state: 'always',
            shows: 'dark',
            because: NO_INDICATOR,
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
            shows: 'good',
            because: FLAG,
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
            because: reason('light/below-its-voltage', { needs: volts(least), has: volts(f.usualVoltage) }),
            cause: 'below-indicator-voltage',
          },
        ],
      };
    }
    return { outcome: 'outside', because: OUTSIDE };
  },
} satisfies AnyIndicatorRule;
