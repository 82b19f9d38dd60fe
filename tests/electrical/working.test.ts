import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shown, statedAt, taken, withoutDust, workingOf } from '../../src/electrical/working.js';
import { expectSound } from './evaluated.js';

describe('shown', () => {
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
    [1e21, '1e+21'],
    [-1.23456, '-1.235'],
    [10, '10'],
    [12.3456, '12.35'],
    [-12.3456, '-12.35'],
    [592.572, '592.57'],
    [12345.678, '12345.68'],
    [1e6, '1000000'],
  ])('%d is written %s', (value, text) => {
    expect(shown(value)).toBe(text);
  });
  test('is never farther off than a thousandth of the figure', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), (x) => {
        expect(Math.abs(Number(shown(x)) - x)).toBeLessThanOrEqual(Math.abs(x) * 1e-3);
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

describe('statedAt', () => {
  const working = workingOf(
    [
      taken('Voc', 'Open-circuit voltage', 50, 'V'),
      taken('F', 'Factor', 1.2, '', 'memory', 'a table, value from memory'),
    ],
    {
      ...taken('U', 'Voltage', 60, 'V', 'computed', 'product'),
      formula: 'Voc × F',
      substituted: '50 V × 1.2',
    },
  );
  test('names the place of a stated figure, and of no other', () => {
    const placed = statedAt(working, { Voc: 'jobs.csv, line 12, Voc', F: 'nowhere', U: 'nowhere' });
    expect(placed.steps.map((s) => s.source)).toEqual([
      'jobs.csv, line 12, Voc',
      'a table, value from memory',
      'product',
    ]);
    expect(placed.value).toBe(60);
    expect(placed.unit).toBe('V');
  });
  test('leaves a figure whose place it is not told', () => {
    expect(statedAt(working, {}).steps[0]?.source).toBe('as stated');
  });
  test('a working ends with its figure', () => {
    expectSound(working);
    expect(working.steps).toHaveLength(3);
  });
});
