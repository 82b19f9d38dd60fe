import { kiloamperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { sources } from '../sources.js';

const FACTS = ['basis', 'atService', 'current', 'circuit', 'lightning', 'part', 'thresholds'] as const;

export const lightning = {
  id: 'rate/lightning',
  title: 'A part on a site with a lightning protection system',
  why: 'A lightning rod brings part of the strike itself to the wires, and that is more than a common surge.',
  sources: sources({
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': null,
    iec: ['origin-of-installation', 'discharge-currents'],
  }),
  facts: FACTS,
  ofPart: ['iecClass', 'impulseCurrent'],
  outside(f: Omit<FitPlace, 'outdoors' | 'earthing'>): Reason | undefined {
    if (isNec(f.basis)) return reason('lightning/nec');
    if (f.lightning === 'none') return reason('lightning/no-system');
    if (f.circuit === 'control') return reason('lightning/control-circuit');
    const dc = f.current === 'dc' && f.lightning === 'attached';
    return f.atService || dc ? undefined : reason('lightning/elsewhere');
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    if (f.part.iecClass !== 'T1') {
      return {
        fits: false,
        because: reason('lightning/class', { iecClass: f.part.iecClass }),
        gap: 1,
      };
    }
    const least = f.thresholds.lightningImpulseCurrentIec;
    const has = f.part.impulseCurrent;
    if (!f.atService) return { fits: true };
    if (has === null) return { fits: false, because: reason('impulse/not-stated'), gap: 1 };
    return has >= least
      ? { fits: true }
      : {
          fits: false,
          because: reason('impulse/below', { has: kiloamperes(has), asked: kiloamperes(least) }),
          gap: (least - has) / least,
        };
  },
} satisfies AnyFitRule;
