import type { Given } from '../../model/rule.js';
import { isNec } from '../../model/words.js';
import type { LeadsDecision, WiringFacts, WiringRule } from '../wiring-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['basis', 'circuit', 'atService', 'classOneAsked'] as const;

export const leads = {
  id: 'wire/leads',
  title: 'How the leads of a protector are laid, and where its ground goes',
  why: 'Every hand’s breadth of lead lets more of the surge through.',
  sources: sources({
    of: ALL,
    cite: ['lead-routing', 'smallest-lead'],
    also: practice(
      'Short, straight, tied together, no coils; ground to the equipment-ground bar of that enclosure.',
    ),
  }),
  facts: FACTS,
  decide(f: Given<WiringFacts, typeof FACTS>): LeadsDecision {
    const nec = isNec(f.basis);
    const groundTo = f.atService
      ? 'the bonded bar of the service equipment'
      : f.circuit === 'power'
        ? 'the equipment-ground bar of this enclosure, not its neutral bar and not a rod of its own'
        : 'the equipment-ground bar or terminal of this enclosure, not a rod of its own that isn’t bonded';
    const smallest = nec
      ? '14 AWG copper or 12 AWG aluminium'
      : f.classOneAsked
        ? 'earth lead 16 mm2, live leads 6 mm2 (values from memory)'
        : 'earth lead 6 mm2, live leads 2.5 mm2; of a class T1 part 16 mm2 and 6 mm2 (values from memory)';
    return {
      groundTo,
      smallest,
      notes: [
        'Leads short, straight and tied together; no coils, no needless bends.',
        'Disconnect the protector before an insulation test, and connect it again after.',
      ],
    };
  },
} satisfies WiringRule<WiringFacts, LeadsDecision>;
