import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { editDistance, nearest } from '../../src/words/closeness.js';
import { modelKey } from '../../src/words/model-key.js';
import { visible } from '../../src/words/visible.js';
import { readYesNo, saysNothing, wordKey } from '../../src/read/cell/yes-no.js';

describe('two spellings of one model meet, two models do not', () => {
  test.each([
    ['GL-410', 'gl 410'],
    ['GL-410', 'GL410'],
    ['CT 60/150', 'CT-60-150'],
    ['HG_7 (rev. B)', 'hg7 REV B'],
  ])('%s is %s', (a, b) => {
    expect(modelKey('Glimmerleaf', a)).toBe(modelKey('GLIMMER-LEAF', b));
  });
  test.each([
    ['X-1.5', 'X-15'],
    ['CT-57/150', 'CT-601/50'],
    ['MX', 'MX+'],
    ['GL-410', 'GL-411'],
    ['A1B', 'A1'],
  ])('%s is not %s', (a, b) => {
    expect(modelKey('Glimmerleaf', a)).not.toBe(modelKey('Glimmerleaf', b));
  });
  it('keeps maker and model apart', () => {
    expect(modelKey('AB', 'C')).not.toBe(modelKey('A', 'BC'));
  });
  it('forgives case, blanks and hyphens anywhere between letters', () => {
    const word = fc.stringMatching(/^[A-Za-z]{1,6}$/);
    fc.assert(
      fc.property(word, word, fc.constantFrom('', ' ', '-', '_', '.', ' - '), (a, b, gap) => {
        expect(modelKey('M', `${a}${gap}${b}`.toUpperCase())).toBe(modelKey('m', `${a}${b}`.toLowerCase()));
      }),
    );
  });
});

describe('a cell in a message', () => {
  it('is at most 80 characters and shows what cannot be seen', () => {
    expect(visible('x'.repeat(5_000_000))).toHaveLength(80);
    expect(visible('a\u0000b\u202ec\nd\te')).toBe('a<0000>b<202E>c\u23ced\u21e5e');
    expect(visible('<script>')).toBe('<script>');
  });
  it('holds no control character and nothing that turns text around', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(visible(text)).not.toMatch(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/u);
      }),
    );
  });
});

describe('words', () => {
  test.each(['', '-', '\u2014', 'n/a', 'N/A', 'none', 'TBD', '?', 'unknown'])('"%s" says nothing', (text) => {
    expect(saysNothing(text)).toBe(true);
  });
  test.each(['0', 'no', 'x', 'not yet decided'])('"%s" says something', (text) => {
    expect(saysNothing(text)).toBe(false);
  });
  test.each([
    ['yes', true],
    ['Y', true],
    ['TRUE', true],
    ['x', null],
    ['\u2713', true],
    ['no', false],
    ['F', null],
    ['false', false],
    ['maybe', null],
  ])('"%s" is %s', (text, expected) => {
    expect(readYesNo(text)).toBe(expected);
  });
  it('takes blanks and underscores for hyphens', () => {
    expect(wordKey(' Charge  Controller')).toBe('charge-controller');
    expect(wordKey('grid_tie-Inverter')).toBe('grid-tie-inverter');
  });
});

describe('closeness', () => {
  it('counts a swap as one slip', () => {
    expect(editDistance('lenght', 'length', 3)).toBe(1);
    expect(editDistance('abc', 'xyz', 2)).toBe(3);
  });
  it('is symmetrical and zero only for the same text', () => {
    const word = fc.stringMatching(/^[a-c]{0,6}$/);
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(editDistance(a, b, 6)).toBe(editDistance(b, a, 6));
        expect(editDistance(a, b, 6) === 0).toBe(a === b);
      }),
    );
  });
  it('finds no word where none is near', () => {
    expect(nearest('batery', ['panel', 'battery'])).toBe('battery');
    expect(nearest('kiln', ['panel', 'battery'])).toBeNull();
  });
});
