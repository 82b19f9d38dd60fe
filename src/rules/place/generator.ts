import { metres } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { mayLeaveBuilding } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'outdoors', 'runs', 'runInDoubt', 'longRunLimit'] as const;

const BESIDE: PlacementDecision = { outcome: 'not-placed', because: reason('generator/beside') };
const NO_RUN: PlacementDecision = { outcome: 'not-placed', because: reason('generator/no-run') };
const LENGTH_UNKNOWN: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('generator/length-unknown'),
  open: true,
};

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('Its end by the length of its run; the other end is the inverter’s or the panel’s.'),
];

export const generator = {
  id: 'place/generator',
  title: 'At a generator far from what it feeds',
  why: 'A generator away from the house has a long cable of its own.',
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
  looksAt: { kinds: ['generator'], ports: ['output'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (!f.outdoors && !f.runInDoubt && !f.runs.some((r) => r.betweenBuildings || mayLeaveBuilding(r)))
      return BESIDE;
    const long = f.runs.find((r) => r.length !== undefined && r.length > f.longRunLimit);
    if (long?.length !== undefined) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: reason('generator/far', {
          outdoors: f.outdoors,
          length: metres(long.length),
          from: long.otherTag,
          basis: f.basis,
        }),
      };
    }
    if (f.runInDoubt) return RUN_IN_DOUBT;
    if (f.runs.length === 0) return NO_RUN;
    if (f.runs.some((r) => r.length === undefined)) return LENGTH_UNKNOWN;
    const { basis } = f;
    const limit = metres(f.longRunLimit);
    return { outcome: 'not-placed', because: reason('generator/not-longer', { limit, basis }) };
  },
} satisfies AnyPlacementRule;
