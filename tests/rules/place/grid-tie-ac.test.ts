import type { NearestProtector } from '../../../src/rules/placement-facts.js';
import { gridTieAc } from '../../../src/rules/place/grid-tie-ac.js';
import { placementTable } from '../table.js';

const at = { kind: 'grid-tie-inverter', port: 'ac-out', tag: 'INV-1' } as const;
const near = (some: Partial<NearestProtector>): NearestProtector => ({
  tag: 'MP',
  length: 8,
  sameBuilding: true,
  unplaced: [],
  protected: true,
  reach: 20,
  ...some,
});

// Reach 20 m: OVE Fachinformation E09:2022, Annex C, Uw 2500 V, Up 1500 V, leads 500 V.
export const table = placementTable(import.meta.url, gridTieAc, [
  {
    name: 'the list doesn’t say where the output goes',
    given: { ...at },
    then: 'recommended',
    because: 'the list doesn’t say where the output goes',
  },
  {
    name: 'a panel without a protector',
    given: { ...at, nearest: near({ protected: false }) },
    then: 'recommended',
    because: 'MP, where the output goes, has no protector',
  },
  {
    name: 'a run without a length',
    given: { ...at, nearest: near({ length: undefined }) },
    then: 'recommended',
    because: 'the run to MP isn’t stated',
  },
  {
    name: 'a panel in another building, however near',
    given: { ...at, nearest: near({ sameBuilding: false, length: 1 }) },
    then: 'recommended',
    because: 'MP isn’t in the same building',
  },
  {
    name: 'a protector whose reach isn’t known, since no part is chosen',
    given: { ...at, nearest: near({ reach: undefined }) },
    then: 'recommended',
    because: 'the reach of the protector at MP isn’t known',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}: at the reach itself, nothing more`,
    given: { ...at, basis, nearest: near({ length: 20 }) },
    then: 'not-placed' as const,
    because:
      'the protector at MP is 65.6 ft (20 m) away in the same building, within its reach of 65.6 ft (20 m)',
  })),
  {
    name: 'just beyond the reach',
    given: { ...at, nearest: near({ length: 20.01 }) },
    then: 'recommended',
    because: 'the protector at MP is 65.6 ft (20.01 m) away, beyond its reach of 65.6 ft (20 m)',
  },
  {
    name: 'a reach that isn’t limited',
    given: { ...at, nearest: near({ length: 25, reach: Infinity }) },
    then: 'not-placed',
    because: 'the protector at MP is 82 ft (25 m) away in the same building, and its reach isn’t limited',
  },
  {
    name: 'no reach at all: the protector there can’t hold the surge below what the inverter bears',
    given: { ...at, nearest: near({ reach: 0 }) },
    then: 'recommended',
    because: 'the protector at MP covers nothing along the cable: its reach is 0 ft (0 m)',
  },
  {
    name: 'no reach, and no cable to speak of: all the same',
    given: { ...at, nearest: near({ reach: 0, length: 0 }) },
    then: 'recommended',
    because: 'the protector at MP covers nothing along the cable: its reach is 0 ft (0 m)',
  },
  {
    name: 'iec: 10 m itself is within (IEC 60364-5-53 cl. 534.4.9, value from memory)',
    given: { ...at, basis: 'iec', nearest: near({ length: 10 }) },
    then: 'not-placed',
    because: 'the protector at MP is 10 m away in the same building, within its reach of 10 m',
  },
  {
    name: 'iec: beyond 10 m, though the reach is 20 m',
    given: { ...at, basis: 'iec', nearest: near({ length: 10.01 }) },
    then: 'recommended',
    because: 'the protector at MP is 10.01 m away, beyond its reach of 10 m',
  },
  {
    name: 'iec: a reach shorter than 10 m counts',
    given: { ...at, basis: 'iec', nearest: near({ length: 9, reach: 8.5 }) },
    then: 'recommended',
    because: 'the protector at MP is 9 m away, beyond its reach of 8.5 m',
  },
  {
    name: 'unused by the list',
    given: { ...at, unused: 'stated' },
    then: 'not-placed',
    because: 'the list says that this port is unused',
  },
  {
    name: 'a port that nothing names is still there: a grid-tie inverter has no other use',
    given: { ...at, unused: 'nothing-named' },
    then: 'recommended',
    because: 'the list doesn’t say where the output goes',
  },
  {
    name: 'a trunk of AC modules: always, even within reach',
    given: { kind: 'ac-module-branch', port: 'output', nearest: near({ length: 1 }) },
    then: 'recommended',
    because: 'a trunk of AC modules always has one at its output',
  },
  {
    name: 'an inverter-charger has place/inverter-ac',
    given: { kind: 'inverter-charger', port: 'ac-out' },
    then: 'not-looked-at',
  },
  {
    name: 'a place that isn’t known: protected, and the place is asked for',
    given: { ...at, nearest: near({ unplaced: ['MP'] }) },
    then: 'recommended',
    because: 'whether MP is in the same building isn’t known: a place isn’t stated',
    notes: ['fact/place MP.place'],
  },
]);
