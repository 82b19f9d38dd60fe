import type { PlacedNote } from '../../model/message.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { list } from '../../words/figures.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { sources } from '../sources.js';

const FACTS = ['tag', 'unitOccupancy', 'feeders', 'servicePlaceOf', 'servicePlaceUnknown'] as const;

export const feeder = {
  id: 'place/feeder',
  title: 'At a panel of a dwelling that a feeder supplies',
  why: 'A panel at the end of a feeder is too far from the protector at the service to be helped by it.',
  sources: sources({ of: ['nec-2023'], cite: ['feeder', 'outside-feeder'] }),
  strength: { 'nec-2023': ['required'] },
  looksAt: { kinds: ['panel'], ports: ['feeder'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.servicePlaceOf !== '') {
      return {
        outcome: 'not-placed',
        because: `it stands at the service ${f.servicePlaceOf}, whose protector is its protector`,
      };
    }
    if (f.unitOccupancy === 'other') {
      return {
        outcome: 'not-placed',
        because: 'its building holds no dwelling or sleeping unit, so 215.18 and 225.42 don’t ask',
      };
    }
    if (f.feeders.length === 0) {
      return {
        outcome: 'not-placed',
        because: 'the list doesn’t say what feeds it',
        open: true,
        notes: [about(PLACE_MESSAGES.feedUnknown, { tag: f.tag }, f.tag, 'connects_to')],
      };
    }
    const notes: PlacedNote[] = [];
    const main = f.feeders.find((o) => o.kind === 'panel' && !o.outside);
    if (main) {
      notes.push(about(PLACE_MESSAGES.subPanel, { tag: f.tag, main: main.tag }, f.tag, 'connects_to'));
    }
    if (f.servicePlaceUnknown) {
      notes.push(about(PLACE_MESSAGES.servicePlaceUnknown, { tag: f.tag }, f.tag, 'run_length'));
    }
    const outside = f.feeders.some((o) => o.outside);
    return {
      outcome: 'placed',
      strength: 'required',
      because: `a feeder from ${list(f.feeders.map((o) => o.tag))} supplies this panel of a ${f.unitOccupancy} unit (${outside ? '225.42, outside feeder' : '215.18'})`,
      notes,
    };
  },
} satisfies AnyPlacementRule;
