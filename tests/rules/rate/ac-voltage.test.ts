import { acVoltage } from '../../../src/rules/rate/ac-voltage.js';
import { THRESHOLDS, turbine } from '../facts.js';
import { ratingTable } from '../table.js';

const outside = 'this port is on no AC system of the site';
const why = 'the voltage to ground of its conductors depends on it';

// Every system under every grounding is in tests/published/section-5-ac-systems.test.ts; here, what the rule makes of it.
export const table = ratingTable(import.meta.url, acVoltage, [
  ...(['nec-2017', 'nec-2020', 'nec-2023'] as const).map((basis) => ({
    name: `${basis}, 120/240: 1.15 x 120 V = 138 V (common practice, no source)`,
    given: { basis },
    asks: 138,
  })),
  {
    name: 'nec, the high leg sees its own 208 V: 239.2 V (NEC 408.3(E); common practice, no source)',
    given: { system: '240/120 high-leg' },
    asks: 239.2,
  },
  {
    name: 'nec, a delta without ground: line to line, 276 V (common practice, no source)',
    given: { system: '240 delta', grounding: 'none' },
    asks: 276,
  },
  {
    name: 'nec, a smaller share: range B decides, 127 V (ANSI C84.1 range B, value from memory)',
    given: { thresholds: { ...THRESHOLDS, continuousShare: 1 } },
    asks: 127,
  },
  {
    name: 'iec, 400Y/230 TN: 1.1 x 230 V = 253 V (IEC 60364-5-53 Table 534.2, value from memory)',
    given: { basis: 'iec', system: '400Y/230' },
    asks: 253,
  },
  {
    name: 'iec, 400Y/230 IT: 1.1 x 400 V = 440 V (IEC 60364-5-53 Table 534.2, value from memory)',
    given: { basis: 'iec', system: '400Y/230', earthing: 'IT' },
    asks: 440,
  },
  {
    name: 'a system that is foreign to the basis: by its formula, a person confirms',
    given: { tag: 'SP', system: '400Y/230' },
    asks: 264.5,
    notes: [
      'rate/foreign-system SP.ac_in: The AC system 400Y/230 of SP isn’t one of nec-2023: rated by the formula of nec-2023.',
    ],
  },
  {
    name: 'the same under iec, at an AC out',
    given: { tag: 'INV-1', basis: 'iec', port: 'ac-out', systemField: 'ac_out' },
    asks: 132,
    notes: ['rate/foreign-system INV-1.ac_out'],
  },
  {
    name: 'a generator’s output',
    given: { kind: 'generator', port: 'output', systemField: 'ac_out' },
    asks: 138,
  },
  ...(['ac_in', 'ac_in_2', 'ac_out'] as const).map((systemField) => ({
    name: `the system isn’t stated: ${systemField} is missing`,
    given: { tag: 'SP', system: undefined, systemField },
    unknown: 'the AC system isn’t stated',
    notes: [
      `fact/${systemField.replaceAll('_', '-')} SP.${systemField}: ${systemField} of SP isn’t stated: ${why}.`,
    ],
  })),
  {
    name: 'its cell is unreadable: its own item asks already',
    given: { tag: 'SP', system: undefined, unreadable: new Set(['ac_in']) },
    unknown: 'the AC system isn’t stated',
  },
  {
    name: 'another cell is unreadable: the system is missing all the same',
    given: { tag: 'SP', system: undefined, unreadable: new Set(['ac_out']) },
    unknown: 'the AC system isn’t stated',
    notes: ['fact/ac-in SP.ac_in'],
  },
  {
    name: 'a DC port',
    given: { port: 'dc-in', current: 'dc' },
    outside,
  },
  {
    name: 'a turbine’s output is no system of the site',
    given: { port: 'output', turbines: [turbine()] },
    outside,
  },
  {
    name: 'an AC control circuit is no system of the site',
    given: { port: 'terminals' },
    outside,
  },
  {
    name: 'nec, three lines of a solid 480Y/277: 1.15 x 277 V = 318.55 V (common practice, no source)',
    given: { system: '480 delta', whole: '480Y/277' },
    asks: 318.55,
  },
  {
    name: 'a run that joins two systems: the higher of the two, whichever end is rated',
    given: { system: '120/240', alsoBorne: [{ system: '480Y/277', whole: '480Y/277', grounding: 'solid' }] },
    asks: 318.55,
  },
  {
    name: 'the same from the end of the higher',
    given: { system: '480Y/277', alsoBorne: [{ system: '120/240', whole: '120/240', grounding: 'solid' }] },
    asks: 318.55,
  },
]);
