/** Ranges of code points, each first and last inclusive, ascending. */
export type CodePointRanges = readonly (readonly [number, number])[];

/**
 * Reads which code points a TrueType or OpenType font maps to a glyph other than .notdef.
 * Source: OpenType specification, table `cmap`, formats 4 and 12.
 * @param font the bytes of one font file
 * @returns the code points, as ascending ranges
 * @throws Error where the file has no Unicode `cmap` of format 4 or 12
 */
export function codePointsOf(font: Uint8Array): CodePointRanges {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const cmap = tableOffset(view, 'cmap');
  const subtables = Array.from({ length: view.getUint16(cmap + 2) }, (_, i) => {
    const at = cmap + 4 + i * 8;
    return {
      platform: view.getUint16(at),
      encoding: view.getUint16(at + 2),
      offset: cmap + view.getUint32(at + 4),
    };
  }).filter((s) => s.platform === 0 || (s.platform === 3 && (s.encoding === 1 || s.encoding === 10)));
  const whole = subtables.find((s) => view.getUint16(s.offset) === 12);
  if (whole) return segmentedCoverage(view, whole.offset);
  const basic = subtables.find((s) => view.getUint16(s.offset) === 4);
  if (basic) return segmentMapping(view, basic.offset);
  throw new Error('the font has no Unicode cmap of format 4 or 12');
}

/** Offset of a table of the font, in bytes. */
function tableOffset(view: DataView, tag: string): number {
  for (let i = 0, tables = view.getUint16(4); i < tables; i += 1) {
    const at = 12 + i * 16;
    const name = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
    if (name === tag) return view.getUint32(at + 8);
  }
  throw new Error(`the font has no table ${tag}`);
}

function segmentedCoverage(view: DataView, offset: number): CodePointRanges {
  return Array.from({ length: view.getUint32(offset + 12) }, (_, i) => {
    const at = offset + 16 + i * 12;
    const first = view.getUint32(at);
    const glyph = view.getUint32(at + 8);
    // A group that starts at glyph 0 maps its first code point to .notdef.
    return [glyph === 0 ? first + 1 : first, view.getUint32(at + 4)] as const;
  }).filter(([first, last]) => first <= last);
}

function segmentMapping(view: DataView, offset: number): CodePointRanges {
  const segments = view.getUint16(offset + 6) / 2;
  const ends = offset + 14;
  const starts = ends + segments * 2 + 2;
  const deltas = starts + segments * 2;
  const rangeOffsets = deltas + segments * 2;
  const ranges: [number, number][] = [];
  for (let s = 0; s < segments; s += 1) {
    const start = view.getUint16(starts + s * 2);
    const end = view.getUint16(ends + s * 2);
    const delta = view.getUint16(deltas + s * 2);
    const rangeOffset = view.getUint16(rangeOffsets + s * 2);
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const raw =
        rangeOffset === 0 ? code : view.getUint16(rangeOffsets + s * 2 + rangeOffset + (code - start) * 2);
      if (raw === 0 && rangeOffset !== 0) continue;
      if (((raw + delta) & 0xffff) === 0) continue;
      const last = ranges.at(-1);
      if (last?.[1] === code - 1) last[1] = code;
      else ranges.push([code, code]);
    }
  }
  return ranges;
}

/**
 * Tells whether a code point lies in one of the ranges.
 * @param ranges ascending ranges
 * @param codePoint a Unicode code point
 */
export function inRanges(ranges: CodePointRanges, codePoint: number): boolean {
  let low = 0;
  let high = ranges.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const [first, last] = ranges[middle] ?? [0, -1];
    if (codePoint < first) high = middle - 1;
    else if (codePoint > last) low = middle + 1;
    else return true;
  }
  return false;
}
