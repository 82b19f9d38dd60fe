import { reason } from '../../model/reason.js';
import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'groundingUnknown'] as const;

const OUTSIDE = reason('light-outside/control-circuit');
const SUPPLY = reason('light/control-supply');
const SUPPLY_OFF = reason('light/control-supply-off');
const NOT_KNOWN = reason('light/grounding-not-known');
const FLOATING = reason('light/floating', { neither: 'wire' });

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('Lit by its grounding while the supply is on, dark while it is off.'),
];

export const controlCircuit = {
  id: 'indicate/control-circuit',
  title: 'The light of a conductor of a control circuit',
  why: 'While the control supply is on, its ungrounded wire has a voltage to ground.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'control' || f.grounded) return { outcome: 'outside', because: OUTSIDE };
    const off = {
      state: 'source off',
      shows: 'dark',
      because: SUPPLY_OFF,
      cause: 'de-energised',
    } as const;
    return {
      outcome: 'shows',
      indications: f.floating
        ? [
            {
              state: 'source on',
              shows: 'either',
              because: f.groundingUnknown ? NOT_KNOWN : FLOATING,
              cause: 'floating',
            },
            off,
          ]
        : [
            {
              state: 'source on',
              shows: 'lit',
              because: SUPPLY,
              cause: 'energised',
            },
            off,
          ],
    };
  },
} satisfies AnyIndicatorRule;
