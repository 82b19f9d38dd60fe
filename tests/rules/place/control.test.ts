import { control } from '../../../src/rules/place/control.js';
import { LONG_IEC, LONG_NEC, run } from '../facts.js';
import { placementTable } from '../table.js';

const at = {
  kind: 'control-circuit',
  port: 'terminals',
  tag: 'CTL-1',
  controlVolts: 24,
  connected: true,
} as const;
const wire = run({ otherTag: 'PUMP', otherKind: 'load', carries: 'control', length: 20 });
const inside = 'it is neither outdoors nor between buildings';
const nowhere = `${inside} nor on a long run`;

export const table = placementTable(import.meta.url, control, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, out of doors: recommended (common practice, no source)`,
    given: { ...at, basis, outdoors: true },
    then: 'recommended' as const,
    because: 'a control circuit out of doors',
  })),
  {
    name: 'its run out of doors',
    given: { ...at, runs: [run({ carries: 'control' }), { ...wire, outdoors: true }] },
    then: 'recommended',
    because: 'a control circuit out of doors',
  },
  {
    name: 'between buildings',
    given: { ...at, runs: [{ ...wire, betweenBuildings: true }] },
    then: 'recommended',
    because: 'a control circuit between buildings, to PUMP',
  },
  {
    name: 'nec, indoors: 100 ft itself isn’t long',
    given: { ...at, runs: [{ ...wire, length: LONG_NEC }] },
    then: 'not-placed',
    because: nowhere,
  },
  {
    name: 'nec, indoors: just longer than 100 ft',
    given: { ...at, runs: [{ ...wire, length: 30.5 }] },
    then: 'recommended',
    because: 'a control circuit of 100.1 ft (30.5 m)',
  },
  {
    name: 'iec, indoors: 10 m itself isn’t long',
    given: { ...at, basis: 'iec', runs: [{ ...wire, length: LONG_IEC }] },
    then: 'not-placed',
    because: nowhere,
  },
  {
    name: 'iec, indoors: just longer than 10 m',
    given: { ...at, basis: 'iec', runs: [{ ...wire, length: 10.1 }] },
    then: 'recommended',
    because: 'a control circuit of 10.1 m',
  },
  {
    name: 'indoors, a length that isn’t stated',
    given: { ...at, runs: [{ ...wire, length: undefined }] },
    then: 'not-placed',
    because: `${inside}; the length of its run isn’t stated`,
    open: true,
  },
  {
    name: '60 V itself is low voltage (common practice, no source)',
    given: { ...at, controlVolts: 60, outdoors: true },
    then: 'recommended',
    because: 'a control circuit out of doors',
  },
  {
    name: 'above 60 V: no control circuit, a conflict',
    given: { ...at, controlVolts: 60.5, outdoors: true },
    then: 'not-placed',
    because: '60.5 V is more than a low-voltage control circuit',
    notes: [
      'place/control-voltage-high CTL-1.control_voltage: CTL-1 works at 60.5 V, above the 60 V of a low-voltage control circuit.',
    ],
  },
  {
    name: 'its voltage isn’t stated: placed all the same, rating asks',
    given: { ...at, controlVolts: undefined, outdoors: true },
    then: 'recommended',
    because: 'a control circuit out of doors',
  },
  {
    name: 'the other end isn’t named: a person confirms',
    given: { ...at, connected: false, outdoors: true },
    then: 'recommended',
    because: 'a control circuit out of doors',
    notes: [
      'place/control-other-end CTL-1.connects_to: The other end of CTL-1 isn’t named, so it has a protector at this end only.',
    ],
  },
  {
    name: 'the other end isn’t named, nor a length: open, and a person confirms',
    given: { ...at, connected: false },
    then: 'not-placed',
    because: `${inside}; where it leads isn’t on the list`,
    open: true,
    notes: ['place/control-other-end CTL-1.connects_to'],
  },
  {
    name: 'a building by default decides: a person confirms',
    given: { ...at, runs: [{ ...wire, betweenBuildings: true, betweenByDefault: true }] },
    then: 'recommended',
    because: 'a control circuit between buildings, to PUMP',
    notes: [
      'default/building CTL-1.building: The run between CTL-1 and PUMP counts as between buildings because of their places; no building is stated.',
    ],
  },
  {
    name: 'out of doors decides, so the building isn’t asked about',
    given: { ...at, outdoors: true, runs: [{ ...wire, betweenBuildings: true, betweenByDefault: true }] },
    then: 'recommended',
    because: 'a control circuit out of doors',
  },
  {
    name: 'the length decides, so the building isn’t asked about',
    given: { ...at, runs: [{ ...wire, betweenBuildings: true, betweenByDefault: true, length: 31 }] },
    then: 'recommended',
    because: 'a control circuit between buildings, to PUMP',
  },
  {
    name: 'the terminals of what it connects to are placed with the circuit',
    given: { ...at, kind: 'load', outdoors: true },
    then: 'not-looked-at',
  },
  {
    name: 'the other end isn’t named, and its stated run is long: one at the equipment, a person confirms',
    given: { ...at, connected: false, ownLength: 30.5 },
    then: 'recommended',
    because: 'a control circuit of 100.1 ft (30.5 m)',
    notes: [
      'place/control-other-end CTL-1.connects_to: The other end of CTL-1 isn’t named, so it has a protector at this end only.',
    ],
  },
  {
    name: 'iec: just longer than 10 m',
    given: { ...at, basis: 'iec', connected: false, ownLength: 10.1 },
    then: 'recommended',
    because: 'a control circuit of 10.1 m',
    notes: ['place/control-other-end CTL-1.connects_to'],
  },
  {
    name: 'the other end isn’t named, and its stated run isn’t long: open, since it may leave the building',
    given: { ...at, connected: false, ownLength: LONG_NEC },
    then: 'not-placed',
    because: `${inside}; where it leads isn’t on the list`,
    open: true,
    notes: [
      'place/control-other-end CTL-1.connects_to: The other end of CTL-1 isn’t named: whether it leaves the building isn’t known, and it has no protector.',
    ],
  },
  {
    name: 'a place that isn’t known: protected, and the place is asked for',
    given: { ...at, runs: [{ ...wire, unplaced: ['PUMP'] }] },
    then: 'recommended',
    because: 'whether PUMP is in the same building isn’t known: a place isn’t stated',
    notes: ['fact/place PUMP.place'],
  },
  {
    name: 'a long run decides, whatever the place',
    given: { ...at, runs: [{ ...wire, length: 40, unplaced: ['PUMP'] }] },
    then: 'recommended',
    because: 'a control circuit of 131.2 ft (40 m)',
  },
  {
    name: 'out of doors the place decides nothing',
    given: { ...at, outdoors: true, runs: [{ ...wire, unplaced: ['PUMP'] }] },
    then: 'recommended',
    because: 'a control circuit out of doors',
  },
  {
    name: 'between buildings on one run: the place of another decides nothing',
    given: {
      ...at,
      runs: [
        { ...wire, betweenBuildings: true },
        { ...wire, otherTag: 'TANK', unplaced: ['TANK'] },
      ],
    },
    then: 'recommended',
    because: 'a control circuit between buildings, to PUMP',
  },
]);
