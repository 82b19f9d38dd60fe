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
  apart: [],
  unknown: [],
  passing: [],
};
const joined = { at: 'CC-1 dc-in-1', others: 0, othersCurrent: 0, othersUnknown: 0, backfeed: [] };
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
    uses: { 'Isc,max': ['Isc', 'p'], 'Isc,sum': ['Isc,max'] },
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
    name: 'nothing else is joined to it',
    given: { ...at, arrays: [one], joined },
    asks: 25,
    steps: workings.slice(0, 3),
  },
  {
    name: 'another array on the same input feeds a fault here too: 25 A + 1.25 x 8 A (NEC 690.8(A), from memory)',
    given: { ...at, port: 'output', arrays: [one], joined: { ...joined, others: 1, othersCurrent: 8 } },
    asks: 35,
    uses: { 'Isc,max': ['Isc', 'p'], 'Isc,total': ['Isc,max', 'Isc,others'] },
    steps: [
      ...workings.slice(0, 3),
      `Isc,others: Short-circuit current of the other array joined to it at CC-1 dc-in-1 = 1.25 × sum of Isc × p = 1.25 × 8 A = 10 A ${from690}`,
      'Isc,total: Most that feeds a fault on this circuit = sum of all that reach it = 25 A + 10 A = 35 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'three others, iec',
    given: {
      ...at,
      basis: 'iec',
      arrays: [one],
      joined: { ...joined, at: '', others: 3, othersCurrent: 24 },
    },
    asks: 55,
    steps: [
      ...workings.slice(0, 2),
      `${max} = 1.25 × 10 A × 2 = 25 A ${fromAnnexB}`,
      `Isc,others: Short-circuit current of the 3 other arrays joined to it = 1.25 × sum of Isc × p = 1.25 × 24 A = 30 A ${fromAnnexB}`,
      'Isc,total: Most that feeds a fault on this circuit = sum of all that reach it = 25 A + 30 A = 55 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'what a converter can send back adds',
    given: {
      ...at,
      arrays: [one],
      joined: { ...joined, backfeed: [{ tag: 'CC-1', inputs: 1, fact: stated(7, 'backfeed_a') }] },
    },
    asks: 32,
    uses: { 'Isc,max': ['Isc', 'p'], 'Isc,total': ['Isc,max', 'Iback'] },
    steps: [
      ...workings.slice(0, 3),
      'Iback: Current that CC-1 can send back = 7 A [stated; jobs.csv, line 3, backfeed_a]',
      'Isc,total: Most that feeds a fault on this circuit = sum of all that reach it = 25 A + 7 A = 32 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'twice where one array joins two inputs',
    given: {
      ...at,
      arrays: [one],
      joined: { ...joined, backfeed: [{ tag: 'CC-1', inputs: 2, fact: stated(7, 'backfeed_a') }] },
    },
    asks: 39,
    steps: [
      ...workings.slice(0, 3),
      'Iback: Current that CC-1 can send back out of each of the 2 inputs joined here = 7 A [stated; jobs.csv, line 3, backfeed_a]',
      'Isc,total: Most that feeds a fault on this circuit = sum of all that reach it = 25 A + 7 A + 7 A = 39 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'another array on the circuit that states no current: not known',
    given: { ...at, arrays: [one], joined: { ...joined, others: 1, othersUnknown: 1 } },
    unknown:
      'the short-circuit current of another array joined to it at CC-1 dc-in-1 isn’t stated (isc_stc, strings_in_parallel)',
  },
  {
    name: 'two of three others that state no current',
    given: { ...at, arrays: [one], joined: { ...joined, others: 3, othersCurrent: 8, othersUnknown: 2 } },
    unknown:
      'the short-circuit current of 2 other arrays joined to it at CC-1 dc-in-1 isn’t stated (isc_stc, strings_in_parallel)',
  },
  {
    name: 'the share is a setting (own case)',
    given: {
      ...at,
      arrays: [one],
      thresholds: { ...THRESHOLDS, shortCircuitShare: 1.56 },
      joined: { ...joined, others: 1, othersCurrent: 10 },
    },
    asks: 46.8,
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
