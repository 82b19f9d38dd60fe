import { volts } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['current', 'mcov', 'part'] as const;

const CITED_UNDER_NEC: readonly Cited[] = ['uses-not-permitted'];

export const mcov = {
  id: 'rate/mcov',
  title: 'Maximum continuous operating voltage of a channel',
  why: 'A protector that is too low for the wires’ own voltage wears out or burns.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['continuous-voltage', 'pv-dc-protection'],
  }),
  facts: FACTS,
  ofPart: ['mcovAc', 'mcovDc'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const has = f.current === 'ac' ? f.part.mcovAc : f.part.mcovDc;
    if (has === null)
      return { fits: false, because: reason('mcov/no-rating', { current: f.current }), gap: 1 };
    return has >= f.mcov
      ? { fits: true }
      : {
          fits: false,
          because: reason('mcov/below', { has: volts(has), asked: volts(f.mcov) }),
          gap: (f.mcov - has) / f.mcov,
        };
  },
} satisfies AnyFitRule;
