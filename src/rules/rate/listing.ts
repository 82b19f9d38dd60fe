import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { DoubtFacts, AnyFitRule, FitFacts } from '../fit-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'circuit', 'listedFor', 'part'] as const;

// A part made to IEC 61643 that a laboratory hasn't listed to UL 1449 isn't listed as the NEC means it.
const IEC_STANDARD = /\b(?:IEC|EN)\b/i;
const UL_STANDARD = /\bUL\b|\b1449\b/i;

const CITED_UNDER_NEC: readonly Cited[] = ['listing', 'uses-not-permitted'];

export const listing = {
  id: 'rate/listing',
  title: 'Listing of a part, also for systems that aren’t solidly grounded',
  why: 'An independent laboratory must have tested the protector for the kind of system it hangs on.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [
      practice(
        'No listing is asked for; where the list states another grounding than solid, or a delta, the part names that system.',
      ),
    ],
  }),
  facts: FACTS,
  ofPart: ['iecClass', 'listedFor', 'listing'],
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    if (isNec(f.basis) && f.part.listing.trim() === '')
      return { fits: false, because: reason('listing/not-stated'), gap: 1 };
    if (isNec(f.basis) && IEC_STANDARD.test(f.part.listing) && !UL_STANDARD.test(f.part.listing))
      return { fits: false, because: reason('listing/iec-alone'), gap: 1 };
    if (f.circuit === 'power' && f.listedFor && !f.part.listedFor.includes(f.listedFor)) {
      return { fits: false, because: reason('listing/other-system', { system: f.listedFor }), gap: 1 };
    }
    return { fits: true };
  },
  doubt(f: Pick<DoubtFacts, 'basis' | 'circuit' | 'current' | 'part'>): Reason | undefined {
    const floats = f.circuit === 'turbine' && f.current === 'ac' ? [reason('listing/turbine-floats')] : [];
    const unclassed = !isNec(f.basis) && f.part.iecClass === null ? [reason('class/not-stated')] : [];
    const doubts = [...floats, ...unclassed];
    return doubts.length > 1 ? reason('several', { reasons: doubts }) : doubts[0];
  },
} satisfies AnyFitRule;
