import { generator } from '../../../src/rules/place/generator.js';
import { LONG_IEC, LONG_NEC, run } from '../facts.js';
import { placementTable } from '../table.js';

const at = { kind: 'generator', port: 'output', tag: 'GEN' } as const;
const cable = run({ otherTag: 'INV-1', otherKind: 'inverter-charger', upstream: true });

export const table = placementTable(import.meta.url, generator, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, outdoors, longer than 100 ft: recommended (common practice, no source)`,
    given: { ...at, basis, outdoors: true, runs: [{ ...cable, length: 30.5 }] },
    then: 'recommended' as const,
    because: 'it stands outdoors, 100.1 ft (30.5 m) from INV-1',
  })),
  {
    name: 'in another building, longer than 100 ft',
    given: { ...at, runs: [cable, { ...cable, betweenBuildings: true, length: 40, otherTag: 'MP' }] },
    then: 'recommended',
    because: 'it stands in another building, 131.2 ft (40 m) from MP',
  },
  {
    name: 'outdoors, 100 ft itself isn’t longer',
    given: { ...at, outdoors: true, runs: [{ ...cable, length: LONG_NEC }] },
    then: 'not-placed',
    because: 'its run isn’t longer than 100 ft (30.48 m)',
  },
  {
    name: 'iec, outdoors, just longer than 10 m',
    given: { ...at, basis: 'iec', outdoors: true, runs: [{ ...cable, length: 10.1 }] },
    then: 'recommended',
    because: 'it stands outdoors, 10.1 m from INV-1',
  },
  {
    name: 'iec, outdoors, 10 m itself isn’t longer',
    given: { ...at, basis: 'iec', outdoors: true, runs: [{ ...cable, length: LONG_IEC }] },
    then: 'not-placed',
    because: 'its run isn’t longer than 10 m',
  },
  {
    name: 'outdoors, its length not stated: place/long-run asks for it',
    given: { ...at, outdoors: true, runs: [{ ...cable, length: undefined }] },
    then: 'not-placed',
    because: 'the length of its run isn’t stated',
    open: true,
  },
  {
    name: 'outdoors, one run short and the length of another not stated',
    given: { ...at, outdoors: true, runs: [cable, { ...cable, length: undefined }] },
    then: 'not-placed',
    because: 'the length of its run isn’t stated',
    open: true,
  },
  {
    name: 'outdoors, and nothing on the list connects to it',
    given: { ...at, outdoors: true, runs: [] },
    then: 'not-placed',
    because: 'no run of it is on the list',
  },
  {
    name: 'in the house, a connection of it in doubt: where it leads isn’t known',
    given: { ...at, runs: [], runInDoubt: true },
    then: 'not-placed',
    because: 'a connection of it can’t be used as it stands on the list',
    open: true,
  },
  {
    name: 'in the house, however long',
    given: { ...at, runs: [{ ...cable, length: 100 }] },
    then: 'not-placed',
    because: 'it is neither outdoors nor in another building than what it feeds',
  },
  {
    name: 'what it feeds isn’t looked at',
    given: { kind: 'panel', port: 'feeder', outdoors: true, runs: [{ ...cable, length: 100 }] },
    then: 'not-looked-at',
  },
  {
    name: 'indoors, far, and a place that isn’t known: protected',
    given: { ...at, runs: [{ ...cable, length: 40, unplaced: ['GEN'] }] },
    then: 'recommended',
    because: 'it stands in another building, 131.2 ft (40 m) from INV-1',
  },
]);
