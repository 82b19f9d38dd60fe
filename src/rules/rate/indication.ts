import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = ['basis', 'part'] as const;

export const indication = {
  id: 'rate/indication',
  title: 'A part shows whether it still works',
  why: 'Without a light or a flag nobody sees that a protector is used up.',
  sources: sources({ of: ['nec-2023'], cite: ['working-indication'] }),
  facts: FACTS,
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    return f.basis === 'nec-2023' && f.part.indicator === 'none'
      ? { fits: false, because: 'it has no indicator, which 242.9 asks for', gap: 1 }
      : { fits: true };
  },
} satisfies AnyFitRule;
