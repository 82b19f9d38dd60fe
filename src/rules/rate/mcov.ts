import type { Fit, Given } from '../../model/rule.js';
import { figure } from '../../words/figures.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['current', 'mcov', 'part'] as const;

export const mcov = {
  id: 'rate/mcov',
  title: 'Maximum continuous operating voltage of a channel',
  why: 'A protector that is too low for the wires’ own voltage wears out or burns.',
  sources: sources({ of: ALL, cite: ['uses-not-permitted', 'continuous-voltage', 'pv-dc-protection'] }),
  facts: FACTS,
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const has = f.current === 'ac' ? f.part.mcovAc : f.part.mcovDc;
    if (has === null) return { fits: false, because: `no ${f.current.toUpperCase()} rating`, gap: 1 };
    return has >= f.mcov
      ? { fits: true }
      : {
          fits: false,
          because: `MCOV ${figure(has, 'V')} < ${figure(f.mcov, 'V')}`,
          gap: (f.mcov - has) / f.mcov,
        };
  },
} satisfies AnyFitRule;
