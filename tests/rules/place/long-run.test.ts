import { longRun } from '../../../src/rules/place/long-run.js';
import { LONG_IEC, LONG_NEC, run } from '../facts.js';
import { placementTable } from '../table.js';

const outdoors = run({ outdoors: true, length: 40 });
const between = run({ betweenBuildings: true, length: 40 });
const toPanel = { outdoors: true, upstream: true, otherTag: 'SP' } as const;
const unknownRun = run({
  length: undefined,
  outdoors: true,
  unknownRow: 'SP',
  otherTag: 'SP',
  upstream: true,
});
const array = { kind: 'array', port: 'output', tag: 'ARR-1', basis: 'iec' } as const;
const arrayRun = run({
  otherTag: 'INV-1',
  otherKind: 'grid-tie-inverter',
  carries: 'dc',
  outdoors: true,
  upstream: true,
  fromArray: true,
  length: 30,
});

export const table = placementTable(import.meta.url, longRun, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}: 30.48 m itself isn’t longer than 100 ft (common practice, no source)`,
    given: { basis, runs: [run({ outdoors: true, length: LONG_NEC })] },
    then: 'not-placed' as const,
    because: 'no run outdoors or between buildings that ends here is longer than 100 ft (30.48 m)',
  })),
  {
    name: 'nec: just longer than 100 ft, outdoors, seen from downstream',
    given: { runs: [run({ outdoors: true, length: 30.49 })] },
    then: 'recommended',
    because: 'the run from OTHER is 100 ft (30.49 m), longer than 100 ft (30.48 m), and outdoors',
  },
  {
    name: 'nec: between buildings, seen from upstream',
    given: { runs: [run({ betweenBuildings: true, length: 40, upstream: true })] },
    then: 'recommended',
    because: 'the run to OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and between buildings',
  },
  {
    name: 'iec: 10 m itself isn’t longer than 10 m (IEC 60364-5-53 cl. 534.4.9, value from memory)',
    given: { basis: 'iec', runs: [run({ outdoors: true, length: LONG_IEC })] },
    then: 'not-placed',
    because: 'no run outdoors or between buildings that ends here is longer than 10 m',
  },
  {
    name: 'iec: just longer than 10 m',
    given: { basis: 'iec', runs: [run({ outdoors: true, length: 10.01 })] },
    then: 'recommended',
    because: 'the run from OTHER is 10.01 m, longer than 10 m, and outdoors',
  },
  {
    name: 'a long run that stays in the building',
    given: { runs: [run({ length: 100 })] },
    then: 'not-placed',
    because: 'no run that ends here is outdoors or between buildings',
  },
  {
    name: 'no run at all',
    given: {},
    then: 'not-placed',
    because: 'no run on the list ends here',
  },
  {
    name: 'a control run is place/control’s',
    given: { runs: [run({ carries: 'control', outdoors: true, length: 100 })] },
    then: 'not-placed',
    because: 'no run on the list ends here',
  },
  {
    name: 'a short run and a long one: the long one asks',
    given: { runs: [run({ outdoors: true }), between] },
    then: 'recommended',
    because: 'the run from OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and between buildings',
  },
  {
    name: 'a length that isn’t stated is asked for, named from upstream to downstream',
    given: { tag: 'MP', runs: [unknownRun] },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
    notes: [
      'fact/run-length SP.run_length: The run between MP and SP leaves the building, and its length isn’t stated (row SP).',
    ],
  },
  {
    name: 'the other end asks with the same words',
    given: { tag: 'SP', runs: [{ ...unknownRun, otherTag: 'MP', upstream: false }] },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
    notes: [
      'fact/run-length SP.run_length: The run between MP and SP leaves the building, and its length isn’t stated (row SP).',
    ],
  },
  {
    name: 'between buildings the length is asked for too',
    given: { tag: 'MP', runs: [{ ...unknownRun, outdoors: false, betweenBuildings: true }] },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
    notes: ['fact/run-length SP.run_length'],
  },
  {
    name: 'a connection of it in doubt: a run may be missing',
    given: { tag: 'MP', runs: [], runInDoubt: true },
    then: 'not-placed',
    because: 'a connection of it can’t be used as it stands on the list',
    open: true,
  },
  {
    name: 'a short run beside one whose length isn’t stated: that one may be long',
    given: { tag: 'MP', runs: [run({ outdoors: true }), unknownRun] },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
    notes: ['fact/run-length SP.run_length'],
  },
  {
    name: 'a length that nobody may ask for (unreadable already, or nothing worth protecting)',
    given: { tag: 'MP', runs: [{ ...unknownRun, lengthNotAsked: true }] },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
  },
  {
    name: 'a long run beside an unknown one: placed, and the other still asked for',
    given: { tag: 'MP', runs: [unknownRun, run({ ...toPanel, length: 40 })] },
    then: 'recommended',
    because: 'the run to SP is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
    notes: ['fact/run-length SP.run_length'],
  },
  {
    name: 'indoors, in one building, an unknown length isn’t asked for',
    given: { runs: [run({ length: undefined, unknownRow: 'SP' })] },
    then: 'not-placed',
    because: 'no run that ends here is outdoors or between buildings',
  },
  {
    name: 'a building by default decides: a person confirms, upstream first',
    given: { tag: 'MP', runs: [{ ...between, betweenByDefault: true, upstream: true, otherTag: 'SP' }] },
    then: 'recommended',
    because: 'the run to SP is 131.2 ft (40 m), longer than 100 ft (30.48 m), and between buildings',
    notes: [
      'default/building SP.building: The run between MP and SP counts as between buildings because of their places; no building is stated.',
    ],
  },
  {
    name: 'the same from downstream',
    given: { tag: 'SP', runs: [{ ...between, betweenByDefault: true, otherTag: 'MP' }] },
    then: 'recommended',
    because: 'the run from MP is 131.2 ft (40 m), longer than 100 ft (30.48 m), and between buildings',
    notes: [
      'default/building SP.building: The run between MP and SP counts as between buildings because of their places; no building is stated.',
    ],
  },
  {
    name: 'outdoors decides by itself, so a defaulted building isn’t asked about',
    given: { runs: [{ ...outdoors, betweenBuildings: true, betweenByDefault: true }] },
    then: 'recommended',
    because: 'the run from OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  },
  {
    name: 'a run that isn’t long leaves a defaulted building alone',
    given: { runs: [{ ...between, betweenByDefault: true, length: 20 }] },
    then: 'not-placed',
    because: 'no run outdoors or between buildings that ends here is longer than 100 ft (30.48 m)',
  },
  {
    name: 'a trunk of AC modules: its other end only',
    given: { kind: 'ac-module-branch', port: 'output', runs: [outdoors] },
    then: 'not-placed',
    because: 'a long run of a trunk of AC modules asks at its other end only',
  },
  {
    name: 'the terminals of a control circuit aren’t looked at',
    given: { kind: 'control-circuit', port: 'terminals', runs: [outdoors] },
    then: 'not-looked-at',
  },
  {
    name: 'iec, an array’s run, the service required: required (IEC 60364-7-712 cl. 712.443, value from memory)',
    given: { ...array, runs: [arrayRun], serviceRequired: true },
    then: 'required',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, L equal to Lcrit of 28.75 m (dwelling, Ng 4): required',
    given: { ...array, criticalLength: 28.75, runs: [{ ...arrayRun, arraysLength: 28.75 }] },
    then: 'required',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, L just below Lcrit: recommended',
    given: { ...array, criticalLength: 28.75, runs: [{ ...arrayRun, arraysLength: 28.74 }] },
    then: 'recommended',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, L not known: recommended',
    given: { ...array, criticalLength: 28.75, runs: [arrayRun] },
    then: 'recommended',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, Lcrit not known: recommended',
    given: { ...array, runs: [{ ...arrayRun, arraysLength: 100 }] },
    then: 'recommended',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, a run that no array feeds: recommended though the service is required',
    given: { basis: 'iec', serviceRequired: true, runs: [outdoors] },
    then: 'recommended',
    because: 'the run from OTHER is 40 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, the converter’s end of a combiner’s run: an array is behind it, so required',
    given: {
      basis: 'iec',
      kind: 'charge-controller',
      port: 'dc-in',
      serviceRequired: true,
      runs: [{ ...arrayRun, upstream: false, otherTag: 'CB-1', otherKind: 'combiner' }],
    },
    then: 'required',
    because: 'the run from CB-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec, two long runs: one of an array is enough',
    given: {
      ...array,
      kind: 'combiner',
      serviceRequired: true,
      runs: [{ ...arrayRun, fromArray: false }, arrayRun],
    },
    then: 'required',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'iec: only the long run counts, not a short one of an array beside it',
    given: {
      ...array,
      kind: 'combiner',
      serviceRequired: true,
      runs: [
        { ...arrayRun, length: 5 },
        { ...arrayRun, fromArray: false },
      ],
    },
    then: 'recommended',
    because: 'the run to INV-1 is 30 m, longer than 10 m, and outdoors',
  },
  {
    name: 'nec: never required, whatever the service',
    given: { ...array, basis: 'nec-2023', serviceRequired: true, runs: [{ ...arrayRun, length: 31 }] },
    then: 'recommended',
    because: 'the run to INV-1 is 101.7 ft (31 m), longer than 100 ft (30.48 m), and outdoors',
  },
  ...(['dc-load', 'dc-panel', 'diversion-load'] as const).map((kind) => ({
    name: `a ${kind} at the end of a long run outdoors: its end too`,
    given: {
      kind,
      port: 'dc-bus' as const,
      runs: [
        run({ carries: 'battery', otherTag: 'BAT-1', otherKind: 'battery', length: 40, outdoors: true }),
      ],
    },
    then: 'recommended' as const,
    because: 'the run from BAT-1 is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  })),
  {
    name: 'the battery’s end of the same run',
    given: {
      kind: 'battery',
      port: 'battery',
      runs: [
        run({
          carries: 'battery',
          otherTag: 'RADIO',
          otherKind: 'dc-load',
          length: 40,
          outdoors: true,
          upstream: true,
        }),
      ],
    },
    then: 'recommended',
    because: 'the run to RADIO is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  },
  ...(['transformer', 'ac-battery'] as const).map((kind) => ({
    name: `a ${kind} at a long run outdoors`,
    given: { kind, port: 'ac-out' as const, runs: [{ ...outdoors, upstream: true }] },
    then: 'recommended' as const,
    because: 'the run to OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  })),
  {
    name: 'the AC input of a pump drive on a long run outdoors',
    given: { kind: 'pump-drive', port: 'ac-in', runs: [outdoors] },
    then: 'recommended',
    because: 'the run from OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  },
  {
    name: 'the AC input of a pump drive indoors',
    given: { kind: 'pump-drive', port: 'ac-in', runs: [run()] },
    then: 'not-placed',
    because: 'no run that ends here is outdoors or between buildings',
  },
  {
    name: 'the output of a pump drive: no protector, and its maker is asked (section 0)',
    given: {
      kind: 'pump-drive',
      port: 'ac-out',
      tag: 'DRV-1',
      drive: 'DRV-1',
      runs: [{ ...outdoors, length: undefined, unknownRow: 'PUMP' }],
    },
    then: 'not-placed',
    because:
      'the output of the pump drive DRV-1 carries switched pulses, which a protector for a sine wave doesn’t bear',
    notes: [
      'place/drive-output DRV-1: The output of DRV-1 carries switched pulses, which a protector for a sine wave doesn’t bear: none is planned on the cable to its motor.',
    ],
  },
  {
    name: 'its motor: none either, and the length of its run isn’t asked for (section 5)',
    given: {
      kind: 'load',
      tag: 'PUMP',
      drive: 'DRV-1',
      runs: [{ ...outdoors, length: undefined, unknownRow: 'PUMP' }],
    },
    then: 'not-placed',
    because:
      'the output of the pump drive DRV-1 carries switched pulses, which a protector for a sine wave doesn’t bear',
  },
  {
    name: 'a disconnect has no protector of its own',
    given: { kind: 'disconnect', port: 'terminals', runs: [outdoors] },
    then: 'not-looked-at',
  },
  {
    name: 'a run longer than the limit, and a place that isn’t known: protected, and the place is asked for',
    given: { runs: [run({ length: 40, unplaced: ['SVC'] })] },
    then: 'recommended',
    because: 'the run from OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and between buildings',
    notes: ['fact/place SVC.place'],
  },
  {
    name: 'a run of 100 ft itself: the place decides nothing',
    given: { runs: [run({ length: LONG_NEC, unplaced: ['SVC'] })] },
    then: 'not-placed',
    because: 'no run outdoors or between buildings that ends here is longer than 100 ft (30.48 m)',
  },
  {
    name: 'outdoors the place decides nothing either',
    given: { runs: [run({ length: 40, outdoors: true, unplaced: ['SVC'] })] },
    then: 'recommended',
    because: 'the run from OTHER is 131.2 ft (40 m), longer than 100 ft (30.48 m), and outdoors',
  },
  {
    name: 'a run without a length, and a place that isn’t known: the place is asked for first',
    given: {
      runs: [run({ length: undefined, unknownRow: 'SP', upstream: true, otherTag: 'SP', unplaced: ['SP'] })],
    },
    then: 'not-placed',
    because: 'the length of a run that ends here isn’t stated',
    open: true,
    notes: ['fact/place SP.place'],
  },
]);
