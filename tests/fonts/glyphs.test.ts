import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { dejavuFolder, fontFaces } from '../../src/fonts/faces.js';
import { fontTable } from '../../src/fonts/font-tables.js';
import { advancesOf, glyphsOf, unicodeRange } from '../../src/fonts/glyphs.js';

/** A font file with one table, `cmap`, that has one subtable. */
function fontWith(encoding: number, subtable: readonly number[]): Uint8Array {
  const table = [0, 0, 0, 1, 0, 3, 0, encoding, 0, 0, 0, 12, ...subtable];
  const bytes: number[] = [0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0];
  bytes.push(...Buffer.from('cmap'), 0, 0, 0, 0, 0, 0, 0, 28, ...four(table.length), ...table);
  return Uint8Array.from(bytes);
}
const two = (...values: number[]): number[] => values.flatMap((v) => [(v >> 8) & 255, v & 255]);
const four = (...values: number[]): number[] => values.flatMap((v) => two(v >>> 16, v & 0xffff));

describe('the characters of a font', () => {
  // OpenType specification, cmap format 4: two segments and the closing one; the second by an array of glyph ids.
  it('are read from a format 4 table, less those that lead to no glyph', () => {
    const segments = two(0x42, 0x62, 0xffff, 0, 0x41, 0x60, 0xffff, 0xffc0, 0, 1, 0, 4, 0, 7, 0, 9);
    const font = fontWith(1, [...two(4, 16 + 8 * 3 + 6, 0, 6, 0, 0, 0), ...segments]);
    expect([...glyphsOf(font)]).toEqual([
      [0x41, 1],
      [0x42, 2],
      [0x60, 7],
      [0x62, 9],
    ]);
  });

  it('are read from a format 12 table', () => {
    const font = fontWith(10, [...two(12, 0), ...four(16 + 24, 0, 2, 0x20, 0x22, 3, 0x1f600, 0x1f602, 0)]);
    expect([...glyphsOf(font)]).toEqual([
      [0x20, 3],
      [0x21, 4],
      [0x22, 5],
      [0x1f601, 1],
      [0x1f602, 2],
    ]);
  });

  it('of a damaged font are refused', () => {
    expect(() => glyphsOf(fontWith(1, two(6, 0, 0)))).toThrow(/format 4 or 12/);
    expect(() => glyphsOf(Uint8Array.of(0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0))).toThrow(/cmap/);
    expect(() => fontTable(fontWith(1, two(4)).subarray(0, 40), 'cmap')).toThrow(/cut off/);
  });

  it('stand in CSS as ranges', () => {
    expect(unicodeRange([0x7e, 0x20, 0x21, 0xa0, 0x7d])).toBe('U+20-21,U+7D-7E,U+A0');
    expect(unicodeRange([])).toBe('');
  });
});

describe('the shipped fonts', () => {
  it('are files of four families in two weights', () => {
    const faces = fontFaces().map(({ family, weight }) => `${family} ${weight}`);
    expect(new Set(faces).size).toBe(8);
    expect(faces).toHaveLength(12);
  });

  it('have a glyph for a character only where the font file says so', async () => {
    const glyphs = glyphsOf(await readFile(`${dejavuFolder()}/DejaVuSans.ttf`));
    // The package's own table of coverage: DejaVu Sans has all 95 of Basic Latin, and none of the CJK ideographs.
    expect(Array.from({ length: 95 }, (_, i) => 0x20 + i).every((code) => glyphs.has(code))).toBe(true);
    expect(glyphs.has(0x4e00)).toBe(false);
  });

  it('have Basic Latin and Latin-1 in the first file of Plex and of Atkinson', async () => {
    for (const { path } of fontFaces().filter(
      ({ path: p }) => p.includes('-latin-4') || p.includes('-latin-7'),
    )) {
      const glyphs = glyphsOf(await readFile(path));
      const lacking = [...Array(0xff - 0x20).keys()].map((i) => i + 0x20).filter((code) => !glyphs.has(code));
      // Controls; the soft hyphen, which draws nothing; the micro sign, which Atkinson lacks.
      expect(
        lacking.filter(
          (code) =>
            (code < 0x7f || code > 0x9f) && code !== 0xad && !(code === 0xb5 && path.includes('atkinson')),
        ),
        path,
      ).toEqual([]);
    }
  });

  // The file of a font says of itself where each glyph's outline lies; that its figures are of one width is what
  // figures under each other need, whatever the width.
  it('have figures of one width in Plex', async () => {
    for (const { path } of fontFaces().filter(({ path: p }) => /plex.*-latin-[47]/.test(p))) {
      const bytes = await readFile(path);
      const [glyphs, advance] = [glyphsOf(bytes), advancesOf(bytes)];
      const widths = Array.from('0123456789', (c) => advance(glyphs.get(c.codePointAt(0) ?? 0) ?? 0));
      expect(new Set(widths).size, path).toBe(1);
    }
  });
});
