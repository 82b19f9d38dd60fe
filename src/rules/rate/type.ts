import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { NEC, sources } from '../sources.js';

const FACTS = ['basis', 'current', 'circuit', 'aheadOfDisconnect', 'part'] as const;

export const type = {
  id: 'rate/type',
  title: 'Type of a part for its side of the disconnect',
  why: 'Ahead of the main breaker nothing protects the protector, so only the sturdiest type may stand there.',
  sources: sources(
    { of: NEC, cite: ['type-1-places', 'type-2-places', 'type-3-places'] },
    { of: ['iec'], cite: ['origin-of-installation'] },
  ),
  facts: FACTS,
  outside(f: Pick<FitPlace, 'basis' | 'circuit'>): string | undefined {
    return isNec(f.basis) && f.circuit === 'control' ? 'no type is asked on a control circuit' : undefined;
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    if (!isNec(f.basis)) {
      return f.part.iecClass === 'T3'
        ? { fits: false, because: 'class T3 where T1 or T2 is asked', gap: 1 }
        : { fits: true };
    }
    const has = f.part.type;
    if (f.aheadOfDisconnect && f.current === 'ac') {
      return has === 1
        ? { fits: true }
        : { fits: false, because: `${name(has)} ahead of the disconnect, where type 1 is asked`, gap: 1 };
    }
    if (has === 3) return { fits: false, because: 'type 3 where type 1 or 2 is asked', gap: 1 };
    return has === null && f.circuit === 'power'
      ? { fits: false, because: 'its type isn’t stated', gap: 1 }
      : { fits: true };
  },
} satisfies AnyFitRule;

function name(has: number | null): string {
  return has === null ? 'type not stated' : `type ${has}`;
}
