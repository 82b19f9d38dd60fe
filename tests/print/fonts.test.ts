import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { codePointsOf, inRanges, type CodePointRanges } from '../../src/print/cmap.js';
import { embeddedFonts, fontFolder } from '../../src/print/fonts.js';

/** A font file with one table, `cmap`, that has one subtable. */
function fontWith(encoding: number, subtable: readonly number[]): Uint8Array {
  const bytes: number[] = [0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0];
  bytes.push(...Buffer.from('cmap'), 0, 0, 0, 0, 0, 0, 0, 28, 0, 0, 0, 0);
  bytes.push(0, 0, 0, 1, 0, 3, 0, encoding, 0, 0, 0, 12, ...subtable);
  return Uint8Array.from(bytes);
}
const two = (...values: number[]): number[] => values.flatMap((v) => [(v >> 8) & 255, v & 255]);
const four = (...values: number[]): number[] => values.flatMap((v) => two(v >>> 16, v & 0xffff));

describe('the characters of a font', () => {
  // OpenType specification, cmap format 4: two segments and the closing one; the second by an array of glyph ids.
  it('are read from a format 4 table, less those that lead to no glyph', () => {
    const segments = two(0x42, 0x62, 0xffff, 0, 0x41, 0x60, 0xffff, 0xffc0, 0, 1, 0, 4, 0, 7, 0, 9);
    const font = fontWith(1, [...two(4, 16 + 8 * 3 + 6, 0, 6, 0, 0, 0), ...segments]);
    expect(codePointsOf(font)).toEqual([
      [0x41, 0x42],
      [0x60, 0x60],
      [0x62, 0x62],
    ]);
  });

  it('are read from a format 12 table', () => {
    const font = fontWith(10, [...two(12, 0), ...four(16 + 24, 0, 2, 0x20, 0x7e, 3, 0x1f600, 0x1f64f, 0)]);
    expect(codePointsOf(font)).toEqual([
      [0x20, 0x7e],
      [0x1f601, 0x1f64f],
    ]);
  });

  it('of a damaged font are refused', () => {
    expect(() => codePointsOf(fontWith(1, two(6, 0, 0)))).toThrow(/format 4 or 12/);
    expect(() => codePointsOf(Uint8Array.of(0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0))).toThrow(/cmap/);
  });

  it('are found in ranges', () => {
    const ranges: CodePointRanges = [
      [1, 2],
      [5, 5],
      [9, 20],
    ];
    expect([0, 1, 2, 3, 5, 8, 9, 20, 21].filter((c) => inRanges(ranges, c))).toEqual([1, 2, 5, 9, 20]);
  });
});

describe('the embedded fonts', () => {
  it('cover what the documents write, and not what they must show by its code', async () => {
    const { kit, standAloneKit } = await embeddedFonts();
    const covered = (text: string): string[] =>
      Array.from(text).filter((c) => kit.covers(c.codePointAt(0) ?? 0));
    const written = 'Az09 äßçñ µΩ²½±≤≥×→“”–—…•☐✓';
    expect(covered(written)).toEqual(Array.from(written));
    expect(covered('ЖλŁ')).toEqual(['Ж', 'λ', 'Ł']);
    expect(covered('中文\u{1f680}\u202e\u2066\u061c\u{10ffff}\0')).toEqual([]);
    expect(kit.css).toBe('');
    expect(standAloneKit.css.match(/@font-face/g)).toHaveLength(4);
  });

  it('cover a character only where the font file has a glyph for it', async () => {
    const sans = codePointsOf(await readFile(join(fontFolder(), 'DejaVuSans.ttf')));
    // The package's own table of coverage: DejaVu Sans has all 95 of Basic Latin, and none of the CJK ideographs.
    expect(Array.from({ length: 95 }, (_, i) => 0x20 + i).every((c) => inRanges(sans, c))).toBe(true);
    expect(inRanges(sans, 0x4e00)).toBe(false);
  });
});
