import { battery } from '../../../src/rules/place/battery.js';
import { LONG_IEC, LONG_NEC, run } from '../facts.js';
import { placementTable } from '../table.js';

const at = { kind: 'battery', port: 'battery', tag: 'BAT-1' } as const;
const cable = run({ otherTag: 'INV-1', otherKind: 'inverter-charger', carries: 'battery', length: 2 });
const panel = { kind: 'dc-panel', port: 'dc-bus', tag: 'DP-1' } as const;
const supply = run({ otherTag: 'BAT-1', otherKind: 'battery', carries: 'battery', length: 2 });
const toLoad = run({
  otherTag: 'RADIO',
  otherKind: 'dc-load',
  carries: 'battery',
  length: 3,
  upstream: true,
});

export const table = placementTable(import.meta.url, battery, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: another place at the other end, however near (common practice, no source)`,
    given: { ...at, basis, runs: [cable, { ...cable, placesDiffer: true, otherTag: 'INV-2' }] },
    then: 'recommended' as const,
    because: 'its cable leaves the room: INV-2 is in another place',
  })),
  {
    name: 'beside its inverter',
    given: { ...at, runs: [cable] },
    then: 'not-placed',
    because: 'its cable stays in the room, by the places on the list',
  },
  {
    name: 'no cable at all',
    given: { ...at },
    then: 'not-placed',
    because: 'no cable of it is on the list',
  },
  {
    name: 'nec: 100 ft itself isn’t long',
    given: { ...at, runs: [{ ...cable, length: LONG_NEC }] },
    then: 'not-placed',
    because: 'its cable stays in the room, by the places on the list',
  },
  {
    name: 'nec: just longer than 100 ft, in one room',
    given: { ...at, runs: [{ ...cable, length: 30.5 }] },
    then: 'recommended',
    because: 'its cable to INV-1 is 100.1 ft (30.5 m), longer than 100 ft (30.48 m)',
  },
  {
    name: 'iec: 10 m itself isn’t long',
    given: { ...at, basis: 'iec', runs: [{ ...cable, length: LONG_IEC }] },
    then: 'not-placed',
    because: 'its cable stays in the room, by the places on the list',
  },
  {
    name: 'iec: just longer than 10 m',
    given: { ...at, basis: 'iec', runs: [cable, { ...cable, length: 10.1 }] },
    then: 'recommended',
    because: 'its cable to INV-1 is 10.1 m, longer than 10 m',
  },
  {
    name: 'a length that isn’t stated isn’t long',
    given: { ...at, runs: [{ ...cable, length: undefined }] },
    then: 'not-placed',
    because: 'its cable stays in the room, by the places on the list',
  },
  {
    name: 'the inverter’s end of the cable is place/long-run’s',
    given: { kind: 'inverter-charger', port: 'battery', runs: [{ ...cable, placesDiffer: true }] },
    then: 'not-looked-at',
  },
  {
    name: 'a connection of it in doubt: where its cable leads isn’t known',
    given: { kind: 'battery', port: 'battery', runs: [], runInDoubt: true },
    then: 'not-placed',
    because: 'a connection of it can’t be used as it stands on the list',
    open: true,
  },
  {
    name: 'a cable to a DC load in another place: at the battery',
    given: {
      ...at,
      runs: [{ ...cable, upstream: true, otherTag: 'RADIO', otherKind: 'dc-load', placesDiffer: true }],
    },
    then: 'recommended',
    because: 'its cable leaves the room: RADIO is in another place',
  },
  {
    name: 'a DC panel of which a cable leaves the room: at the panel',
    given: { ...panel, runs: [supply, { ...toLoad, placesDiffer: true }] },
    then: 'recommended',
    because: 'its cable leaves the room: RADIO is in another place',
  },
  {
    name: 'a DC panel with a load at the end of a long run in one room: at the panel',
    given: { ...panel, runs: [supply, { ...toLoad, length: 31 }] },
    then: 'recommended',
    because: 'its cable to RADIO is 101.7 ft (31 m), longer than 100 ft (30.48 m)',
  },
  {
    name: 'a DC panel in another room than its battery: that end is place/long-run’s, the battery’s has one',
    given: { ...panel, runs: [{ ...supply, placesDiffer: true, length: 40 }, toLoad] },
    then: 'not-placed',
    because: 'its cable stays in the room, by the places on the list',
  },
  {
    name: 'a DC panel on which nothing hangs',
    given: { ...panel, runs: [{ ...supply, placesDiffer: true }] },
    then: 'not-placed',
    because: 'nothing on the list hangs on it; what feeds it is the battery’s',
  },
  {
    name: 'the load’s end of such a cable is place/long-run’s',
    given: { kind: 'dc-load', port: 'dc-bus', runs: [{ ...cable, placesDiffer: true }] },
    then: 'not-looked-at',
  },
  {
    name: 'a place that isn’t known: protected, and the place is asked for',
    given: { ...at, runs: [cable, { ...cable, placeless: ['INV-2'], otherTag: 'INV-2' }] },
    then: 'recommended',
    because: 'whether its cable to INV-2 leaves the room isn’t known: a place isn’t stated',
    notes: ['fact/place INV-2.place'],
  },
]);
