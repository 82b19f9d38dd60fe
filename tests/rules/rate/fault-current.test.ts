import { faultCurrent } from '../../../src/rules/rate/fault-current.js';
import { stated } from '../facts.js';
import { ratingTable } from '../table.js';

const source = (tag: string, amperes: number): { tag: string; fact: ReturnType<typeof stated<number>> } => ({
  tag,
  fact: stated(amperes, 'fault_current'),
});
const own = { value: 10_000, own: true, from: [source('E-1', 10_000)], apart: [], unknown: [], passing: [] };
const joined = { ...own, own: false };
const from = (tag: string, amperes: number): string =>
  `Isc: Fault current from ${tag} = ${amperes} A [stated; jobs.csv, line 3, fault_current]`;
const outside = 'neither an AC port nor a battery bus';

export const table = ratingTable(import.meta.url, faultCurrent, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, the port’s own figure`,
    given: { basis, faultCurrent: own },
    asks: 10_000,
    steps: ['Isc: Available fault current = 10000 A [stated; E-1: jobs.csv, line 3, fault_current]'],
  })),
  {
    name: 'without its own figure that of the port upstream is the upper bound (common practice, no source)',
    given: { faultCurrent: { ...own, own: false, from: [source('SVC', 10_000)] } },
    asks: 10_000,
    steps: [
      'Isc: Available fault current upstream, at SVC: the upper bound = 10000 A [stated; SVC: jobs.csv, line 3, fault_current]',
    ],
  },
  {
    name: 'two sources that can feed together add (common practice, no source)',
    given: {
      faultCurrent: { ...joined, value: 10_200, from: [source('SVC', 10_000), source('ACB', 200)] },
    },
    asks: 10_200,
    steps: [
      from('SVC', 10_000),
      from('ACB', 200),
      'Isc,sum: Most that feeds a fault here at one time: SVC and ACB = sum of Isc = 10000 A + 200 A = 10200 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'two sources that exclude each other: the highest (common practice, no source)',
    given: { faultCurrent: { ...joined, from: [source('SVC', 10_000)], apart: [source('GEN', 500)] } },
    asks: 10_000,
    steps: [
      from('SVC', 10_000),
      from('GEN', 500),
      'Isc,sum: Most that feeds a fault here at one time: SVC; GEN only in place of that = highest sum of Isc at one time = 10000 A = 10000 A [computed; computed: sources that can feed together add, of those that exclude each other the highest counts]',
    ],
  },
  {
    name: 'a battery bus',
    given: { port: 'battery', current: 'dc', faultCurrent: { ...own, value: 6_000 } },
    asks: 6_000,
    steps: ['Isc: Available fault current = 6000 A [stated; E-1: jobs.csv, line 3, fault_current]'],
  },
  {
    name: 'two batteries on one bus feed a fault together',
    given: {
      port: 'battery',
      current: 'dc',
      faultCurrent: {
        ...own,
        value: 11_000,
        from: [source('BAT-1', 6_000), source('BAT-2', 5_000)],
      },
    },
    asks: 11_000,
    steps: [
      'Isc: Available fault current of BAT-1 = 6000 A [stated; jobs.csv, line 3, fault_current]',
      'Isc: Available fault current of BAT-2 = 5000 A [stated; jobs.csv, line 3, fault_current]',
      'Isc,sum: Sum of the batteries on this bus = sum of Isc = 6000 A + 5000 A = 11000 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'not stated',
    given: {},
    unknown: 'the available fault current isn’t stated',
  },
  {
    name: 'one of the sources isn’t stated: what is known is the least that a part must bear',
    given: { faultCurrent: { ...joined, unknown: ['GEN', 'INV-1'] } },
    asks: 10_000,
    unknown: 'the fault current of GEN and INV-1 isn’t stated',
    steps: [
      from('E-1', 10_000),
      'Isc,sum: Most that feeds a fault here at one time: E-1; without what comes from GEN and INV-1, which isn’t known = sum of Isc = 10000 A = 10000 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'an inverter whose AC in nothing on the list feeds may pass on more',
    given: { faultCurrent: { ...joined, passing: ['INV-1'] } },
    asks: 10_000,
    unknown: 'what INV-1 can pass on to a fault isn’t known, as the list doesn’t say all that feeds it',
    steps: [
      from('E-1', 10_000),
      'Isc,sum: Most that feeds a fault here at one time: E-1; without what comes from INV-1, which isn’t known = sum of Isc = 10000 A = 10000 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'both, and one of them for both reasons',
    given: { faultCurrent: { ...joined, unknown: ['GEN'], passing: ['GEN', 'MP'] } },
    asks: 10_000,
    unknown:
      'the fault current of GEN isn’t stated; what GEN and MP can pass on to a fault isn’t known, as the list doesn’t say all that feeds it',
    steps: [
      from('E-1', 10_000),
      'Isc,sum: Most that feeds a fault here at one time: E-1; without what comes from GEN and MP, which isn’t known = sum of Isc = 10000 A = 10000 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'a battery beside one that isn’t stated',
    given: {
      port: 'battery',
      current: 'dc',
      faultCurrent: { ...joined, from: [source('BAT-1', 6_000)], value: 6_000, unknown: ['BAT-2'] },
    },
    asks: 6_000,
    unknown: 'the fault current of BAT-2 isn’t stated',
    steps: [
      'Isc: Available fault current of BAT-1 = 6000 A [stated; jobs.csv, line 3, fault_current]',
      'Isc,sum: Sum of the batteries on this bus = sum of Isc = 6000 A = 6000 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'a transformer’s bound with a source behind it',
    given: {
      faultCurrent: {
        ...joined,
        value: 5_173,
        from: [
          {
            ...source('XF', 4973),
            by: { kva: stated(37, 'kva'), impedance: stated(3.1, 'impedance_percent'), system: '120/240' },
          },
          source('ACB', 200),
        ],
      },
    },
    asks: 5_173,
    uses: { Isc: ['S', 'Z'], 'Isc,sum': ['Isc'] },
    steps: [
      'S: Rated power of XF = 37 kVA [stated; jobs.csv, line 3, kva]',
      'Z: Impedance of XF = 3.1 % [stated; jobs.csv, line 3, impedance_percent]',
      'Isc: Most that XF can drive into a fault of its 120/240 side: an upper bound = S × 1000 / (phase factor × U × Z) = 4973 A [computed; kVA and impedance, with an unlimited supply ahead (IEC 60076-1, value from memory)]',
      from('ACB', 200),
      'Isc,sum: Most that feeds a fault here at one time: XF and ACB = sum of Isc = 4973 A + 200 A = 5173 A [computed; computed: sources in parallel add]',
    ],
  },
  {
    name: 'an array’s DC port is rate/array-current’s',
    given: { port: 'output', current: 'dc', faultCurrent: own },
    outside,
  },
  {
    name: 'an AC control circuit has no fault current of its own',
    given: { port: 'terminals', faultCurrent: own },
    outside,
  },
  {
    name: 'a transformer that states no figure: kVA and impedance bound it (IEC 60076-1, value from memory)',
    given: {
      faultCurrent: {
        value: 4973,
        own: false,
        apart: [],
        unknown: [],
        passing: [],
        from: [
          {
            ...source('XF', 4973),
            by: { kva: stated(37, 'kva'), impedance: stated(3.1, 'impedance_percent'), system: '120/240' },
          },
        ],
      },
    },
    asks: 4973,
    steps: [
      'S: Rated power of XF = 37 kVA [stated; jobs.csv, line 3, kva]',
      'Z: Impedance of XF = 3.1 % [stated; jobs.csv, line 3, impedance_percent]',
      'Isc: Most that XF can drive into a fault of its 120/240 side: an upper bound = S × 1000 / (phase factor × U × Z) = 4973 A [computed; kVA and impedance, with an unlimited supply ahead (IEC 60076-1, value from memory)]',
    ],
  },
  {
    name: 'a load on a battery bus',
    given: { port: 'dc-bus', current: 'dc', faultCurrent: { ...own, from: [source('BAT', 10_000)] } },
    asks: 10_000,
    steps: ['Isc: Available fault current = 10000 A [stated; BAT: jobs.csv, line 3, fault_current]'],
  },
]);
