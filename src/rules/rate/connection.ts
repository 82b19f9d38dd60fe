import { reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts } from '../fit-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'earthing', 'current', 'circuit', 'part'] as const;

const CITED_UNDER_NEC: readonly Cited[] = [practice('Each channel from its conductor to ground.')];

export const connection = {
  id: 'rate/connection',
  title: 'Connection of a part to ground, or 3+1',
  why: 'Where the ground is a rod of one’s own, lines go to the neutral and only the neutral goes to ground.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['connection-types'],
  }),
  facts: FACTS,
  ofPart: ['connection'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const tt = f.basis === 'iec' && f.earthing === 'TT' && f.current === 'ac' && f.circuit === 'power';
    const has = f.part.connection;
    if (tt)
      return has === '3+1'
        ? { fits: true }
        : { fits: false, because: reason('connection/not-3-plus-1'), gap: 1 };
    return has === 'to-ground'
      ? { fits: true }
      : { fits: false, because: reason('connection/3-plus-1'), gap: 1 };
  },
} satisfies AnyFitRule;
