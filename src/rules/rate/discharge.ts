import { kiloamperes } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['nominalCurrent', 'part'] as const;

const CITED_UNDER_NEC: readonly Cited[] = ['nominal-discharge-current'];

export const discharge = {
  id: 'rate/discharge',
  title: 'Nominal discharge current of a part',
  why: 'A protector must bear the surges of its place many times over.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['discharge-currents'],
  }),
  facts: FACTS,
  ofPart: ['nominalCurrent'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const has = f.part.nominalCurrent;
    if (has === null) return { fits: false, because: reason('discharge/not-stated'), gap: 1 };
    return has >= f.nominalCurrent
      ? { fits: true }
      : {
          fits: false,
          because: reason('discharge/below', { has: kiloamperes(has), asked: kiloamperes(f.nominalCurrent) }),
          gap: (f.nominalCurrent - has) / f.nominalCurrent,
        };
  },
} satisfies AnyFitRule;
