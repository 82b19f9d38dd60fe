import { reason, type Reason } from '../../model/reason.js';
import type { Fit, Given } from '../../model/rule.js';
import type { Lead } from '../../model/lead.js';
import type { WireSize } from '../../model/catalogue.js';
import { amperes } from '../../model/quantity.js';
import type { AnyFitRule, DoubtFacts, FitFacts } from '../fit-facts.js';
import { isDeviceUnknown, isWithin, leadsByMetal, leadsToPlan, type MetalLeads } from '../smallest-lead.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'classOneAsked', 'leadPlaces', 'part'] as const;
type Facts = Given<FitFacts, typeof FACTS>;

const DEVICE_UNKNOWN = reason('lead/device-not-stated');
const RANGE_UNKNOWN = reason('lead/range-not-stated');

const BY_TERMINALS = practice('The terminals of a part take no other wires than its wire range says.');
const CITED_UNDER_NEC: readonly Cited[] = [
  'smallest-lead',
  'small-conductors',
  'ampacity',
  'next-standard-size',
  'leads-by-instructions',
  BY_TERMINALS,
];

export const leadSize = {
  id: 'rate/lead-size',
  title: 'Leads that the terminals of a part take',
  why: 'A lead that is too thin for what stands ahead of it burns before anything opens.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['smallest-lead', BY_TERMINALS],
  }),
  facts: FACTS,
  ofPart: [
    'wireRanges',
    'leadByInstructions',
    'iecClass',
    'overcurrentMost',
    'overcurrentLeast',
    'overcurrentDevice',
  ],
  accepts(f: Facts): Fit {
    const each = leadsOf(f);
    const [first] = each;
    if (!first || leadsToPlan(each)) return { fits: true };
    return misses(each.find((one) => one.metal === 'copper') ?? first);
  },
  doubt(f: Pick<DoubtFacts, (typeof FACTS)[number]>): Reason | undefined {
    const { basis, leadPlaces: places, part } = f;
    if (isDeviceUnknown({ basis, places, part })) return DEVICE_UNKNOWN;
    return part.wireRanges.length === 0 ? RANGE_UNKNOWN : undefined;
  },
} satisfies AnyFitRule;

function leadsOf({ basis, classOneAsked, leadPlaces: places, part }: Facts): readonly MetalLeads[] {
  return leadsByMetal({ basis, classOneAsked, places, part });
}

function misses({ metal, line, ground, most, beyond }: MetalLeads): Fit {
  if (beyond !== undefined || !most)
    return { fits: false, because: reason('lead/beyond-table', { current: amperes(beyond ?? 0) }), gap: 1 };
  const needs = isWithin(ground, line) ? line : ground;
  const lead = (size: WireSize): Lead => ({ gauge: size.name, metal });
  return {
    fits: false,
    because: reason('lead/larger-than-range', {
      lead: needs === line ? 'line' : 'ground',
      needs: lead(needs),
      most: lead(most),
    }),
    gap: (needs.area - most.area) / needs.area,
  };
}
