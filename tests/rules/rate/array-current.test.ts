import { arrayCurrent } from '../../../src/rules/rate/array-current.js';
import { array, stated, THRESHOLDS } from '../facts.js';
import { ratingTable } from '../table.js';

const at = { port: 'dc-in', kind: 'charge-controller', current: 'dc' } as const;
const known = {
  value: 25,
  own: true,
  from: [
    { tag: 'ARR-1', fact: stated(25, 'fault_current') },
    { tag: 'ARR-1', fact: stated(25, 'library') },
  ],
  unknown: [],
};
const one = array();
const two = array({ tag: 'ARR-2', iscStc: stated(8, 'Isc'), stringsInParallel: stated(1, 'Strings') });
const outside = 'no DC port of an array';
const isc = 'Isc: Short-circuit current of one module at standard test conditions';
const max = 'Isc,max: Short-circuit current of the array = 1.25 × Isc × p';
const from690 = '[memory; NEC 690.8(A), value from memory]';
const fromAnnexB = '[memory; IEC 60364-7-712:2017 Annex B, value from memory]';
const workings = [
  `${isc} = 10 A [stated; jobs.csv, line 3, Isc]`,
  'p: Strings in parallel = 2  [stated; jobs.csv, line 3, Strings]',
  `${max} = 1.25 × 10 A × 2 = 25 A ${from690}`,
  `${isc} = 8 A [stated; jobs.csv, line 3, Isc]`,
  'p: Strings in parallel = 1  [stated; jobs.csv, line 3, Strings]',
  `${max} = 1.25 × 8 A × 1 = 10 A ${from690}`,
];

export const table = ratingTable(import.meta.url, arrayCurrent, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, two strings of 10 A: 1.25 x 10 A x 2 = 25 A (NEC 690.8(A), IEC 60364-7-712 Annex B, values from memory)`,
    given: { ...at, basis, arrays: [one] },
    asks: 25,
    steps: [
      ...workings.slice(0, 2),
      `${max} = 1.25 × 10 A × 2 = 25 A ${basis === 'iec' ? fromAnnexB : from690}`,
    ],
  })),
  {
    name: 'two arrays on one conductor add',
    given: { ...at, arrays: [one, two] },
    asks: 35,
    steps: [
      ...workings,
      'Isc,sum: Sum of the arrays on this conductor = sum of Isc,max = ARR-1 + ARR-2 = 35 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'two arrays of which one feeds the input, and nobody says which: the larger',
    given: { ...at, arrays: [one, two], arrayGroups: [['ARR-2'], ['ARR-1'], []] },
    asks: 25,
    steps: [
      ...workings,
      'Isc,sum: Largest of the sources, of which one feeds this input = largest of Isc,max = max(ARR-2, ARR-1) = 25 A [computed; computed: which source feeds it isn’t stated]',
    ],
  },
  {
    name: 'the share is a setting (own case)',
    given: { ...at, arrays: [one], thresholds: { ...THRESHOLDS, shortCircuitShare: 1.56 } },
    asks: 31.2,
  },
  {
    name: 'an array that states its own: as it is, at its output',
    given: { ...at, kind: 'array', port: 'output', arrays: [one], faultCurrent: known },
    asks: 25,
    steps: [
      'Isc: Short-circuit current of the array = 25 A [stated; jobs.csv, line 3, fault_current; jobs.csv, line 3, library]',
    ],
  },
  {
    name: 'a combiner’s own figure isn’t an array’s',
    given: { ...at, kind: 'combiner', port: 'output', arrays: [two], faultCurrent: known },
    asks: 10,
  },
  {
    name: 'Isc isn’t stated: not known, and nothing is missing by itself',
    given: { ...at, arrays: [one, { ...two, iscStc: undefined }] },
    unknown: 'the short-circuit current of ARR-2 isn’t stated (isc_stc, strings_in_parallel)',
  },
  {
    name: 'the strings in parallel aren’t stated, of two arrays',
    given: {
      ...at,
      arrays: [
        { ...one, stringsInParallel: undefined },
        { ...two, stringsInParallel: undefined },
      ],
    },
    unknown: 'the short-circuit current of ARR-1 and ARR-2 isn’t stated (isc_stc, strings_in_parallel)',
  },
  {
    name: 'an input that no source names: not known',
    given: { ...at, inputUse: 'assumed' },
    unknown: 'the source of this input isn’t on the list',
  },
  {
    name: 'an input that a turbine feeds',
    given: { ...at },
    outside: 'no array is behind this port',
  },
  {
    name: 'a three-phase turbine’s output is AC',
    given: { ...at, current: 'ac', arrays: [one] },
    outside,
  },
  {
    name: 'a battery bus is rate/fault-current’s',
    given: { ...at, port: 'battery', arrays: [one] },
    outside,
  },
]);
