import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fiveDecimals,
  hundredths,
  hundredthsOr,
  withoutDust,
  workingFigure,
} from '../../src/model/rounding.js';

describe('hundredths', () => {
  test.each([
    [1.005, 1.01],
    [-1.005, -1.01],
    [170.00499, 170],
    [170.4999, 170.5],
    [0.285, 0.29],
    [8.575, 8.58],
    [1e-9, 0],
    [-1e-9, 0],
    [-0, 0],
    [1e14 + 0.5, 1e14 + 0.5],
    [12, 12],
  ])('%d is rounded to %d', (value, rounded) => {
    expect(hundredths(value)).toBe(rounded);
  });
  test('is never farther off than half a hundredth, and is itself what it gives', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), (x) => {
        expect(Math.abs(hundredths(x) - x)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(hundredths(hundredths(x))).toBe(hundredths(x));
      }),
    );
  });
  test('of what is not known there is nothing', () => {
    expect([hundredthsOr(null), hundredthsOr(undefined), hundredthsOr(1.239)]).toEqual([null, null, 1.24]);
  });
});

describe('fiveDecimals', () => {
  test('keeps what a product is checked by hand with', () => {
    expect([fiveDecimals(1.123456), fiveDecimals(1.25)]).toEqual([1.12346, 1.25]);
  });
});

describe('workingFigure', () => {
  test.each([
    [0, '0'],
    [-0, '0'],
    [1, '1'],
    [1.14, '1.14'],
    [0.01243, '0.01243'],
    [0.0025881867, '0.002588'],
    [9.9996, '10'],
    [9.9994, '9.999'],
    [0.99996, '1'],
    [0.123456, '0.1235'],
    [1.0004, '1'],
    [-0.1151234, '-0.1151'],
    [-1e-9, '-1e-9'],
    [1e21, '1e+21'],
    [-1.23456, '-1.235'],
    [10, '10'],
    [12.3456, '12.35'],
    [-12.3456, '-12.35'],
    [592.572, '592.57'],
    [12345.678, '12345.68'],
    [1e6, '1000000'],
  ])('%d is written %s', (value, text) => {
    expect(String(workingFigure(value))).toBe(text);
  });
  test('is never farther off than a thousandth of the figure', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), (x) => {
        expect(Math.abs(workingFigure(x) - x)).toBeLessThanOrEqual(Math.abs(x) * 1e-3);
      }),
    );
  });
});

describe('withoutDust', () => {
  test('1.1 x 400 does not exceed 440', () => {
    expect(1.1 * 400).toBeGreaterThan(440);
    expect(withoutDust(1.1 * 400)).toBe(440);
  });
  test('keeps what is more than dust', () => {
    expect(withoutDust(253.000001)).toBe(253.000001);
  });
});
