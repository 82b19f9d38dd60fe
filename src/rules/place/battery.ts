import { metres } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { placesAsked } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'kind', 'runs', 'runInDoubt', 'longRunLimit'] as const;

const NO_CABLE: PlacementDecision = { outcome: 'not-placed', because: reason('battery/no-cable') };
const NOTHING_HANGS: PlacementDecision = { outcome: 'not-placed', because: reason('battery/nothing-hangs') };
const IN_ROOM: PlacementDecision = { outcome: 'not-placed', because: reason('battery/stays-in-room') };

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('A battery beside its inverter needs none; one whose cable leaves the room does.'),
];

export const battery = {
  id: 'place/battery',
  title: 'At a battery, or a DC panel on it, whose cable leaves the room',
  why: 'A battery cable that leaves the room can pick up surges on its way.',
  sources: sources({
    'nec-2017': CITED_UNDER_EVERY_BASIS,
    'nec-2020': CITED_UNDER_EVERY_BASIS,
    'nec-2023': CITED_UNDER_EVERY_BASIS,
    iec: CITED_UNDER_EVERY_BASIS,
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['battery', 'dc-panel'], ports: ['battery', 'dc-bus'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    // What comes to a DC panel is the battery's; what leaves it is its own.
    const runs = f.kind === 'dc-panel' ? f.runs.filter((r) => r.upstream) : f.runs;
    const elsewhere = runs.find((r) => r.placesDiffer);
    if (elsewhere) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: reason('battery/leaves-room', { to: elsewhere.otherTag }),
      };
    }
    const unknown = runs.find((r) => r.placeless.length > 0);
    if (unknown) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: reason('battery/may-leave-room', { to: unknown.otherTag }),
        notes: runs.flatMap((r) => placesAsked(r.placeless)),
      };
    }
    const long = runs.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    if (long?.length !== undefined) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: reason('battery/longer-than-limit', {
          to: long.otherTag,
          length: metres(long.length),
          limit: metres(f.longRunLimit),
          basis: f.basis,
        }),
      };
    }
    if (f.runInDoubt) return RUN_IN_DOUBT;
    if (runs.length > 0) return IN_ROOM;
    return f.kind === 'dc-panel' ? NOTHING_HANGS : NO_CABLE;
  },
} satisfies AnyPlacementRule;
