import { metres } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';
import type { Given, PlacementDecision } from '../../model/rule.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { placesAsked } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = ['basis', 'kind', 'unused', 'nearest', 'longRunLimit'] as const;

const MODULE_BRANCH = placed(reason('grid-tie/module-branch'));
const TARGET_UNKNOWN = placed(reason('grid-tie/target-unknown'));
const UNUSED: PlacementDecision = { outcome: 'not-placed', because: reason('port/unused') };

const CITED_UNDER_NEC: readonly Cited[] = [
  practice(
    'One at the output, unless a protected panel, service or inverter is within reach in the same building.',
  ),
];

export const gridTieAc = {
  id: 'place/grid-tie-ac',
  title: 'At the AC output of a grid-tie inverter',
  why: 'The output is joined to the power company’s wires, unless a protector close by already guards it.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['pv-ac-protection', 'ten-metre-distance'],
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['grid-tie-inverter', 'ac-module-branch'], ports: ['ac-out', 'output'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    if (f.kind === 'ac-module-branch') return MODULE_BRANCH;
    if (f.unused === 'stated') return UNUSED;
    const near = f.nearest;
    if (!near) return TARGET_UNKNOWN;
    const target = near.tag;
    if (!near.protected) return placed(reason('grid-tie/target-bare', { target }));
    if (near.length === undefined) return placed(reason('grid-tie/run-unknown', { target }));
    if (near.unplaced.length > 0) {
      return { ...placed(reason('grid-tie/place-unknown', { target })), notes: placesAsked(near.unplaced) };
    }
    if (!near.sameBuilding) return placed(reason('grid-tie/other-building', { target }));
    if (near.reach === undefined) return placed(reason('grid-tie/reach-unknown', { target }));
    const { basis } = f;
    if (near.reach === 0) return placed(reason('grid-tie/no-reach', { target, basis }));
    const most = basis === 'iec' ? Math.min(near.reach, f.longRunLimit) : near.reach;
    const run = metres(near.length);
    if (near.length > most) {
      return placed(reason('grid-tie/beyond-reach', { target, run, reach: metres(most), basis }));
    }
    const reach = Number.isFinite(most) ? metres(most) : null;
    return { outcome: 'not-placed', because: reason('grid-tie/within-reach', { target, run, reach, basis }) };
  },
} satisfies AnyPlacementRule;

function placed(because: Reason): PlacementDecision & { readonly outcome: 'placed' } {
  return { outcome: 'placed', strength: 'recommended', because };
}
