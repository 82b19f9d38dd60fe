import { controlVoltage } from '../../../src/rules/rate/control-voltage.js';
import { stated, THRESHOLDS } from '../facts.js';
import { ratingTable } from '../table.js';

const dc = stated({ volts: 24, current: 'dc' } as const, 'control_voltage');
const ac = stated({ volts: 24, current: 'ac' } as const, 'control_voltage');
const at = { port: 'terminals', kind: 'control-circuit', tag: 'CTL-1' } as const;
const unknown = 'the control voltage isn’t stated';

export const table = ratingTable(import.meta.url, controlVoltage, [
  {
    name: 'another port',
    given: { controlVoltage: dc },
    outside: 'this port is no control circuit',
  },
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}, 24 V DC on a battery: 12 x 2.70 V = 32.4 V (value from memory)`,
    given: { ...at, basis, controlVoltage: dc },
    asks: 32.4,
    places: { U: 'jobs.csv, line 3, control_voltage' },
  })),
  {
    name: '24 V DC on a battery at 25 C: 12 x 2.583 V = 31 V (value from memory)',
    given: { ...at, controlVoltage: dc, lowestTemp: stated(25) },
    asks: 31,
  },
  {
    name: '24 V DC, regulated: 1.15 x 24 V = 27.6 V (common practice, no source)',
    given: { ...at, controlVoltage: dc, regulated: true },
    asks: 27.6,
  },
  {
    name: '24 V AC: 1.25 x 24 V = 30 V (common practice, no source)',
    given: { ...at, current: 'ac', controlVoltage: ac },
    asks: 30,
    places: { U: 'jobs.csv, line 3, control_voltage' },
  },
  {
    name: 'the shares are settings (own case)',
    given: {
      ...at,
      controlVoltage: ac,
      thresholds: { ...THRESHOLDS, controlAcShare: 1.5, continuousShare: 2 },
    },
    asks: 36,
  },
  {
    name: 'the share of direct current is the other one (own case)',
    given: {
      ...at,
      controlVoltage: dc,
      thresholds: { ...THRESHOLDS, controlAcShare: 1.5, continuousShare: 2 },
    },
    asks: 48,
  },
  {
    name: 'not stated: missing',
    given: { ...at },
    unknown,
    notes: [
      'fact/control-voltage CTL-1.control_voltage: control_voltage of CTL-1 isn’t stated: its protector is chosen by it.',
    ],
  },
  {
    name: 'unreadable: its own item asks already',
    given: { ...at, unreadable: new Set(['control_voltage']) },
    unknown,
  },
]);
