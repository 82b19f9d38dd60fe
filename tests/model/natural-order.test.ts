import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byNaturalOrder } from '../../src/model/natural-order.js';

const collator = new Intl.Collator('en', { numeric: true });
const sign = (n: number): number => Math.sign(n);

describe('natural order', () => {
  it.each([
    [
      ['P-10', 'P-9', 'P-1'],
      ['P-1', 'P-9', 'P-10'],
    ],
    [
      ['A2', 'A10', 'a1'],
      ['a1', 'A2', 'A10'],
    ],
    [
      ['INV', 'INV-2', 'INV-10', 'INV-1'],
      ['INV', 'INV-1', 'INV-2', 'INV-10'],
    ],
    [
      ['X1', 'X', 'X01'],
      ['X', 'X01', 'X1'],
    ],
  ])('%s', (tags, ordered) => {
    expect(tags.toSorted(byNaturalOrder)).toEqual(ordered);
  });

  // The collator of the platform is the outside that the quick comparison is held against.
  const piece = fc.constantFrom(
    'A',
    'a',
    'B',
    'b',
    'INV',
    '-',
    '_',
    '.',
    ' ',
    '/',
    '0',
    '00',
    '1',
    '2',
    '9',
    '10',
    '12',
    '100',
    'é',
    'e\u0301',
    'ß',
    '中',
    '\u200b',
  );
  const tag = fc.array(piece, { maxLength: 7 }).map((parts) => parts.join(''));

  it('is that of the platform’s collator for English with numbers, ties by code unit', () => {
    fc.assert(
      fc.property(tag, tag, (a, b) => {
        const expected = a === b ? 0 : collator.compare(a, b) || (a < b ? -1 : 1);
        expect(sign(byNaturalOrder(a, b))).toBe(sign(expected));
      }),
      { numRuns: 20_000, seed: 1 },
    );
  });

  it('is total: no two tags are equal', () => {
    fc.assert(
      fc.property(tag, tag, (a, b) => {
        expect(sign(byNaturalOrder(a, b)) + sign(byNaturalOrder(b, a))).toBe(0);
        expect(byNaturalOrder(a, b) === 0).toBe(a === b);
      }),
      { numRuns: 5_000, seed: 2 },
    );
  });
});
