import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import { figure } from '../../words/figures.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { ALL, sources } from '../sources.js';

const FACTS = ['basis', 'current', 'circuit', 'sccr', 'part'] as const;

export const shortCircuit = {
  id: 'rate/short-circuit',
  title: 'Short-circuit current rating of a part',
  why: 'If a protector fails, it must not burst from the current that the supply can drive through it.',
  sources: sources({
    of: ALL,
    cite: ['short-circuit-current-rating', 'array-current', 'discharge-currents'],
  }),
  facts: FACTS,
  outside(f: Pick<FitPlace, 'circuit'>): string | undefined {
    return f.circuit === 'control' ? 'no fault current is counted on a control circuit' : undefined;
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const has = f.current === 'ac' ? f.part.sccr : f.part.sccrDc;
    const name = f.current === 'ac' ? 'SCCR' : 'DC SCCR';
    if (has === null) {
      if (f.current === 'ac' && isNec(f.basis)) return { fits: false, because: 'SCCR isn’t stated', gap: 1 };
      return f.sccr === undefined
        ? { fits: true }
        : {
            fits: false,
            because: `${name} isn’t stated, and ${figure(f.sccr / 1000, 'kA')} is asked`,
            gap: 1,
          };
    }
    if (f.sccr === undefined || has >= f.sccr) return { fits: true };
    return {
      fits: false,
      because: `${name} ${figure(has / 1000, 'kA')} < ${figure(f.sccr / 1000, 'kA')}`,
      gap: (f.sccr - has) / f.sccr,
    };
  },
} satisfies AnyFitRule;
