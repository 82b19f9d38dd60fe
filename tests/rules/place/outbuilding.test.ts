import { outbuilding } from '../../../src/rules/place/outbuilding.js';
import { LONG_NEC, run } from '../facts.js';
import { placementTable } from '../table.js';

const barn = { tag: 'BARN' } as const;
const feeder = run({ otherTag: 'MP', betweenBuildings: true, length: 40 });
const enters = 'the feeder from MP in another building enters here';
const building =
  'default/building BARN.building: The run between MP and BARN counts as between buildings because of their places; no building is stated.';

export const table = placementTable(import.meta.url, outbuilding, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, longer than 100 ft: recommended (common practice, no source)`,
    given: { ...barn, basis, runs: [{ ...feeder, length: 30.5 }] },
    then: 'recommended' as const,
    because: enters,
  })),
  {
    name: 'nec: 100 ft itself isn’t longer',
    given: { ...barn, runs: [{ ...feeder, length: LONG_NEC }] },
    then: 'not-placed',
    because: 'the feeder from MP in another building isn’t longer than 100 ft (30.48 m)',
  },
  {
    name: 'nec: a length that isn’t stated',
    given: { ...barn, runs: [{ ...feeder, length: undefined }] },
    then: 'not-placed',
    because: 'the length of the feeder from MP in another building isn’t stated',
    open: true,
  },
  {
    name: 'nec: of two feeders the long one asks',
    given: { ...barn, runs: [{ ...feeder, length: 1, otherTag: 'SP' }, feeder] },
    then: 'recommended',
    because: enters,
  },
  {
    name: 'iec: at any length (IEC 60364-5-53 cl. 534.4.9, value from memory)',
    given: { ...barn, basis: 'iec', runs: [{ ...feeder, length: 1 }] },
    then: 'recommended',
    because: enters,
  },
  {
    name: 'iec: also where the length isn’t stated',
    given: { ...barn, basis: 'iec', runs: [{ ...feeder, length: undefined }] },
    then: 'recommended',
    because: enters,
  },
  {
    name: 'a load is entered as a panel is',
    given: { ...barn, kind: 'load', basis: 'iec', runs: [feeder] },
    then: 'recommended',
    because: enters,
  },
  {
    name: 'a connection of it in doubt: its feeder may come from another building',
    given: { ...barn, runs: [], runInDoubt: true },
    then: 'not-placed',
    because: 'a connection of it can’t be used as it stands on the list',
    open: true,
  },
  {
    name: 'a feeder within the building',
    given: { ...barn, basis: 'iec', runs: [{ ...feeder, betweenBuildings: false }] },
    then: 'not-placed',
    because: 'no feeder from another building enters here',
  },
  {
    name: 'a feeder that leaves from here is the other end’s',
    given: { ...barn, basis: 'iec', runs: [{ ...feeder, upstream: true }] },
    then: 'not-placed',
    because: 'no feeder from another building enters here',
  },
  {
    name: 'a control run is no feeder',
    given: { ...barn, basis: 'iec', runs: [{ ...feeder, carries: 'control' }] },
    then: 'not-placed',
    because: 'no feeder from another building enters here',
  },
  {
    name: 'nec: a building by default decides: a person confirms',
    given: { ...barn, runs: [{ ...feeder, betweenByDefault: true }] },
    then: 'recommended',
    because: enters,
    notes: [building],
  },
  {
    name: 'iec: the same at any length, also outdoors, since only the building decides here',
    given: {
      ...barn,
      basis: 'iec',
      runs: [{ ...feeder, length: 1, outdoors: true, betweenByDefault: true }],
    },
    then: 'recommended',
    because: enters,
    notes: [building],
  },
  {
    name: 'an inverter isn’t looked at',
    given: { kind: 'inverter-charger', port: 'ac-in', basis: 'iec', runs: [feeder] },
    then: 'not-looked-at',
  },
  {
    name: 'the motor of a pump drive in another building: none, under any basis',
    given: {
      basis: 'iec',
      kind: 'load',
      drive: 'DRV-1',
      runs: [run({ betweenBuildings: true, length: 100 })],
    },
    then: 'not-placed',
    because:
      'the output of the pump drive DRV-1 carries switched pulses, which a protector for a sine wave doesn’t bear',
  },
  {
    name: 'iec: a place that isn’t known: protected, and the place is asked for',
    given: {
      ...barn,
      basis: 'iec',
      runs: [{ ...feeder, betweenBuildings: false, length: 1, unplaced: ['BARN'] }],
    },
    then: 'recommended',
    because: enters,
    notes: ['fact/place BARN.place'],
  },
]);
