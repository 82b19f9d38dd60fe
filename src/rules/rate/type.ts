import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { DoubtFacts, AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'current', 'circuit', 'aheadOfDisconnect', 'part'] as const;

const CITED_UNDER_NEC: readonly Cited[] = ['type-1-places', 'type-2-places', 'type-3-places'];

export const type = {
  id: 'rate/type',
  title: 'Type of a part for its side of the disconnect',
  why: 'Ahead of the main breaker nothing protects the protector, so only the sturdiest type may stand there.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['origin-of-installation'],
  }),
  facts: FACTS,
  ofPart: ['iecClass', 'type'],
  outside(f: Pick<FitPlace, 'basis' | 'circuit'>): Reason | undefined {
    return isNec(f.basis) && f.circuit === 'control' ? reason('type/control-circuit') : undefined;
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    if (!isNec(f.basis)) {
      return f.part.iecClass === 'T3'
        ? { fits: false, because: reason('type/third-class'), gap: 1 }
        : { fits: true };
    }
    const has = f.part.type;
    if (f.aheadOfDisconnect && f.current === 'ac') {
      return has === 1
        ? { fits: true }
        : { fits: false, because: reason('type/ahead-of-disconnect', { type: has }), gap: 1 };
    }
    if (has === 3) return { fits: false, because: reason('type/third'), gap: 1 };
    return has === null && f.circuit === 'power'
      ? { fits: false, because: reason('type/not-stated'), gap: 1 }
      : { fits: true };
  },
  doubt(f: Pick<DoubtFacts, 'basis' | 'part'>): Reason | undefined {
    if (isNec(f.basis)) return f.part.type === null ? reason('type/not-stated') : undefined;
    return f.part.iecClass === null ? reason('class/not-stated') : undefined;
  },
} satisfies AnyFitRule;
