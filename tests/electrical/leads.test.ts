import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leadFigures, leadVoltage, wireInductance, type LeadInput } from '../../src/electrical/leads.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

const d10 = 2.588e-3;
const usual: LeadInput = { length: 0.5, diameter: d10, peak: 3000, upBasis: 'Up' };

describe('inductance', () => {
  test('high and low frequency differ by 0.25 in the bracket', () => {
    const high = wireInductance({ length: 1, diameter: 2e-3, frequency: 'high' });
    const low = wireInductance({ length: 1, diameter: 2e-3, frequency: 'low' });
    expect(high).toBeCloseTo(2e-7 * (Math.log(2000) - 1), 12);
    expect(low - high).toBeCloseTo(0.5e-7, 12);
  });
  test.each([0, -1, Number.NaN])('no inductance at a length of %d m', (length) => {
    expect(wireInductance({ length, diameter: d10, frequency: 'high' })).toBe(0);
  });
  test('never negative where the wire is as thick as it is long', () => {
    expect(wireInductance({ length: 1e-3, diameter: 5e-3, frequency: 'high' })).toBe(0);
  });
});

describe('lead voltage', () => {
  test('Up: the whole length', () => {
    const found = leadVoltage(usual);
    expect(found.inductance).toBeCloseTo(0.565e-6, 9);
    expect(found).toMatchObject({ inductanceInLevel: 0, inductanceAdded: found.inductance });
    expect(found.value).toBeCloseTo(252.5, 1);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['l m', 'd mm', 'L µH', 'di/dt A/µs', 'Ul V']);
    expect(englishSteps(found.working).map((s) => s.formula)).toEqual([
      '',
      '',
      '0.2 µH/m × l × (ln(4 × l / d) - 1)',
      '0.14899 1/µs × Ip',
      'L × di/dt',
    ]);
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'stated',
      'memory',
      'computed',
      'computed',
    ]);
    expect(englishSteps(found.working)[4]?.substituted).toBe('0.565 µH × 446.96 A/µs');
    expect(englishSteps(found.working)[1]?.value).toBeCloseTo(2.588, 9);
    expect(englishSteps(found.working)[2]?.source).toContain('Rosa');
    expect(englishSteps(found.working)[3]?.source).toContain('C62.41.2');
    expect(englishSteps(found.working)[4]?.source).toContain('conservative');
  });
  test('VPR: less the first 6 in', () => {
    const found = leadVoltage({ ...usual, upBasis: 'VPR' });
    expect(found.inductanceInLevel).toBeCloseTo(0.136e-6, 9);
    expect(found.inductanceAdded).toBeCloseTo(0.429e-6, 9);
    expect(found.value).toBeCloseTo(191.7, 1);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['l m', 'd mm', 'L µH', 'L6 µH', 'di/dt A/µs', 'Ul V']);
    expect(englishSteps(found.working)[3]?.source).toContain('6 in');
    expect(englishSteps(found.working)[3]?.substituted).toContain('0.1524 m');
    expect(englishSteps(found.working)[5]?.formula).toBe('max(0 µH, L - L6) × di/dt');
  });
  test('basis not stated: the whole length, the safe side', () => {
    expect(leadFigures({ ...usual, upBasis: null })).toEqual(leadFigures(usual));
  });
  test('shorter than the 6 in: nothing, not less', () => {
    const found = leadVoltage({ ...usual, length: 0.1, upBasis: 'VPR' });
    expect(found.value).toBe(0);
    expect(found.inductanceAdded).toBe(0);
    expectSound(found.working);
  });
  test('the peak is a parameter: 5 kA under iec', () => {
    expect(leadFigures({ ...usual, peak: 5000 }).value).toBeCloseTo((leadFigures(usual).value * 5) / 3, 9);
    expect(leadFigures(usual).slope).toBeCloseTo(447e6, -5);
  });
  test('figures with and without the working are the same', () => {
    for (const upBasis of ['VPR', 'Up', null] as const)
      expect(leadVoltage({ ...usual, upBasis })).toMatchObject(leadFigures({ ...usual, upBasis }));
  });
});

describe('properties', () => {
  const length = fc.double({ min: 0, max: 20, noNaN: true });
  const diameter = fc.double({ min: 1e-4, max: 2e-2, noNaN: true });
  const upBasis = fc.constantFrom('VPR' as const, 'Up' as const, null);
  test('a longer lead never has less inductance or voltage', () => {
    fc.assert(
      fc.property(length, length, diameter, upBasis, (a, b, d, basis) => {
        const [short, long] = [Math.min(a, b), Math.max(a, b)].map((l) =>
          leadFigures({ length: l, diameter: d, peak: 3000, upBasis: basis }),
        );
        expect(long?.value).toBeGreaterThanOrEqual(short?.value ?? NaN);
        expect(long?.inductance).toBeGreaterThanOrEqual(short?.inductance ?? NaN);
      }),
    );
  });
  test('a thicker lead never has more', () => {
    fc.assert(
      fc.property(length, diameter, diameter, (l, a, b) => {
        const at = (d: number): number => wireInductance({ length: l, diameter: d, frequency: 'high' });
        expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });
  test('never negative; a VPR never adds more than an Up', () => {
    fc.assert(
      fc.property(length, diameter, (l, d) => {
        const vpr = leadFigures({ length: l, diameter: d, peak: 3000, upBasis: 'VPR' }).value;
        expect(vpr).toBeGreaterThanOrEqual(0);
        expect(vpr).toBeLessThanOrEqual(
          leadFigures({ length: l, diameter: d, peak: 3000, upBasis: 'Up' }).value,
        );
      }),
    );
  });
});
