import { placesAsked } from '../unknown-place.js';
import type { PlacedNote } from '../../model/open-item.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { citing, sources } from '../sources.js';

const FACTS = [
  'basis',
  'tag',
  'unitOccupancy',
  'feeders',
  'servicePlaceOf',
  'servicePlaceUnknown',
  'servicePlaceUnplaced',
] as const;

const FEED_UNKNOWN = reason('feeder/feed-unknown');

export const feeder = {
  id: 'place/feeder',
  title: 'At a panel of a dwelling that a feeder supplies',
  why: 'A panel at the end of a feeder is too far from the protector at the service to be helped by it.',
  sources: sources({
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': ['feeder', 'outside-feeder'],
    iec: null,
  }),
  strength: {
    'nec-2017': null,
    'nec-2020': null,
    'nec-2023': ['required'],
    iec: null,
  },
  looksAt: { kinds: ['panel'], ports: ['feeder'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.servicePlaceOf !== '') {
      const because = reason('service-place/shared', { service: f.servicePlaceOf });
      return { outcome: 'not-placed', because, cites: citing(f.basis, 'feeder') };
    }
    // A panel has one of the two clauses, never both: 225.42 where anything feeds it from another building or structure.
    const outside = f.feeders.some((o) => o.outside);
    const cites = citing(f.basis, outside ? 'outside-feeder' : 'feeder');
    if (f.unitOccupancy === 'other')
      return { outcome: 'not-placed', because: reason('feeder/no-unit', { outside }), cites };
    if (f.feeders.length === 0) {
      return {
        outcome: 'not-placed',
        because: FEED_UNKNOWN,
        open: true,
        notes: [about(PLACE_MESSAGES.feedUnknown, { tag: f.tag, port: 'feeder' }, f.tag, 'connects_to')],
      };
    }
    const notes: PlacedNote[] = [];
    const main = f.feeders.find((o) => o.kind === 'panel' && !o.outside);
    if (main) {
      notes.push(about(PLACE_MESSAGES.subPanel, { tag: f.tag, main: main.tag }, f.tag, 'connects_to'));
    }
    notes.push(...placesAsked(f.servicePlaceUnplaced));
    if (f.servicePlaceUnknown && f.servicePlaceUnplaced.length === 0) {
      notes.push(about(PLACE_MESSAGES.servicePlaceUnknown, { tag: f.tag }, f.tag, 'run_length'));
    }
    return {
      outcome: 'placed',
      strength: 'required',
      because: reason('feeder/supplies-unit', {
        from: f.feeders.map((o) => o.tag),
        unit: f.unitOccupancy,
        outside,
      }),
      notes,
      cites,
    };
  },
} satisfies AnyPlacementRule;
