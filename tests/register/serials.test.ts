import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serialFit, serialList, serialRange, type SerialTest } from '../../src/register/serials.js';

const range = (text: string): SerialTest => {
  const test = serialRange(text);
  if (typeof test === 'string') throw new Error(test);
  return test;
};

describe('serials that are looked for', () => {
  it.each([
    ['0100..0199', { by: 'range', from: '0100', to: '0199' }],
    [' 7 .. 7 ', { by: 'range', from: '7', to: '7' }],
    ['0100', 'no-range'],
    ['0100-0199', 'no-range'],
    ['..0199', 'no-range'],
    ['0100..', 'no-range'],
    ['1..2..3', 'no-range'],
    ['1...3', 'not-digits'],
    ['A100..A199', 'not-digits'],
    ['-1..05', 'not-digits'],
    ['1e3..2e3', 'not-digits'],
    ['٠١..٠٢', 'not-digits'],
    ['99..100', 'lengths'],
    ['0199..0100', 'backwards'],
  ])('reads %s', (text, expected) => {
    expect(serialRange(text)).toEqual(expected);
  });

  it.each([
    ['0100', 'meant'],
    ['0150', 'meant'],
    [' 0199 ', 'meant'],
    ['0099', 'other'],
    ['0200', 'other'],
    ['150', 'unlike'],
    ['00150', 'unlike'],
    ['A0150', 'unlike'],
    ['', 'unknown'],
    ['none', 'unknown'],
    ['None', 'unknown'],
  ])('tells what %s is to 0100..0199', (serial, expected) => {
    expect(serialFit(serial, range('0100..0199'))).toBe(expected);
  });

  it('compares as numbers do, however many digits there are', () => {
    const digits = fc.bigInt({ min: 0n, max: 10n ** 40n - 1n });
    fc.assert(
      fc.property(digits, digits, digits, (a, b, c) => {
        const text = (n: bigint): string => String(n).padStart(40, '0');
        const [from, to] = a <= b ? [a, b] : [b, a];
        const expected = from <= c && c <= to ? 'meant' : 'other';
        expect(serialFit(text(c), range(`${text(from)}..${text(to)}`))).toBe(expected);
      }),
    );
  });

  it.each([
    ['ab-12', 'meant'],
    ['AB-12 ', 'meant'],
    ['AB-1', 'other'],
    ['', 'unknown'],
  ])('tells what %s is to a list', (serial, expected) => {
    expect(serialFit(serial, serialList([' AB-12', '', 'none of these']))).toBe(expected);
  });
});
