import { IEC_60364_5_53_2019_534_4_10, NEC_2023_242_28 } from '../lead-size.js';
import type { Given } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import type { LeadsDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { NEC, practice, sources } from '../sources.js';

const FACTS = ['basis', 'circuit', 'atService', 'classOneAsked'] as const;
type Facts = Given<WiringFacts, typeof FACTS>;

export const leads = {
  id: 'wire/leads',
  title: 'How the leads of a protector are laid, and where its ground goes',
  why: 'Every hand’s breadth of lead lets more of the surge through.',
  sources: sources(
    {
      of: NEC,
      cite: ['lead-routing', 'smallest-lead'],
      also: practice(
        'Short, straight, tied together, no coils; ground to the equipment-ground bar of that enclosure.',
      ),
    },
    {
      of: ['iec'],
      cite: ['lead-routing', 'smallest-lead'],
      also: practice(
        'Short, straight, tied together, no coils; earth lead to the protective earth bar of that enclosure.',
      ),
    },
  ),
  facts: FACTS,
  decide(f: Facts): LeadsDecision {
    return {
      groundTo: isNec(f.basis) ? groundBar(f) : earthBar(f),
      smallest: smallestOf(f),
      notes: [
        'Leads short, straight and tied together; no coils, no needless bends.',
        'Disconnect the protector before an insulation test, and connect it again after.',
      ],
    };
  },
} satisfies WiringRule<WiringFacts, LeadsDecision>;

function groundBar(f: Facts): string {
  if (f.atService) return 'the bonded bar of the service equipment';
  return f.circuit === 'power'
    ? 'the equipment-ground bar of this enclosure, not its neutral bar and not a rod of its own'
    : 'the equipment-ground bar or terminal of this enclosure, not a rod of its own that isn’t bonded';
}

/** IEC: at a service of a TT or IT system neutral and earth aren't joined, so that no bar there is a bonded one. */
function earthBar(f: Facts): string {
  if (f.atService)
    return 'the main earthing terminal or the protective earth bar of the service equipment, not its neutral bar';
  return f.circuit === 'power'
    ? 'the protective earth bar of this enclosure, not its neutral bar and not an electrode of its own'
    : 'the protective earth bar or terminal of this enclosure, not an electrode of its own that isn’t bonded';
}

function smallestOf(f: Facts): string {
  if (isNec(f.basis)) {
    const { live, aluminum } = NEC_2023_242_28;
    return `${live} copper or ${aluminum} aluminium`;
  }
  const { T1, T2 } = IEC_60364_5_53_2019_534_4_10;
  return f.classOneAsked
    ? `earth lead ${T1.earth}, live leads ${T1.live} (values from memory)`
    : `earth lead ${T2.earth}, live leads ${T2.live}; of a class T1 part ${T1.earth} and ${T1.live} (values from memory)`;
}
