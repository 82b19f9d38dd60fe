import { batteryVoltage } from '../../../src/rules/rate/battery-voltage.js';
import { battery, stated } from '../facts.js';
import { ratingTable } from '../table.js';

const at = { port: 'battery', kind: 'battery', tag: 'BAT-1', current: 'dc' } as const;
const highest = stated(60, 'max_dc_voltage');
const unknown = 'the highest voltage of BAT-1 isn’t known';
const why = 'the highest charge voltage of the bus depends on it';

// All voltages of cells: values from memory.
export const table = ratingTable(import.meta.url, batteryVoltage, [
  {
    name: 'another port',
    given: { port: 'dc-in', batteries: [battery()] },
    outside: 'this port is no battery bus',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, lead-acid 48 V without a temperature: 24 x 2.70 V = 64.8 V (value from memory)`,
    given: { ...at, basis, batteries: [battery()] },
    asks: 64.8,
  })),
  {
    name: 'a DC load or panel on the bus has the voltage of its battery',
    given: { ...at, kind: 'dc-load', port: 'dc-bus', tag: 'RADIO', batteries: [battery()] },
    asks: 64.8,
  },
  {
    name: 'lead-acid 48 V at -20 C: 24 x (2.467 + 0.005 x 45) V = 64.61 V (value from memory, computed)',
    given: { ...at, batteries: [battery()], lowestTemp: stated(-20, 'lowest_temp') },
    asks: 64.61,
    places: { T: 'jobs.csv, line 3, lowest_temp' },
  },
  {
    name: 'lithium iron phosphate 48 V: 16 x 3.65 V = 58.4 V (value from memory)',
    given: { ...at, batteries: [battery({ chemistry: stated('lfp') })] },
    asks: 58.4,
  },
  {
    name: 'cells go before the nominal voltage: 15 x 3.65 V = 54.75 V (computed)',
    given: { ...at, batteries: [battery({ chemistry: stated('lfp'), cells: stated(15, 'cells') })] },
    asks: 54.75,
    places: { n: 'jobs.csv, line 3, cells' },
  },
  {
    name: 'cells without a nominal voltage are enough: 20 x 1.70 V = 34 V (value from memory)',
    given: {
      ...at,
      batteries: [battery({ chemistry: stated('nicd'), voltage: undefined, cells: stated(20) })],
    },
    asks: 34,
  },
  ...[57, 58.4].map((volts) => ({
    name: `the maker’s ${volts} V isn’t above that of the chemistry: the chemistry’s 58.4 V (value from memory)`,
    given: {
      ...at,
      batteries: [battery({ chemistry: stated('lfp'), highest: stated(volts, 'max_dc_voltage') })],
    },
    asks: 58.4,
    places: {},
  })),
  {
    name: 'the maker’s figure above that of the chemistry counts (own case)',
    given: { ...at, batteries: [battery({ chemistry: stated('lfp'), highest })] },
    asks: 60,
    steps: ['Umax: Highest voltage of BAT-1 by its maker = 60 V [stated; jobs.csv, line 3, max_dc_voltage]'],
  },
  {
    name: 'another chemistry: the maker’s highest voltage',
    given: { ...at, batteries: [battery({ chemistry: stated('sodium'), highest })] },
    asks: 60,
    steps: ['Umax: Highest voltage of BAT-1 by its maker = 60 V [stated; jobs.csv, line 3, max_dc_voltage]'],
  },
  {
    name: 'another nominal voltage: the maker’s highest voltage',
    given: { ...at, batteries: [battery({ voltage: stated(80), highest })] },
    asks: 60,
  },
  {
    name: 'nothing but the maker’s highest voltage',
    given: { ...at, batteries: [battery({ voltage: undefined, chemistry: undefined, highest })] },
    asks: 60,
  },
  {
    name: 'another chemistry, nothing else known: missing',
    given: { ...at, batteries: [battery({ chemistry: stated('sodium') })] },
    unknown,
    notes: [
      'rate/battery-voltage-unknown BAT-1.battery_chemistry: The highest charge voltage of BAT-1 (sodium, 48 V) isn’t known from its chemistry and nominal voltage.',
    ],
  },
  {
    name: 'another nominal voltage, nothing else known: missing',
    given: { ...at, batteries: [battery({ voltage: stated(80) })] },
    unknown,
    notes: [
      'rate/battery-voltage-unknown BAT-1.cells: The highest charge voltage of BAT-1 (lead-acid, 80 V) isn’t known from its chemistry and nominal voltage.',
    ],
  },
  {
    name: 'another chemistry with its cells, but no voltage: missing, and the cells don’t help',
    given: {
      ...at,
      batteries: [battery({ chemistry: stated('y'.repeat(99)), voltage: undefined, cells: stated(14) })],
    },
    unknown,
    notes: [
      `rate/battery-voltage-unknown BAT-1.battery_chemistry: The highest charge voltage of BAT-1 (${'y'.repeat(40)}, no nominal voltage) isn’t known from its chemistry and nominal voltage.`,
    ],
  },
  {
    name: 'the chemistry isn’t stated: missing',
    given: { ...at, batteries: [battery({ chemistry: undefined })] },
    unknown,
    notes: [
      `fact/battery-chemistry BAT-1.battery_chemistry: battery_chemistry of BAT-1 isn’t stated: ${why}.`,
    ],
  },
  {
    name: 'the nominal voltage isn’t stated: missing',
    given: { ...at, batteries: [battery({ voltage: undefined })] },
    unknown,
    notes: [`fact/battery-voltage BAT-1.battery_voltage: battery_voltage of BAT-1 isn’t stated: ${why}.`],
  },
  {
    name: 'cells without a chemistry: only the chemistry is missing',
    given: {
      ...at,
      batteries: [battery({ voltage: undefined, chemistry: undefined, cells: stated(16) })],
    },
    unknown,
    notes: ['fact/battery-chemistry BAT-1.battery_chemistry'],
  },
  {
    name: 'nothing is stated: both are missing',
    given: { ...at, batteries: [battery({ voltage: undefined, chemistry: undefined })] },
    unknown,
    notes: ['fact/battery-chemistry BAT-1.battery_chemistry', 'fact/battery-voltage BAT-1.battery_voltage'],
  },
  {
    name: 'both cells unreadable: their own items ask already',
    given: {
      ...at,
      batteries: [
        battery({
          voltage: undefined,
          chemistry: undefined,
          unreadable: new Set(['battery_chemistry', 'battery_voltage']),
        }),
      ],
    },
    unknown,
  },
  {
    name: 'no battery on the bus: missing',
    given: { ...at, kind: 'inverter-charger', tag: 'INV-1', batteries: [] },
    unknown: 'no battery on the list is on this bus',
    notes: [
      'rate/battery-not-listed INV-1: A battery cable ends at INV-1, but no battery on the list is on that bus.',
    ],
  },
  {
    name: 'batteries on one bus: the highest counts, whichever comes first',
    given: {
      ...at,
      batteries: [
        battery({ chemistry: stated('lfp') }),
        battery({ tag: 'BAT-2' }),
        battery({ tag: 'BAT-3', chemistry: stated('lfp') }),
      ],
    },
    asks: 64.8,
  },
  {
    name: 'batteries of one voltage: the first is shown',
    given: {
      ...at,
      batteries: [
        battery({ chemistry: undefined, highest }),
        battery({ tag: 'BAT-2', chemistry: undefined, highest }),
      ],
    },
    asks: 60,
    steps: ['Umax: Highest voltage of BAT-1 by its maker = 60 V [stated; jobs.csv, line 3, max_dc_voltage]'],
  },
  {
    name: 'two of three unknown: each is asked for',
    given: {
      ...at,
      batteries: [
        battery({ chemistry: undefined }),
        battery({ tag: 'BAT-2' }),
        battery({ tag: 'BAT-3', chemistry: undefined }),
      ],
    },
    unknown: 'the highest voltage of BAT-1 and BAT-3 isn’t known',
    notes: [
      'fact/battery-chemistry BAT-1.battery_chemistry',
      'fact/battery-chemistry BAT-3.battery_chemistry',
    ],
  },
]);
