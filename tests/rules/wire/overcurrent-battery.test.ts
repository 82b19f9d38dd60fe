import { overcurrentBattery } from '../../../src/rules/wire/overcurrent-battery.js';
import { overcurrentTable } from '../table.js';

// Parts and currents are own cases.
const part = { overcurrentMost: 30, overcurrentLeast: null, overcurrentDevice: 'either' } as const;
const bus = {
  circuit: 'battery',
  current: 'dc',
  lines: ['positive', 'negative'],
  part,
  highest: 58.4,
} as const;

export const table = overcurrentTable(import.meta.url, overcurrentBattery, [
  {
    name: 'a grounded negative: one pole, its own whatever the circuit has (240.22)',
    given: { ...bus, groundedConductor: 'negative', faultCurrent: 5_000, ownDevice: 20 },
    then: 'either: 1 poles in positive not negative, - to 30 A, 58.4 V dc, breaks 5000 A',
    because: 'a battery bus: its own, no larger than the 30 A that the part allows',
  },
  {
    name: 'a grounded positive: the pole in the negative',
    given: { ...bus, groundedConductor: 'positive' },
    then: 'either: 1 poles in negative not positive, - to 30 A, 58.4 V dc, breaks - A',
  },
  {
    name: 'it floats: both poles',
    given: { ...bus, faultCurrent: 5_000 },
    then: 'either: 2 poles, - to 30 A, 58.4 V dc, breaks 5000 A',
  },
  {
    name: 'neither voltage nor fault current is known',
    given: { ...bus, highest: undefined },
    then: 'either: 2 poles, - to 30 A, - V dc, breaks - A',
  },
  {
    name: 'a housing with the grounded pole alone (240.22)',
    given: { ...bus, lines: ['negative'], groundedConductor: 'negative' },
    then: 'none: - poles, - to - A, - V dc, breaks - A',
    because: 'this housing takes a grounded conductor alone, in which no device stands (NEC 240.22)',
  },
  {
    name: 'iec, the grounded pole alone: no clause of the NEC',
    given: { ...bus, basis: 'iec', lines: ['negative'], groundedConductor: 'negative' },
    then: 'none: - poles, - to - A, - V dc, breaks - A',
    because: 'this housing takes a grounded conductor alone, in which no device stands',
  },
  {
    name: 'the part needs none',
    given: { ...bus, part: { ...part, overcurrentDevice: 'none' } },
    then: 'none: - poles, - to - A, - V dc, breaks - A',
    because: 'the part needs none of its own',
  },
  {
    name: 'no part',
    given: { ...bus, part: undefined, faultCurrent: 5_000 },
    then: 'unknown: 2 poles, - to - A, 58.4 V dc, breaks 5000 A',
    because: 'no part is chosen',
  },
  {
    name: 'the size isn’t stated',
    given: { ...bus, part: { ...part, overcurrentMost: null } },
    then: 'either: 2 poles, - to - A, 58.4 V dc, breaks - A',
    because: 'a battery bus: its own, no larger than what the part allows, which the catalogue doesn’t state',
  },
  {
    name: 'nothing is known of the conductors',
    given: { ...bus, lines: [] },
    then: 'either: - poles, - to 30 A, 58.4 V dc, breaks - A',
  },
  { name: 'an AC circuit', given: {}, outside: 'no battery bus' },
]);
