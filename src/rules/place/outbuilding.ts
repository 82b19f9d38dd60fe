import type { PlacedNote } from '../../model/open-item.js';
import { metres } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { mayLeaveBuilding, placesAsked } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'tag', 'drive', 'runs', 'runInDoubt', 'longRunLimit'] as const;

const NO_FEEDER: PlacementDecision = { outcome: 'not-placed', because: reason('outbuilding/no-feeder') };

const CITED_UNDER_NEC: readonly Cited[] = [
  practice('By the length of the feeder: more than 100 ft, both ends.'),
];

export const outbuilding = {
  id: 'place/outbuilding',
  title: 'Where a feeder enters another building',
  why: 'The cable between two buildings is outside the reach of the protector in the first.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['ten-metre-distance'],
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['panel', 'load'], ports: ['feeder'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.drive !== '') {
      return { outcome: 'not-placed', because: reason('drive/switched-pulses', { drive: f.drive }) };
    }
    const entering = f.runs.filter(
      (r) => !r.upstream && r.carries === 'ac' && (r.betweenBuildings || mayLeaveBuilding(r)),
    );
    const notes: PlacedNote[] = [];
    const first = entering[0];
    if (!first) {
      return f.runInDoubt ? RUN_IN_DOUBT : NO_FEEDER;
    }
    const fires =
      f.basis === 'iec' ? first : entering.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    if (!fires) {
      const unknown = entering.find((r) => r.length === undefined);
      return unknown
        ? {
            outcome: 'not-placed',
            because: reason('outbuilding/length-unknown', { from: unknown.otherTag }),
            open: true,
          }
        : {
            outcome: 'not-placed',
            because: reason('outbuilding/not-longer', {
              from: first.otherTag,
              limit: metres(f.longRunLimit),
              basis: f.basis,
            }),
          };
    }
    if (fires.betweenByDefault) {
      notes.push(
        about(PLACE_MESSAGES.buildingDefault, { tag: fires.otherTag, other: f.tag }, f.tag, 'building'),
      );
    }
    notes.push(...placesAsked(fires.unplaced));
    return {
      outcome: 'placed',
      strength: 'recommended',
      because: reason('outbuilding/enters', { from: fires.otherTag }),
      notes,
    };
  },
} satisfies AnyPlacementRule;
