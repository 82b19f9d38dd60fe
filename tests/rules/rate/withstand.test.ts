import { withstand } from '../../../src/rules/rate/withstand.js';
import { stated } from '../facts.js';
import { ratingTable } from '../table.js';

const usual = { withstandVoltage: 120 } as const;

// IEC 60664-1 Table F.1, row of 150 V: 800, 1500, 2500, 4000 V.
export const table = ratingTable(import.meta.url, withstand, [
  {
    name: 'as stated: no assumption',
    given: { ...usual, impulseWithstand: stated(6000, 'impulse_withstand') },
    asks: 6000,
    steps: [
      'Uw: Rated impulse withstand voltage of E-1 = 6000 V [stated; jobs.csv, line 3, impulse_withstand]',
    ],
  },
  ...(['service', 'panel'] as const).map((kind) => ({
    name: `a ${kind}: category III, 2500 V at 120 V (IEC 60664-1 Table F.1)`,
    given: { ...usual, kind },
    asks: 2500,
    assumed: true as const,
  })),
  ...(['load', 'inverter-charger', 'array', 'battery'] as const).map((kind) => ({
    name: `a ${kind}: category II, 1500 V at 120 V (IEC 60664-1 Table F.1)`,
    given: { ...usual, kind },
    asks: 1500,
    assumed: true as const,
  })),
  {
    name: 'a category that the list states goes first: IV, 4000 V (IEC 60664-1 Table F.1)',
    given: { ...usual, overvoltageCategory: 'IV' },
    asks: 4000,
    assumed: true,
  },
  {
    name: 'a panel at 1500 V itself: the last row, category III, 10000 V (IEC 60664-1 Table F.1)',
    given: { kind: 'panel', withstandVoltage: 1500 },
    asks: 10_000,
    assumed: true,
  },
  {
    name: 'above the last row',
    given: { withstandVoltage: 1501 },
    unknown: 'the voltage is above the last row of the table',
  },
  {
    name: 'no voltage to enter the table with',
    given: {},
    unknown: 'neither a withstand nor a voltage to assume one by is known',
  },
]);
