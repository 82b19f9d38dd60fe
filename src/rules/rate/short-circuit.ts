import { kiloamperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { DoubtFacts, AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'current', 'circuit', 'sccr', 'part'] as const;

const CITED_UNDER_NEC: readonly Cited[] = ['short-circuit-current-rating', 'array-current'];

export const shortCircuit = {
  id: 'rate/short-circuit',
  title: 'Short-circuit current rating of a part',
  why: 'If a protector fails, it must not burst from the current that the supply can drive through it.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['short-circuit-current-rating', 'array-current'],
  }),
  facts: FACTS,
  ofPart: ['sccr', 'sccrDc'],
  outside(f: Pick<FitPlace, 'circuit'>): Reason | undefined {
    return f.circuit === 'control' ? reason('short-circuit/control-circuit') : undefined;
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const has = f.current === 'ac' ? f.part.sccr : f.part.sccrDc;
    if (has === null) {
      if (f.current === 'ac' && isNec(f.basis))
        return { fits: false, because: reason('short-circuit/not-stated'), gap: 1 };
      return f.sccr === undefined
        ? { fits: true }
        : {
            fits: false,
            because: reason('short-circuit/not-stated-and-asked', {
              current: f.current,
              asked: kiloamperes(f.sccr),
            }),
            gap: 1,
          };
    }
    if (f.sccr === undefined || has >= f.sccr) return { fits: true };
    return {
      fits: false,
      because: reason('short-circuit/below', {
        current: f.current,
        has: kiloamperes(has),
        asked: kiloamperes(f.sccr),
      }),
      gap: (f.sccr - has) / f.sccr,
    };
  },
  doubt(f: Pick<DoubtFacts, 'sccrUnknown'>): Reason | undefined {
    return f.sccrUnknown;
  },
} satisfies AnyFitRule;
