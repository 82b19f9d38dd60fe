import { since } from '../../model/editions.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { DoubtFacts, AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = ['basis', 'part'] as const;

export const indication = {
  id: 'rate/indication',
  title: 'A part shows whether it still works',
  why: 'Without a light or a flag nobody sees that a protector is used up.',
  sources: sources({ 'nec-2017': null, 'nec-2020': null, 'nec-2023': ['working-indication'], iec: null }),
  facts: FACTS,
  ofPart: ['indicator'],
  outside(f: Pick<FitPlace, 'basis'>): Reason | undefined {
    return since(f.basis, 'nec-2023') ? undefined : reason('indication/not-asked');
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    return f.part.indicator === 'none'
      ? { fits: false, because: reason('indication/none'), gap: 1 }
      : { fits: true };
  },
  doubt(f: Pick<DoubtFacts, 'part'>): Reason | undefined {
    // Called under a basis that asks for it: the others are outside.
    return f.part.indicator === null ? reason('indication/not-stated') : undefined;
  },
} satisfies AnyFitRule;
