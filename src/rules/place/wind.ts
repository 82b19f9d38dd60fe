import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['kind', 'runs', 'sourceKinds'] as const;

const TOWER_BASE: PlacementDecision = {
  outcome: 'placed',
  strength: 'recommended',
  because: reason('wind/tower-base'),
};
const AT_COMBINER: PlacementDecision = { outcome: 'not-placed', because: reason('wind/enters-at-combiner') };
const NO_RUN: PlacementDecision = { outcome: 'not-placed', because: reason('wind/no-run') };

const CITED_UNDER_EVERY_BASIS: readonly Cited[] = [
  practice('One at the tower’s base and one where the run enters the building.'),
];

export const wind = {
  id: 'place/wind',
  title: 'At the base of a wind turbine’s tower and where its run enters',
  why: 'A tower is the tallest thing around, and its wires run from it to the house.',
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
  looksAt: {
    kinds: ['wind-turbine', 'charge-controller', 'grid-tie-inverter', 'inverter-charger', 'combiner'],
    ports: ['output', 'dc-in'],
  },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.kind === 'wind-turbine') return TOWER_BASE;
    const entering = f.runs.find((r) => !r.upstream && r.otherKind === 'wind-turbine');
    if (entering) {
      return {
        outcome: 'placed',
        strength: 'recommended',
        because: reason('wind/enters', { turbine: entering.otherTag }),
      };
    }
    return f.sourceKinds.includes('wind-turbine') ? AT_COMBINER : NO_RUN;
  },
} satisfies AnyPlacementRule;
