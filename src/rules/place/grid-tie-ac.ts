import type { Given, PlacementDecision } from '../../model/rule.js';
import { figure } from '../../words/figures.js';
import type { AnyPlacementRule, PlacementFacts } from '../placement-facts.js';
import { NEC, practice, sources } from '../sources.js';

const FACTS = ['basis', 'kind', 'unused', 'nearest', 'longRunLimit'] as const;

export const gridTieAc = {
  id: 'place/grid-tie-ac',
  title: 'At the AC output of a grid-tie inverter',
  why: 'The output is joined to the power company’s wires, unless a protector close by already guards it.',
  sources: sources(
    {
      of: NEC,
      also: practice(
        'One at the output, unless a protected panel, service or inverter is within reach in the same building.',
      ),
    },
    { of: ['iec'], cite: ['pv-ac-protection', 'ten-metre-distance'] },
  ),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['recommended'],
  },
  looksAt: { kinds: ['grid-tie-inverter', 'ac-module-branch'], ports: ['ac-out', 'output'] },
  facts: FACTS,
  decide(f: Given<PlacementFacts, typeof FACTS>): PlacementDecision {
    const placed = (because: string): PlacementDecision => ({
      outcome: 'placed',
      strength: 'recommended',
      because,
    });
    if (f.kind === 'ac-module-branch') return placed('a trunk of AC modules always has one at its output');
    if (f.unused === 'stated')
      return { outcome: 'not-placed', because: 'the list says that this port is unused' };
    const near = f.nearest;
    if (!near) return placed('the list doesn’t say where the output goes');
    if (!near.protected) return placed(`${near.tag}, where the output goes, has no protector`);
    if (near.length === undefined) return placed(`the run to ${near.tag} isn’t stated`);
    if (!near.sameBuilding) return placed(`${near.tag} isn’t in the same building`);
    if (near.reach === undefined) return placed(`the reach of the protector at ${near.tag} isn’t known`);
    if (near.reach === 0)
      return placed(`the protector at ${near.tag} covers nothing along the cable: its reach is 0 m`);
    const most = f.basis === 'iec' ? Math.min(near.reach, f.longRunLimit) : near.reach;
    const run = figure(near.length, 'm');
    return near.length <= most
      ? {
          outcome: 'not-placed',
          because: `the protector at ${near.tag} is ${run} away in the same building${Number.isFinite(most) ? `, within its reach of ${figure(most, 'm')}` : ', and its reach isn’t limited'}`,
        }
      : placed(`the protector at ${near.tag} is ${run} away, beyond its reach of ${figure(most, 'm')}`);
  },
} satisfies AnyPlacementRule;
