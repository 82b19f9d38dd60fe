import { fontTable } from './font-tables.js';

/** Glyph of each code point that a font has one for. */
export type Glyphs = ReadonlyMap<number, number>;

/**
 * Reads which glyph a TrueType or OpenType font has for each code point; those that lead to .notdef are left out.
 * Source: OpenType specification, table `cmap`, formats 4 and 12.
 * @param font the bytes of one font file, WOFF or bare
 * @throws Error where the file has no Unicode `cmap` of format 4 or 12
 */
export function glyphsOf(font: Uint8Array): Glyphs {
  const cmap = fontTable(font, 'cmap');
  const subtables = Array.from({ length: cmap.getUint16(2) }, (_, i) => {
    const at = 4 + i * 8;
    return {
      platform: cmap.getUint16(at),
      encoding: cmap.getUint16(at + 2),
      offset: cmap.getUint32(at + 4),
    };
  }).filter((s) => s.platform === 0 || (s.platform === 3 && (s.encoding === 1 || s.encoding === 10)));
  const whole = subtables.find((s) => cmap.getUint16(s.offset) === 12);
  if (whole) return segmentedCoverage(cmap, whole.offset);
  const basic = subtables.find((s) => cmap.getUint16(s.offset) === 4);
  if (basic) return segmentMapping(cmap, basic.offset);
  throw new Error('the font has no Unicode cmap of format 4 or 12');
}

function segmentedCoverage(cmap: DataView, offset: number): Glyphs {
  const glyphs = new Map<number, number>();
  for (let i = 0, groups = cmap.getUint32(offset + 12); i < groups; i += 1) {
    const at = offset + 16 + i * 12;
    const first = cmap.getUint32(at);
    const glyph = cmap.getUint32(at + 8);
    for (let code = first; code <= cmap.getUint32(at + 4); code += 1)
      if (glyph + code - first !== 0) glyphs.set(code, glyph + code - first);
  }
  return glyphs;
}

function segmentMapping(cmap: DataView, offset: number): Glyphs {
  const segments = cmap.getUint16(offset + 6) / 2;
  const ends = offset + 14;
  const starts = ends + segments * 2 + 2;
  const deltas = starts + segments * 2;
  const rangeOffsets = deltas + segments * 2;
  const glyphs = new Map<number, number>();
  for (let s = 0; s < segments; s += 1) {
    const start = cmap.getUint16(starts + s * 2);
    const end = cmap.getUint16(ends + s * 2);
    const delta = cmap.getUint16(deltas + s * 2);
    const rangeOffset = cmap.getUint16(rangeOffsets + s * 2);
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const raw =
        rangeOffset === 0 ? code : cmap.getUint16(rangeOffsets + s * 2 + rangeOffset + (code - start) * 2);
      if (raw === 0 && rangeOffset !== 0) continue;
      const glyph = (raw + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}

/**
 * How wide each glyph of a font is.
 * Source: OpenType specification, tables `head` (unitsPerEm), `hhea` (numberOfHMetrics) and `hmtx`.
 * @param font the bytes of one font file, WOFF or bare
 * @returns the advance of a glyph, in parts of the font size
 * @throws Error where a table is missing
 */
export function advancesOf(font: Uint8Array): (glyph: number) => number {
  const unitsPerEm = fontTable(font, 'head').getUint16(18);
  const last = fontTable(font, 'hhea').getUint16(34) - 1;
  const metrics = fontTable(font, 'hmtx');
  return (glyph) => metrics.getUint16(Math.min(glyph, last) * 4) / unitsPerEm;
}

/**
 * Code points as CSS writes them in `unicode-range`: `U+20-7E,U+A0`.
 * @param codePoints in any order
 */
export function unicodeRange(codePoints: Iterable<number>): string {
  const ranges: [number, number][] = [];
  for (const code of [...codePoints].sort((a, b) => a - b)) {
    const range = ranges.at(-1);
    if (range?.[1] === code - 1) range[1] = code;
    else ranges.push([code, code]);
  }
  const hex = (code: number): string => code.toString(16).toUpperCase();
  return ranges.map(([first, last]) => `U+${hex(first)}${first === last ? '' : `-${hex(last)}`}`).join(',');
}
