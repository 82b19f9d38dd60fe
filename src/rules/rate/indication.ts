import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = ['basis', 'part'] as const;

export const indication = {
  id: 'rate/indication',
  title: 'A part shows whether it still works',
  why: 'Without a light or a flag nobody sees that a protector is used up.',
  sources: sources({ of: ['nec-2023'], cite: ['working-indication'] }),
  facts: FACTS,
  outside(f: Pick<FitPlace, 'basis'>): string | undefined {
    return f.basis === 'nec-2023' ? undefined : 'NEC 2023 alone asks for it';
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    return f.part.indicator === 'none'
      ? { fits: false, because: 'it has no indicator, which 242.9 asks for', gap: 1 }
      : { fits: true };
  },
} satisfies AnyFitRule;
