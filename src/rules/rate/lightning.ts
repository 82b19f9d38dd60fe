import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import { figure } from '../../words/figures.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = ['basis', 'atService', 'current', 'circuit', 'lightning', 'part', 'thresholds'] as const;

export const lightning = {
  id: 'rate/lightning',
  title: 'A part on a site with a lightning protection system',
  why: 'A lightning rod brings part of the strike itself to the wires, and that is more than a common surge.',
  sources: sources({ of: ['iec'], cite: ['origin-of-installation', 'discharge-currents'] }),
  facts: FACTS,
  outside(f: Omit<FitPlace, 'outdoors'>): string | undefined {
    if (isNec(f.basis)) return 'only IEC 60364 asks it of the part itself';
    if (f.lightning === 'none') return 'the list states no lightning protection system';
    if (f.circuit === 'control') return 'a control circuit has parts of another kind';
    const dc = f.current === 'dc' && f.lightning === 'attached';
    return f.atService || dc
      ? undefined
      : 'neither the service, nor DC of a system that is attached to lightning protection';
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    if (f.part.iecClass !== 'T1') {
      return {
        fits: false,
        because: `class ${f.part.iecClass ?? 'not stated'} where T1 is asked beside a lightning protection system`,
        gap: 1,
      };
    }
    const least = f.thresholds.lightningImpulseCurrentIec;
    const has = f.part.impulseCurrent;
    if (!f.atService) return { fits: true };
    if (has === null) return { fits: false, because: 'Iimp isn’t stated', gap: 1 };
    return has >= least
      ? { fits: true }
      : {
          fits: false,
          because: `Iimp ${figure(has / 1000, 'kA')} < ${figure(least / 1000, 'kA')}`,
          gap: (least - has) / least,
        };
  },
} satisfies AnyFitRule;
