import type { Given, PlacementDecision } from '../../model/rule.js';
import { length } from '../../words/figures.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { ALL, practice, sources } from '../sources.js';

const FACTS = ['outdoors', 'runs', 'runInDoubt', 'longRunLimit'] as const;

export const generator = {
  id: 'place/generator',
  title: 'At a generator far from what it feeds',
  why: 'A generator away from the house has a long cable of its own.',
  sources: sources({
    of: ALL,
    also: practice('Its end by the length of its run; the other end is the inverter’s or the panel’s.'),
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['generator'], ports: ['output'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (!f.outdoors && !f.runInDoubt && !f.runs.some((r) => r.betweenBuildings)) {
      return {
        outcome: 'not-placed',
        because: 'it is neither outdoors nor in another building than what it feeds',
      };
    }
    const long = f.runs.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    if (long?.length !== undefined) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: `it stands ${f.outdoors ? 'outdoors' : 'in another building'}, ${length(long.length)} from ${long.otherTag}`,
      };
    }
    if (f.runInDoubt) return { outcome: 'not-placed', because: RUN_IN_DOUBT, open: true };
    if (f.runs.length === 0) return { outcome: 'not-placed', because: 'no run of it is on the list' };
    return f.runs.some((r) => r.length === undefined)
      ? { outcome: 'not-placed', because: 'the length of its run isn’t stated', open: true }
      : { outcome: 'not-placed', because: `its run isn’t longer than ${length(f.longRunLimit)}` };
  },
} satisfies AnyPlacementRule;
