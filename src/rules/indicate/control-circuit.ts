import type { Given } from '../../model/rule.js';
import type { AnyIndicatorRule, IndicatorDecision, IndicatorFacts } from '../indicator-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['circuit', 'grounded', 'floating', 'groundingUnknown'] as const;

export const controlCircuit = {
  id: 'indicate/control-circuit',
  title: 'The light of a conductor of a control circuit',
  why: 'While the control supply is on, its ungrounded wire has a voltage to ground.',
  sources: sources({
    of: ALL,
    also: practice('Lit by its grounding while the supply is on, dark while it is off.'),
  }),
  facts: FACTS,
  decide(f: Given<IndicatorFacts, typeof FACTS>): IndicatorDecision {
    if (f.circuit !== 'control' || f.grounded)
      return { outcome: 'outside', because: 'no ungrounded conductor of a control circuit' };
    const off = {
      state: 'source off',
      shows: 'dark',
      because: 'the control supply is off: not a fault',
      cause: 'de-energised',
    } as const;
    return {
      outcome: 'shows',
      indications: f.floating
        ? [
            {
              state: 'source on',
              shows: 'either',
              because: `${f.groundingUnknown ? 'its grounding isn’t known' : 'neither wire is tied to ground'}: recorded at commissioning; a change from the record: call`,
              cause: 'floating',
            },
            off,
          ]
        : [
            {
              state: 'source on',
              shows: 'lit',
              because: 'the control supply gives it its voltage to ground',
              cause: 'energised',
            },
            off,
          ],
    };
  },
} satisfies AnyIndicatorRule;
