import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  batteryChargeVoltage,
  coldCompensatedAbsorb,
  leadAcidCellVoltage,
  type BatteryInput,
} from '../../src/electrical/battery.js';
import { BATTERY_CHEMISTRIES } from '../../src/model/words.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

type Found = Extract<ReturnType<typeof batteryChargeVoltage>, { ok: true }>;

function charge(input: BatteryInput): Found {
  const found = batteryChargeVoltage(input);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

describe('usual cells', () => {
  test.each([
    ['lead-acid', 12, 6],
    ['lead-acid', 24, 12],
    ['lead-acid', 36, 18],
    ['lead-acid', 48, 24],
    ['lfp', 12, 4],
    ['lfp', 24, 8],
    ['lfp', 36, 12],
    ['lfp', 48, 16],
    ['lfp', 12.8, 4],
    ['lfp', 25.6, 8],
    ['lfp', 38.4, 12],
    ['lfp', 51.2, 16],
    ['nicd', 12, 10],
    ['nicd', 24, 20],
    ['nicd', 48, 40],
  ] as const)('%s %d V: %d cells', (chemistry, nominal, cells) => {
    const perCell = { 'lead-acid': 2.7, lfp: 3.65, nicd: 1.7 }[chemistry];
    const found = charge({ chemistry, nominal });
    expect(found).toMatchObject({ cells, usualCells: true, perCell });
    expect(found.value).toBeCloseTo(perCell * cells, 9);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Ucell V', 'n', 'Ucharge V']);
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual(['memory', 'memory', 'computed']);
    expect(englishSteps(found.working)[0]?.says).toMatch(
      { 'lead-acid': /lead-acid/, lfp: /lithium/, nicd: /nickel/ }[chemistry],
    );
    expect(englishSteps(found.working)[1]?.says).toContain(`at ${String(nominal)} V`);
    expect(englishSteps(found.working)[2]?.formula).toBe('Ucell × n');
  });
  test.each([
    ['lead-acid', 60],
    ['lfp', 54],
    ['lead-acid', 12.8],
    ['nicd', 36],
    ['nicd', 13],
    ['lfp', 0],
    ['lead-acid', undefined],
  ] as const)('%s %d V has none: the cells must be stated', (chemistry, nominal) => {
    expect(batteryChargeVoltage({ chemistry, nominal })).toEqual({ ok: false, reason: 'cells-unknown' });
    const stated = charge({ chemistry, nominal, cells: 17 });
    expect(stated).toMatchObject({ cells: 17, usualCells: false });
    expect(englishSteps(stated.working)[1]).toMatchObject({
      symbol: 'n',
      value: 17,
      sure: 'stated',
      says: 'Cells in series',
    });
    expectSound(stated.working);
  });
  test('stated cells go before the usual number', () => {
    expect(charge({ chemistry: 'lfp', nominal: 48, cells: 15 }).value).toBeCloseTo(54.75, 9);
  });
  test.each(['lithium', 'nmc', '', 'toString', '__proto__'])(
    '%s is not known, with or without cells',
    (chemistry) => {
      expect(batteryChargeVoltage({ chemistry, nominal: 48 })).toEqual({
        ok: false,
        reason: 'chemistry-unknown',
      });
      expect(batteryChargeVoltage({ chemistry, nominal: 48, cells: 14 })).toEqual({
        ok: false,
        reason: 'chemistry-unknown',
      });
    },
  );
});

describe('lead-acid and cold', () => {
  test.each([
    [undefined, 2.7],
    [25, 2.583],
    [40, 2.583],
    // 2.467 + 0.005 x (25 - T) passes 2.583 at 1.8 °C.
    [1.9, 2.583],
    [1.7, 2.5835],
    [0, 2.592],
    [-20, 2.692],
    [-40, 2.792],
  ])('%d °C: %d V/cell', (temperature, volts) => {
    expect(leadAcidCellVoltage(temperature)).toBeCloseTo(volts, 9);
  });
  test('working', () => {
    const found = charge({ chemistry: 'lead-acid', nominal: 24, lowestTemp: -10 });
    expect(found.value).toBeCloseTo(12 * 2.642, 9);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['T °C', 'Ucell V', 'n', 'Ucharge V']);
    expect(englishSteps(found.working)[1]?.formula).toBe('max(2.583 V, 2.467 V + 0.005 V/°C × (25 °C - T))');
    expect(englishSteps(found.working)[1]?.says).toContain('compensated for cold');
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'memory',
      'memory',
      'computed',
    ]);
  });
  test('the temperature changes nothing for the others', () => {
    for (const chemistry of ['lfp', 'nicd'] as const) {
      const cold = charge({ chemistry, nominal: 48, lowestTemp: -30 });
      expect(cold).toEqual(charge({ chemistry, nominal: 48 }));
    }
  });
  test('compensated absorption: 2.45 V and 5 mV for each degree', () => {
    expect(coldCompensatedAbsorb({ cells: 1, temperature: 25 })).toBe(2.45);
    expect(coldCompensatedAbsorb({ cells: 6, temperature: 15 })).toBe(15);
  });
});

test('a colder site never lowers the charge voltage, more cells never either', () => {
  const temperature = fc.double({ min: -60, max: 60, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom(...BATTERY_CHEMISTRIES),
      fc.integer({ min: 1, max: 500 }),
      temperature,
      temperature,
      (chemistry, cells, a, b) => {
        const cold = charge({ chemistry, cells, lowestTemp: Math.min(a, b) });
        const warm = charge({ chemistry, cells, lowestTemp: Math.max(a, b) });
        expect(cold.value).toBeGreaterThanOrEqual(warm.value);
        expect(charge({ chemistry, cells: cells + 1, lowestTemp: a }).value).toBeGreaterThan(
          charge({ chemistry, cells, lowestTemp: a }).value,
        );
      },
    ),
  );
});
