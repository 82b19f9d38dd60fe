import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  coldOpenCircuitVoltage,
  coldVoltageWithoutTemperature,
  NEC_2023_COLDEST_FACTOR,
  NEC_2023_TABLE_690_7_A,
  tableFactor,
  type ColdVoltageInput,
} from '../../src/electrical/cold-voltage.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

type Found = Extract<ReturnType<typeof coldOpenCircuitVoltage>, { ok: true }>;

function cold(input: ColdVoltageInput): Found {
  const found = coldOpenCircuitVoltage(input);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

const coefficients = [
  { value: -0.3, unit: '%/C' },
  { value: -0.15, unit: 'V/C' },
  { value: -2.5, unit: 'mV/cell/C' },
] as const;

describe('by coefficient', () => {
  test('iec: Annex B of IEC 60364-7-712 (value from memory), and no clause of the NEC', () => {
    const input = { vocStc: 50, modulesInSeries: 10, lowestTemp: -15, coefficient: coefficients[0] };
    const { value, working } = cold({ ...input, basis: 'iec' });
    expect(value).toBe(cold(input).value);
    const sources = englishSteps(working).map((step) => step.source);
    expect(sources.slice(3)).toEqual([
      'the maker’s coefficient, IEC 60364-7-712:2017 Annex B, value from memory',
      'the maker’s coefficient, IEC 60364-7-712:2017 Annex B, value from memory',
      'IEC 60364-7-712:2017 Annex B, value from memory',
    ]);
  });

  test.each(coefficients)('$value $unit at -15 °C', (coefficient) => {
    const found = cold({ vocStc: 50, modulesInSeries: 10, lowestTemp: -15, coefficient, cells: 60 });
    expect(found.factor).toBeCloseTo(1.12, 12);
    expect(found.value).toBe(560);
    expect(found.method).toBe('coefficient');
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Voc V', 'n', 'T °C', 'dV/dT V/°C', 'F', 'Voc,max V']);
    expect(englishSteps(found.working)[3]?.value).toBeCloseTo(-0.15, 12);
    expect(englishSteps(found.working)[4]?.sure).toBe('computed');
  });
  test.each(coefficients)('$value $unit: the formula names the coefficient', (coefficient) => {
    const { working } = cold({ vocStc: 50, modulesInSeries: 10, lowestTemp: -15, coefficient, cells: 60 });
    const formula = { '%/C': 'β × Voc', 'V/C': 'β', 'mV/cell/C': 'β × cells' }[coefficient.unit];
    expect(englishSteps(working)[3]?.formula).toBe(formula);
    expect(englishSteps(working)[3]?.source).toContain('maker’s coefficient');
    expect(englishSteps(working)[5]?.source).toContain('690.7(A)');
  });
  test('at 25 °C and above the factor is 1, never less', () => {
    for (const lowestTemp of [25, 30, 60]) {
      const found = cold({ vocStc: 50, modulesInSeries: 2, lowestTemp, coefficient: coefficients[0] });
      expect(found.factor).toBe(1);
      expect(found.value).toBe(100);
      expectSound(found.working);
    }
  });
  test('colder than the table: the coefficient still holds', () => {
    expect(
      cold({ vocStc: 50, modulesInSeries: 1, lowestTemp: -50, coefficient: coefficients[0] }).factor,
    ).toBeCloseTo(1.225, 12);
  });
  test('mV/cell/C without the cells: asks for them', () => {
    expect(
      coldOpenCircuitVoltage({
        vocStc: 50,
        modulesInSeries: 1,
        lowestTemp: -5,
        coefficient: coefficients[2],
      }),
    ).toEqual({
      ok: false,
      reason: 'cells-missing',
    });
  });
  test.each([0, 0.3, Number.NaN])(
    '%d %%/C is no coefficient of a module voltage: never taken for a rise of nothing',
    (value) => {
      for (const lowestTemp of [-20, 40]) {
        const found = coldOpenCircuitVoltage({
          vocStc: 50,
          modulesInSeries: 1,
          lowestTemp,
          coefficient: { value, unit: '%/C' },
        });
        expect(found).toEqual({ ok: false, reason: 'coefficient-not-negative' });
      }
    },
  );
});

describe('by table', () => {
  test.each(NEC_2023_TABLE_690_7_A)('$downTo °C is the cold end of factor $factor', ({ downTo, factor }) => {
    expect(cold({ vocStc: 100, modulesInSeries: 1, lowestTemp: downTo }).value).toBeCloseTo(100 * factor, 9);
    const colder = coldOpenCircuitVoltage({ vocStc: 100, modulesInSeries: 1, lowestTemp: downTo - 0.001 });
    if (downTo === -40) expect(colder).toEqual({ ok: false, reason: 'no-table-row' });
    else expect(colder.ok && colder.factor > factor).toBe(true);
  });
  test('working', () => {
    const found = cold({ vocStc: 22.6, modulesInSeries: 23, lowestTemp: -7 });
    expect(found.method).toBe('table');
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Voc V', 'n', 'T °C', 'F', 'Voc,max V']);
    expect(englishSteps(found.working)[3]).toMatchObject({
      sure: 'published',
      source: expect.stringContaining('Table 690.7(A)') as string,
    });
    expect(englishSteps(found.working)[4]?.formula).toBe('Voc × n × F');
  });
  test('cells alone change nothing', () => {
    expect(cold({ vocStc: 40, modulesInSeries: 1, lowestTemp: 0, cells: 60 }).method).toBe('table');
  });
});

describe('without a temperature', () => {
  test('iec: 1.2, from memory', () => {
    const found = coldVoltageWithoutTemperature({ vocStc: 40, modulesInSeries: 10, basis: 'iec' });
    expect(found).toMatchObject({ value: 480, factor: 1.2, method: 'annex-b' });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Voc V', 'n', 'F', 'Voc,max V']);
    expect(englishSteps(found.working)[2]).toMatchObject({
      sure: 'memory',
      source: expect.stringContaining('Annex B') as string,
    });
    expect(englishSteps(found.working)[3]).toMatchObject({
      sure: 'computed',
      source: expect.stringContaining('Annex B') as string,
    });
  });
  test.each(['nec-2017', 'nec-2020', 'nec-2023'] as const)(
    '%s: 1.25 as a bound of the draft, an assumption',
    (basis) => {
      const found = coldVoltageWithoutTemperature({ vocStc: 40, modulesInSeries: 10, basis });
      expect(found).toMatchObject({ value: 500, factor: 1.25, method: 'coldest-row' });
      expectSound(found.working);
      expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
        'stated',
        'stated',
        'assumption',
        'assumption',
      ]);
      expect(englishSteps(found.working)[3]?.source).toContain('690.7(A)');
    },
  );
  test('the bound is the coldest row of the table', () => {
    expect(NEC_2023_TABLE_690_7_A.at(-1)?.factor).toBe(NEC_2023_COLDEST_FACTOR);
    expect(Math.max(...NEC_2023_TABLE_690_7_A.map((r) => r.factor))).toBe(NEC_2023_COLDEST_FACTOR);
  });
});

