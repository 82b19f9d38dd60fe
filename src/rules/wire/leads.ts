import { IEC_60364_5_53_2019_534_4_10, NEC_2023_242_28 } from '../lead-size.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Lead } from '../../model/lead.js';
import type { Given } from '../../model/rule.js';
import { isNec } from '../../model/editions.js';
import type { LeadsDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'circuit', 'atService', 'grounding', 'classOneAsked'] as const;
type Facts = Given<WiringFacts, typeof FACTS>;

const BONDED_BAR = reason('ground-lead/bonded-bar');
const ELECTRODE_BAR = reason('ground-lead/electrode-bar');
const GROUND_BAR = reason('ground-lead/equipment-ground-bar');
const GROUND_TERMINAL = reason('ground-lead/equipment-ground-terminal');
const MAIN_TERMINAL = reason('ground-lead/main-earthing-terminal');
const EARTH_BAR = reason('ground-lead/protective-earth-bar');
const EARTH_TERMINAL = reason('ground-lead/protective-earth-terminal');
const NOTES = [reason('leads/short'), reason('leads/insulation-test')];

const copper = (gauge: string): Lead => ({ gauge, metal: 'copper' });
const { T1, T2 } = IEC_60364_5_53_2019_534_4_10;
const OF_T1 = { earth: copper(T1.earth), live: copper(T1.live) };
const CLASS_ONE_LEADS = reason('smallest-lead/earth-and-live', OF_T1);
const LEADS_BY_CLASS = reason('smallest-lead/by-class', {
  earth: copper(T2.earth),
  live: copper(T2.live),
  earthOfT1: OF_T1.earth,
  liveOfT1: OF_T1.live,
});
const NEC_LEADS = reason('smallest-lead/metals', {
  copper: copper(NEC_2023_242_28.live),
  aluminium: { gauge: NEC_2023_242_28.aluminum, metal: 'aluminium' },
});

const CITED_UNDER_NEC: readonly Cited[] = [
  'lead-routing',
  'smallest-lead',
  practice('Short, straight, tied together, no coils; ground to the equipment-ground bar of that enclosure.'),
];

export const leads = {
  id: 'wire/leads',
  title: 'How the leads of a protector are laid, and where its ground goes',
  why: 'Every hand’s breadth of lead lets more of the surge through.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: [
      'lead-routing',
      'smallest-lead',
      practice(
        'Short, straight, tied together, no coils; earth lead to the protective earth bar of that enclosure.',
      ),
    ],
  }),
  facts: FACTS,
  decide(f: Facts): LeadsDecision {
    return {
      groundTo: isNec(f.basis) ? groundBar(f) : earthBar(f),
      smallest: smallestOf(f),
      notes: NOTES,
    };
  },
} satisfies WiringRule<WiringFacts, LeadsDecision>;

function groundBar(f: Facts): Reason {
  // Of a system that isn't tied to ground solidly no bar there is a bonded one.
  if (f.atService) return f.grounding === 'none' || f.grounding === 'impedance' ? ELECTRODE_BAR : BONDED_BAR;
  return f.circuit === 'power' ? GROUND_BAR : GROUND_TERMINAL;
}

/** IEC: at a service of a TT or IT system neutral and earth aren't joined, so that no bar there is a bonded one. */
function earthBar(f: Facts): Reason {
  if (f.atService) return MAIN_TERMINAL;
  return f.circuit === 'power' ? EARTH_BAR : EARTH_TERMINAL;
}

function smallestOf(f: Facts): Reason {
  if (isNec(f.basis)) return NEC_LEADS;
  return f.classOneAsked ? CLASS_ONE_LEADS : LEADS_BY_CLASS;
}
