import { wind } from '../../../src/rules/place/wind.js';
import { run } from '../facts.js';
import { placementTable } from '../table.js';

const input = { kind: 'charge-controller', port: 'dc-in', tag: 'CC-1' } as const;
const fromTurbine = run({ otherTag: 'WT-1', otherKind: 'wind-turbine', carries: 'dc' });

export const table = placementTable(import.meta.url, wind, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, the tower: recommended (common practice, no source)`,
    given: { basis, kind: 'wind-turbine' as const, port: 'output' as const },
    then: 'recommended' as const,
    because: 'the base of a wind turbine’s tower',
  })),
  {
    name: 'where its run enters (common practice, no source)',
    given: { ...input, runs: [run(), fromTurbine], sourceKinds: ['wind-turbine'] },
    then: 'recommended',
    because: 'the run of the wind turbine WT-1 enters here',
  },
  {
    name: 'an input that an array feeds',
    given: { ...input, runs: [run({ otherKind: 'array', carries: 'dc' })], sourceKinds: ['array'] },
    then: 'not-placed',
    because: 'no run of a wind turbine enters here',
  },
  {
    name: 'behind a combiner: the run enters at the combiner',
    given: {
      ...input,
      runs: [run({ otherKind: 'combiner', carries: 'dc' })],
      sourceKinds: ['array', 'wind-turbine'],
    },
    then: 'not-placed',
    because: 'the run of the wind turbine enters at the combiner before it',
  },
  {
    name: 'a combiner that a turbine feeds',
    given: { kind: 'combiner', port: 'output', runs: [fromTurbine] },
    then: 'recommended',
    because: 'the run of the wind turbine WT-1 enters here',
  },
  {
    name: 'a run towards a turbine, not from it, enters nothing',
    given: { ...input, runs: [{ ...fromTurbine, upstream: true }] },
    then: 'not-placed',
    because: 'no run of a wind turbine enters here',
  },
  {
    name: 'a hydro turbine stands on no tower',
    given: { kind: 'hydro-turbine', port: 'output' },
    then: 'not-looked-at',
  },
]);