describe('properties', () => {
  const module = {
    vocStc: fc.double({ min: 1, max: 1000, noNaN: true }),
    modulesInSeries: fc.integer({ min: 1, max: 40 }),
    cells: fc.integer({ min: 1, max: 200 }),
    coefficient: fc.option(
      fc.record({
        value: fc.double({ min: -5, max: -0.001, noNaN: true }),
        unit: fc.constantFrom('%/C' as const, 'V/C' as const, 'mV/cell/C' as const),
      }),
      { nil: undefined },
    ),
  };
  const temperature = fc.double({ min: -60, max: 60, noNaN: true });

  test('a colder site never lowers the voltage, but may need a coefficient', () => {
    fc.assert(
      fc.property(fc.record(module), temperature, temperature, (input, a, b) => {
        const colder = coldOpenCircuitVoltage({ ...input, lowestTemp: Math.min(a, b) });
        const warmer = coldOpenCircuitVoltage({ ...input, lowestTemp: Math.max(a, b) });
        if (colder.ok && warmer.ok) expect(colder.value).toBeGreaterThanOrEqual(warmer.value);
        if (colder.ok) expect(warmer.ok).toBe(true);
      }),
    );
  });
  test('never below the sum of Voc at standard test conditions', () => {
    fc.assert(
      fc.property(fc.record(module), temperature, (input, lowestTemp) => {
        const found = coldOpenCircuitVoltage({ ...input, lowestTemp });
        if (found.ok) expect(found.value).toBeGreaterThanOrEqual(input.vocStc * input.modulesInSeries - 1e-8);
      }),
    );
  });
  test('the table never runs out above -40 °C', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 80, noNaN: true }), (t) => {
        expect(tableFactor(t)).toBeGreaterThanOrEqual(1);
      }),
    );
  });
  test('the printed working is right for any figures', () => {
    fc.assert(
      fc.property(fc.record(module), fc.integer({ min: -40, max: 60 }), (input, lowestTemp) => {
        const found = coldOpenCircuitVoltage({ ...input, lowestTemp });
        if (found.ok) expectSound(found.working);
      }),
      { numRuns: 50 },
    );
  });
});
