import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { visibleData, visibleText } from '../../src/documents/parts/visible-text.js';

const latin = (codePoint: number): boolean => codePoint < 0x250;
const all = (): boolean => true;

describe('text made visible', () => {
  it.each([
    ['plain text <b>{{x}} =1+1', 'plain text <b>{{x}} =1+1'],
    ['Grün, señal', 'Grün, señal'],
    ['a\u202Eb', 'a[U+202E]b'],
    ['a\u2066b\u2069', 'a[U+2066]b[U+2069]'],
    ['a\u200Bb', 'a[U+200B]b'],
    ['a\u0000b\tc\nd', 'a[U+0000]b[U+0009]c[U+000A]d'],
    ['\uD800x', '[U+D800]x'],
    ['\u{1F5FB}', '[U+1F5FB]'],
    ['漢', '[U+6F22]'],
    ['soft\u00ADhyphen', 'soft[U+00AD]hyphen'],
  ])('%j prints as %j', (typed, shown) => {
    expect(visibleText(typed, latin)).toBe(shown);
  });

  it('lets no more than two marks climb on a letter', () => {
    expect(visibleText('o\u0334\u0335\u0336\u0337', all)).toBe('o\u0334\u0335[U+0336][U+0337]');
  });

  it('holds no control, format or uncovered character, whatever was typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (typed) => {
        const shown = visibleText(typed, latin);
        expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\u2028\u2029]/u);
        for (const character of shown) expect(latin(character.codePointAt(0) ?? 0)).toBe(true);
        expect(visibleText(shown, latin)).toBe(shown);
      }),
    );
  });

  it('reaches every string of plain data and leaves the rest as it is', () => {
    const data = { a: ['x\u0007', 1, null, true], b: { c: 'y\u202E' } };
    expect(visibleData(data, all)).toEqual({ a: ['x[U+0007]', 1, null, true], b: { c: 'y[U+202E]' } });
  });
});
