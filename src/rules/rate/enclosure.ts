import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { AnyFitRule, FitFacts, FitPlace } from '../fit-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['outdoors', 'part'] as const;

/** NEMA types that may stand outdoors; NEC 2023 Table 110.28, value from memory. */
export const NEC_2023_TABLE_110_28_OUTDOORS = ['3R', '3RX', '3S', '3SX', '4', '4X', '6', '6P'] as const;
const OUTDOORS: ReadonlySet<string> = new Set(NEC_2023_TABLE_110_28_OUTDOORS);

const CITED_UNDER_NEC: readonly Cited[] = [
  practice('Outdoors a NEMA type made for it; 4X preferred, since its lights are read there.'),
];

export const enclosure = {
  id: 'rate/enclosure',
  title: 'Enclosure of a part out of doors',
  why: 'Rain, sun and dust ruin a housing that was made for a dry room.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [
      practice(
        'Outdoors an enclosure made for it: a NEMA type, 4X preferred, or an IP code, which a person confirms.',
      ),
    ],
  }),
  facts: FACTS,
  ofPart: ['enclosure'],
  outside(f: Pick<FitPlace, 'outdoors'>): Reason | undefined {
    return f.outdoors ? undefined : reason('enclosure/indoors');
  },
  accepts(f: Given<FitFacts, typeof FACTS>): Fit {
    const stated = f.part.enclosure.trim();
    if (stated === '') return { fits: false, because: reason('enclosure/not-stated'), gap: 1 };
    const nema = nemaTypes(stated);
    if (nema.some((t) => OUTDOORS.has(t))) return { fits: true };
    if (/^ip/i.test(stated)) {
      return {
        fits: true,
        shortfall: reason('enclosure/other-scale', { enclosure: stated }),
      };
    }
    return { fits: false, because: reason('enclosure/not-for-outdoors', { enclosure: stated }), gap: 1 };
  },
} satisfies AnyFitRule;

/** The NEMA types that a cell names: `4X`, `NEMA 3R`, `4X/12`. */
export function nemaTypes(stated: string): readonly string[] {
  return stated
    .toUpperCase()
    .replace(/NEMA|TYPE/g, ' ')
    .split(/[\s,;/]+/)
    .filter((t) => t !== '');
}
