import { inputLimit } from '../../../src/rules/rate/input-limit.js';
import { array, converter, stated, turbine } from '../facts.js';
import { ratingTable } from '../table.js';

const input = { port: 'dc-in', kind: 'charge-controller' } as const;
const output = { port: 'output', kind: 'combiner' } as const;
const bears = converter({ maxDcVoltage: stated(600, 'max_dc_voltage') });
const elsewhere = 'this port is no DC input, and feeds none';
const fed = 'a source on the list feeds this port';
const umax = ['Umax: Highest DC voltage that CC-1 bears = 600 V [stated; jobs.csv, line 3, max_dc_voltage]'];

const UNFED = 'what feeds its combiner isn’t on the list, so what the converter bears stands in';

export const table = ratingTable(import.meta.url, inputLimit, [
  {
    name: 'an input that a source on the list feeds',
    given: { ...input, arrays: [array()], converters: [bears] },
    outside: fed,
  },
  {
    name: 'an AC port of a converter',
    given: { port: 'ac-out', inputUse: 'assumed', converters: [bears] },
    outside: elsewhere,
  },
  {
    name: 'no source names the converter: what its input bears (section 0)',
    given: { ...input, inputUse: 'assumed', converters: [bears] },
    asks: 600,
    steps: umax,
  },
  {
    name: 'a spare input that the list wants protected: the same',
    given: { ...input, inputUse: 'spare', converters: [bears] },
    asks: 600,
    steps: umax,
  },
  {
    name: 'a combiner that no source names: what its converter bears',
    given: { ...output, converters: [converter({ tag: 'X' }), bears] },
    asks: 600,
    steps: umax,
    bound: UNFED,
  },
  {
    name: 'a combiner that an array feeds',
    given: { ...output, arrays: [array()], converters: [bears] },
    outside: fed,
  },
  {
    name: 'a combiner that a turbine feeds',
    given: { ...output, turbines: [turbine()], converters: [bears] },
    outside: fed,
  },
  {
    name: 'an input that a combiner feeds, and nothing feeds the combiner: no bound, since a source names the converter',
    given: { ...input, converters: [bears] },
    asks: 600,
    steps: umax,
    bound: UNFED,
  },
  {
    name: 'an input that a turbine feeds',
    given: { ...input, turbines: [turbine()], converters: [bears] },
    outside: fed,
  },
  {
    name: 'of several converters behind a combiner the one that bears most, whichever comes first',
    given: {
      ...output,
      converters: [
        converter({ tag: 'CC-0', maxDcVoltage: stated(500, 'max_dc_voltage') }),
        converter({ tag: 'CC-X' }),
        bears,
        converter({ tag: 'CC-2', maxDcVoltage: stated(600, 'max_dc_voltage') }),
        converter({ tag: 'CC-3', maxDcVoltage: stated(450, 'max_dc_voltage') }),
      ],
    },
    asks: 600,
    steps: umax,
    bound: UNFED,
  },
  {
    name: 'a combiner that leads nowhere',
    given: { ...output },
    outside: 'it leads to no converter on the list',
  },
  {
    name: 'an AC port without a source of DC',
    given: { port: 'feeder', converters: [bears] },
    outside: elsewhere,
  },
  {
    name: 'the converter doesn’t say: missing',
    given: { ...input, inputUse: 'assumed', converters: [converter()] },
    unknown: 'neither a source nor the converter’s highest voltage is known',
    notes: [
      'fact/max-dc-voltage CC-1.max_dc_voltage: max_dc_voltage of CC-1 isn’t stated: no source on the list bounds the voltage of its inputs.',
    ],
  },
  {
    name: 'its cell is unreadable: its own item asks already',
    given: {
      ...input,
      inputUse: 'assumed',
      converters: [converter({ unreadable: new Set(['max_dc_voltage']) })],
    },
    unknown: 'neither a source nor the converter’s highest voltage is known',
  },
]);
