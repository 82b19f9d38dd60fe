import { dcInput } from '../../../src/rules/place/dc-input.js';
import { run } from '../facts.js';
import { placementTable } from '../table.js';

const at = { kind: 'charge-controller', port: 'dc-in', tag: 'CC-1' } as const;
const fed = { ...at, sourceKinds: ['array'] } as const;
const iec = { ...fed, basis: 'iec' } as const;
const notCompared = 'array feeds this input; its length isn’t compared with the critical length';

export const table = placementTable(import.meta.url, dcInput, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, an array on the input: recommended (common practice, no source)`,
    given: { ...fed, basis },
    then: 'recommended' as const,
    because: 'array feeds this input',
  })),
  {
    name: 'nec: neither the critical length nor a required service makes it required',
    given: { ...fed, arraysLength: 100, criticalLength: 10, serviceRequired: true },
    then: 'recommended',
    because: 'array feeds this input',
  },
  {
    name: 'two arrays and a turbine on one input are named once each',
    given: { ...at, sourceKinds: ['array', 'wind-turbine', 'array'] },
    then: 'recommended',
    because: 'array and wind-turbine feeds this input',
  },
  {
    name: 'nec: a converter that no source names counts as fed',
    given: { ...at, inputUse: 'assumed' },
    then: 'recommended',
    because: 'no source on the list names this converter, so this input counts as fed',
  },
  {
    name: 'a spare input stays bare',
    given: { ...at, inputUse: 'spare' },
    then: 'not-placed',
    because: 'no source on the list uses this input: it is spare',
  },
  {
    name: 'iec: a spare input stays bare also where the service must be protected',
    given: { ...at, basis: 'iec', inputUse: 'spare', serviceRequired: true },
    then: 'not-placed',
    because: 'no source on the list uses this input: it is spare',
  },
  {
    name: 'a battery port is no input',
    given: { ...at, port: 'battery' },
    then: 'not-looked-at',
  },
  {
    name: 'iec: required where the service is (IEC 60364-7-712 cl. 712.443, value from memory)',
    given: { ...iec, serviceRequired: true },
    then: 'required',
    because: 'array feeds this input, and protection is required at the service of this site',
  },
  {
    name: 'iec: an assumed source counts as an array, and the required service makes it required',
    given: { ...at, basis: 'iec', inputUse: 'assumed', serviceRequired: true },
    then: 'required',
    because:
      'no source on the list names this converter, so this input counts as fed, and protection is required at the service of this site',
  },
  {
    name: 'iec, L just below Lcrit of 46 m (dwelling, Ng 2.5): recommended',
    given: { ...iec, arraysLength: 45.99, criticalLength: 46 },
    then: 'recommended',
    because:
      'array feeds this input; the runs of its arrays, 45.99 m, against the critical length of 46 m: shorter',
  },
  {
    name: 'iec, L equal to Lcrit: required, since it is needed where L >= Lcrit (cl. 712.443, value from memory)',
    given: { ...iec, arraysLength: 46, criticalLength: 46 },
    then: 'required',
    because:
      'array feeds this input; the runs of its arrays, 46 m, against the critical length of 46 m: not shorter',
  },
  {
    name: 'iec, L above Lcrit: required',
    given: { ...iec, arraysLength: 46.01, criticalLength: 46 },
    then: 'required',
    because:
      'array feeds this input; the runs of its arrays, 46.01 m, against the critical length of 46 m: not shorter',
  },
  {
    name: 'iec, flash density unknown: not compared, recommended, and a person confirms',
    given: { ...iec, arraysLength: 100 },
    then: 'recommended',
    because: notCompared,
    notes: [
      'place/critical-length-unknown job.flash_density: The flash density isn’t stated, so the lengths of the cables of arrays aren’t compared with the critical length.',
    ],
  },
  {
    name: 'iec, neither known: the flash density is asked for first',
    given: iec,
    then: 'recommended',
    because: notCompared,
    notes: ['place/critical-length-unknown job.flash_density'],
  },
  {
    name: 'iec, a run of this input unknown: laid to its row',
    given: { ...iec, criticalLength: 10, runs: [run(), run({ unknownRow: 'ARR-2' })] },
    then: 'recommended',
    because: notCompared,
    notes: [
      'place/arrays-length-unknown ARR-2.run_length: A run of the arrays on CC-1 isn’t stated, so their length isn’t compared with the critical length.',
    ],
  },
  {
    name: 'iec, a run of another input of the converter unknown: laid to the converter',
    given: { ...iec, criticalLength: 10, runs: [run()] },
    then: 'recommended',
    because: notCompared,
    notes: ['place/arrays-length-unknown CC-1'],
  },
  {
    name: 'a combiner that nothing on the list feeds',
    given: { ...at, sourceKinds: [] },
    then: 'recommended',
    because: 'combiner feeds this input',
  },
  {
    name: 'iec: such a combiner counts as an array’s',
    given: { ...at, basis: 'iec', sourceKinds: [], serviceRequired: true },
    then: 'required',
    because: 'combiner feeds this input, and protection is required at the service of this site',
  },
  {
    name: 'iec, a turbine alone: the critical length is of arrays, so recommended and nothing to confirm',
    given: { ...at, basis: 'iec', sourceKinds: ['wind-turbine'], serviceRequired: true },
    then: 'recommended',
    because: 'wind-turbine feeds this input',
  },
  {
    name: 'the DC input of a pump drive that an array feeds: recommended (section 5)',
    given: { ...fed, kind: 'pump-drive' },
    then: 'recommended',
    because: 'array feeds this input',
  },
  {
    name: 'the DC input of a DC load is none of a converter',
    given: { kind: 'dc-load', port: 'dc-bus' },
    then: 'not-looked-at',
  },
]);
