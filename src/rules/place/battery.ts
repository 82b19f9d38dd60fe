import type { Given, PlacementDecision } from '../../model/rule.js';
import { length } from '../../words/figures.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['runs', 'runInDoubt', 'longRunLimit'] as const;

export const battery = {
  id: 'place/battery',
  title: 'At a battery bus whose cable leaves the room',
  why: 'A battery cable that leaves the room can pick up surges on its way.',
  sources: sources({
    of: ALL,
    also: practice('A battery beside its inverter needs none; one whose cable leaves the room does.'),
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['battery'], ports: ['battery'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    const elsewhere = f.runs.find((r) => r.placesDiffer);
    if (elsewhere) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: `its cable leaves the room: ${elsewhere.otherTag} is in another place`,
      };
    }
    const long = f.runs.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    if (long?.length !== undefined) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: `its cable to ${long.otherTag} is ${length(long.length)}, longer than ${length(f.longRunLimit)}`,
      };
    }
    if (f.runInDoubt) return { outcome: 'not-placed', because: RUN_IN_DOUBT, open: true };
    return {
      outcome: 'not-placed',
      because:
        f.runs.length === 0
          ? 'no cable of it is on the list'
          : 'its cable stays in the room, by the places on the list',
    };
  },
} satisfies AnyPlacementRule;
