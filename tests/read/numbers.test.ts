import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { readNumber, type DecimalMark } from '../../src/read/cell/numbers.js';

const value = (text: string, mark: DecimalMark = 'auto'): number | string => {
  const read = readNumber(text, mark);
  return read.ok ? (read.rest === '' ? read.value : `${read.value}|${read.rest}`) : read.problem;
};

describe('a number is read by its marks', () => {
  test.each<[string, number | string]>([
    ['12', 12],
    ['007', 7],
    ['-12', -12],
    ['\u221212', -12],
    ['\u201312', -12],
    ['+5', 5],
    ['0', 0],
    ['-0', 0],
    ['.5', 0.5],
    ['5.', 5],
    ['49.5', 49.5],
    ['49,5', 49.5],
    ['0,234', 0.234],
    ['1,2345', 1.2345],
    ['1.234', 1.234],
    ['1,234', 'two-ways'],
    ['10,000', 'two-ways'],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1 234', 1234],
    ['1 234,5', 1234.5],
    ["1'234.5", 1234.5],
    ['1 234 567', 1_234_567],
    ['12 34', '12|34'],
    ['1,23,4', 'grouping'],
    ['1.2.3', 'grouping'],
    ['1,234.567.8', 'grouping'],
    ['12,34.5', 'grouping'],
    ['1.2E+03', 'shortened'],
    ['1e5', 'shortened'],
    ['', 'no-number'],
    ['abc', 'no-number'],
    ['0x10', '0|x10'],
    ['Infinity', 'no-number'],
    ['NaN', 'no-number'],
    ['100 ft', '100|ft'],
    ["100'", "100|'"],
    ['-0.27%/C', '-0.27|%/C'],
    ['~5', 'no-number'],
    ['=1+1', 'no-number'],
  ])('%s', (text, expected) => {
    expect(value(text)).toBe(expected);
  });

  test.each<[string, DecimalMark, number | string]>([
    ['1,234', '.', 1234],
    ['1,234', ',', 1.234],
    ['1.234', '.', 1.234],
    ['1.234', ',', 1234],
    ['12,5', '.', 'grouping'],
    ['12.5', ',', 'grouping'],
    ['1.234', 'auto-comma', 'two-ways'],
    ['0.234', 'auto-comma', 0.234],
    ['12.5', 'auto-comma', 12.5],
    ['1 234,567', 'auto', 1234.567],
  ])('%s with the mark %s', (text, mark, expected) => {
    expect(value(text, mark)).toBe(expected);
  });
});

it('reads back what any locale writes, or says that it can be read two ways', () => {
  const figures = fc.double({ min: -1e7, max: 1e7, noNaN: true }).map((n) => Math.round(n * 1000) / 1000);
  fc.assert(
    fc.property(figures, fc.constantFrom('en-US', 'de-DE', 'fr-FR', 'de-CH'), (figure, locale) => {
      const text = figure.toLocaleString(locale, { maximumFractionDigits: 3 }).replace(/\u2019/g, "'");
      const mark = locale === 'de-DE' || locale === 'fr-FR' ? ',' : '.';
      const plain = figure === 0 ? 0 : figure;
      expect(value(text, mark)).toBe(plain);
      const auto = value(text, mark === ',' ? 'auto-comma' : 'auto');
      expect([plain, 'two-ways']).toContain(auto);
    }),
  );
});

it('never gives NaN or infinity, whatever it is given', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[-+]?[\d.,' ]{0,40}[a-z%/']{0,5}$/)), (text) => {
      for (const mark of ['auto', 'auto-comma', '.', ','] as const) {
        const read = readNumber(text, mark);
        if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
      }
    }),
  );
});
