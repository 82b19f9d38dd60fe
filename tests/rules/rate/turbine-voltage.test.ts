import { turbineVoltage } from '../../../src/rules/rate/turbine-voltage.js';
import { converter, stated, turbine } from '../facts.js';
import { ratingTable } from '../table.js';

const bears = (volts: number): ReturnType<typeof converter> => converter({ maxDcVoltage: stated(volts) });
const dc = turbine({ output: 'dc' });
const unknown = 'the voltage of a turbine isn’t known';
const floats = {
  'nec-2017': '285.3',
  'nec-2020': '242.6',
  'nec-2023': '242.12',
};
const floating = (basis: keyof typeof floats): string =>
  `rate/turbine-floats WT-1: The phases of WT-1 float: it is assumed that the protector needs no listing for that, but ${floats[basis]} asks for one on ungrounded systems, and the office may.`;
const unearthed =
  'rate/turbine-unearthed WT-1: No phase of WT-1 is earthed: that the protector may stand in such a system, only its maker can say.';

export const table = ratingTable(import.meta.url, turbineVoltage, [
  {
    name: 'no turbine behind the port',
    given: {},
    outside: 'no turbine is behind this port',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, three phases: line to line, as the maker states it`,
    given: { basis, turbines: [turbine()] },
    asks: 200,
    steps: [
      'Voc: Open-circuit voltage of WT-1 at the highest unloaded speed, line to line = 200 V [stated; jobs.csv, line 3, Voc]',
    ],
    notes: [basis === 'iec' ? unearthed : floating(basis)],
  })),
  {
    name: 'direct current: as the maker states it, and nothing about phases',
    given: { turbines: [dc] },
    asks: 200,
    steps: [
      'Voc: Open-circuit voltage of WT-1 at the highest unloaded speed = 200 V [stated; jobs.csv, line 3, Voc]',
    ],
  },
  {
    name: 'rectified, 282.8 V: what the controller bears itself isn’t above it (1.414 x 200 V, computed)',
    given: { turbines: [turbine()], converters: [converter(), bears(282.8)] },
    asks: 200,
    notes: ['rate/turbine-floats WT-1'],
  },
  {
    name: 'rectified just above what the controller bears: a conflict',
    given: { turbines: [turbine()], converters: [bears(282.7)] },
    asks: 200,
    notes: [
      'rate/rectified-above-converter WT-1.open_circuit_voltage: WT-1 reaches 282.8 V behind the rectifier without load, above the 282.7 V that CC-1 bears.',
      'rate/turbine-floats WT-1',
    ],
  },
  {
    name: 'direct current isn’t rectified: 200 V itself isn’t above 200 V',
    given: { turbines: [dc], converters: [bears(200)] },
    asks: 200,
  },
  {
    name: 'direct current above what the controller bears: a conflict',
    given: { turbines: [dc], converters: [bears(199)] },
    asks: 200,
    notes: [
      'rate/rectified-above-converter WT-1.open_circuit_voltage: WT-1 reaches 200 V without load, above the 199 V that CC-1 bears.',
    ],
  },
  {
    name: 'the kind of current isn’t stated: missing (section 5)',
    given: { turbines: [turbine({ output: undefined })] },
    unknown,
    notes: [
      'fact/output WT-1.output: output of WT-1 isn’t stated: whether it gives alternating or direct current decides the protector.',
    ],
  },
  {
    name: 'the voltage isn’t stated: missing',
    given: { turbines: [turbine({ openCircuitVoltage: undefined })] },
    unknown,
    notes: [
      'fact/open-circuit-voltage WT-1.open_circuit_voltage: open_circuit_voltage of WT-1 isn’t stated: only the maker knows the voltage at the highest unloaded speed.',
    ],
  },
  {
    name: 'neither is stated: both are missing',
    given: { turbines: [turbine({ output: undefined, openCircuitVoltage: undefined })] },
    unknown,
    notes: ['fact/output WT-1.output', 'fact/open-circuit-voltage WT-1.open_circuit_voltage'],
  },
  {
    name: 'both cells unreadable: their own items ask already',
    given: {
      turbines: [
        turbine({
          output: undefined,
          openCircuitVoltage: undefined,
          unreadable: new Set(['output', 'open_circuit_voltage']),
        }),
      ],
    },
    unknown,
  },
  {
    name: 'several turbines: the highest counts, whichever comes first',
    given: {
      turbines: [
        { ...dc, tag: 'WT-1' },
        { ...dc, tag: 'WT-2', openCircuitVoltage: stated(250, 'b') },
        { ...dc, tag: 'WT-3', openCircuitVoltage: stated(220) },
      ],
    },
    asks: 250,
    steps: [
      'Voc: Open-circuit voltage of WT-2 at the highest unloaded speed = 250 V [stated; jobs.csv, line 3, b]',
    ],
  },
  {
    name: 'turbines of one voltage: the first is shown',
    given: { turbines: [dc, { ...dc, tag: 'WT-2' }] },
    asks: 200,
    steps: [
      'Voc: Open-circuit voltage of WT-1 at the highest unloaded speed = 200 V [stated; jobs.csv, line 3, Voc]',
    ],
  },
  {
    name: 'one of them unknown: the whole is',
    given: { turbines: [dc, { ...dc, tag: 'WT-2', openCircuitVoltage: undefined }] },
    unknown,
    notes: ['fact/open-circuit-voltage WT-2.open_circuit_voltage'],
  },
]);
