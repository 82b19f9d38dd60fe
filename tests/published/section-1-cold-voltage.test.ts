import { describe, expect, test } from 'vitest';
import {
  coldOpenCircuitVoltage,
  coldVoltageWithoutTemperature,
  NEC_2023_TABLE_690_7_A,
  tableFactor,
  type ColdVoltageInput,
} from '../../src/electrical/cold-voltage.js';
import { pvVoltageLimit } from '../../src/rules/pv-limits.js';
import { clause } from '../../src/rules/clauses.js';

function cold(input: ColdVoltageInput): { value: number; factor: number; method: string } {
  const found = coldOpenCircuitVoltage(input);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

describe('NEC Table 690.7(A), crystalline silicon, 2008 to 2023 (read in three transcriptions)', () => {
  const printed: readonly (readonly [number, number, number])[] = [
    [24, 20, 1.02],
    [19, 15, 1.04],
    [14, 10, 1.06],
    [9, 5, 1.08],
    [4, 0, 1.1],
    [-1, -5, 1.12],
    [-6, -10, 1.14],
    [-11, -15, 1.16],
    [-16, -20, 1.18],
    [-21, -25, 1.2],
    [-26, -30, 1.21],
    [-31, -35, 1.23],
    [-36, -40, 1.25],
  ];
  test.each(printed)('from %d to %d °C: %d', (warm, coldEnd, factor) => {
    expect(tableFactor(warm)).toBe(factor);
    expect(tableFactor(coldEnd)).toBe(factor);
  });
  test.each(printed.slice(1).map(([warm, , factor]) => [warm, factor] as const))(
    'half a degree above the printed row that starts at %d °C takes the colder row',
    (warm, factor) => {
      expect(tableFactor(warm + 0.5)).toBe(factor);
      expect(tableFactor(warm + 0.999)).toBe(factor);
    },
  );
  test('-0.5 °C, between two printed rows: the colder, 1.12', () => {
    expect(tableFactor(-0.5)).toBe(1.12);
  });
  test('25 °C and above: 1.00 (computed)', () => {
    expect(tableFactor(25)).toBe(1);
    expect(tableFactor(45)).toBe(1);
    expect(tableFactor(24.9)).toBe(1.02);
  });
  test('below -40 °C the table has no row', () => {
    expect(tableFactor(-40.1)).toBeUndefined();
    expect(tableFactor(-40)).toBe(1.25);
  });
  test('it has no other rows', () => {
    expect(NEC_2023_TABLE_690_7_A).toHaveLength(printed.length + 1);
  });
});

describe('worked examples', () => {
  test('22.60 V, -0.075 V/C, -7 °C, one module: 25.00 V (NEC handbook-style example for the 2011 cycle, read)', () => {
    const found = cold({
      vocStc: 22.6,
      coefficient: { value: -0.075, unit: 'V/C' },
      lowestTemp: -7,
      modulesInSeries: 1,
    });
    expect(found.value).toBeCloseTo(25, 6);
    expect(found.method).toBe('coefficient');
  });
  test('22.60 V, table 1.14, -7 °C, 23 modules: 592.6 V (same example; product computed)', () => {
    const found = cold({ vocStc: 22.6, lowestTemp: -7, modulesInSeries: 23 });
    expect(found.factor).toBe(1.14);
    expect(found.value).toBeCloseTo(592.6, 1);
    expect(found.method).toBe('table');
  });
  test('37 V, table 1.14, -8 °C, 12 modules: 506.16 V (a published string-sizing test, read)', () => {
    expect(cold({ vocStc: 37, lowestTemp: -8, modulesInSeries: 12 }).value).toBeCloseTo(506.16, 6);
  });
  test('49.5 V, temperature not known, IEC 60364-7-712 Annex B: 1.2 x 14 modules: 831.6 V (value from memory; computed)', () => {
    const found = coldVoltageWithoutTemperature({ vocStc: 49.5, modulesInSeries: 14, basis: 'iec' });
    expect(found.factor).toBe(1.2);
    expect(found.value).toBeCloseTo(831.6, 6);
  });
  test('the coefficient goes first whenever the list has one (NEC 110.3(B), read)', () => {
    const steep = cold({
      vocStc: 40,
      coefficient: { value: -0.5, unit: '%/C' },
      lowestTemp: -7,
      modulesInSeries: 1,
    });
    const flat = cold({
      vocStc: 40,
      coefficient: { value: -0.25, unit: '%/C' },
      lowestTemp: -7,
      modulesInSeries: 1,
    });
    // The table says 1.14 at -7 °C: it isn't always the safer of the two.
    expect(steep.factor).toBeCloseTo(1.16, 9);
    expect(flat.factor).toBeCloseTo(1.08, 9);
  });
  test('%/C, V/C and mV/cell/C say the same of one module (computed)', () => {
    const common = { vocStc: 50, lowestTemp: -15, modulesInSeries: 10, cells: 60 };
    const percent = cold({ ...common, coefficient: { value: -0.3, unit: '%/C' } });
    const volts = cold({ ...common, coefficient: { value: -0.15, unit: 'V/C' } });
    const millivolts = cold({ ...common, coefficient: { value: -2.5, unit: 'mV/cell/C' } });
    expect(percent.value).toBeCloseTo(560, 9);
    expect(volts.value).toBeCloseTo(560, 9);
    expect(millivolts.value).toBeCloseTo(560, 9);
  });
});

describe('limits on the DC side, NEC 690.7 (read)', () => {
  test('600 V on one- and two-family dwellings', () => {
    expect(pvVoltageLimit({ occupancy: 'dwelling', offBuildings: false })).toBe(600);
  });
  test('1000 V on other buildings', () => {
    expect(pvVoltageLimit({ occupancy: 'other', offBuildings: false })).toBe(1000);
    expect(pvVoltageLimit({ occupancy: 'sleeping', offBuildings: false })).toBe(1000);
  });
  test('1500 V ground-mounted', () => {
    expect(pvVoltageLimit({ occupancy: 'dwelling', offBuildings: true })).toBe(1500);
    expect(pvVoltageLimit({ occupancy: 'other', offBuildings: true })).toBe(1500);
  });
});

test.each([
  [
    'maximum-pv-voltage',
    'nec-2017',
    'NEC (NFPA 70)',
    '2017',
    '690.7',
    /600 V on one- and two-family dwellings, 1000 V on other buildings, 1500 V/,
  ],
  ['maximum-pv-voltage', 'nec-2023', 'NEC (NFPA 70)', '2023', '690.7', /600 V/],
  ['cold-voltage', 'nec-2023', 'NEC (NFPA 70)', '2023', '690.7(A)(1)', /lowest expected ambient/],
  ['cold-voltage-table', 'nec-2023', 'NEC (NFPA 70)', '2023', 'Table 690.7(A)', /down to -40 C/],
  ['maker-instructions', 'nec-2023', 'NEC (NFPA 70)', '2023', '110.3(B)', /instructions/],
  ['cold-voltage', 'iec', 'IEC 60364-7-712', '2017', 'Annex B', /; 1\.2 times/],
] as const)(
  'the rulebook cites %s under %s as %s (%s) %s',
  (subject, basis, standard, edition, number, says) => {
    const found = clause(subject, basis);
    expect(found).toMatchObject({ standard, edition, clause: number });
    expect(found?.says).toMatch(says);
  },
);
