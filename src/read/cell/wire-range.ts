import type { WireRange, WireSize } from '../../model/catalogue.js';
import { readWireSize } from './units.js';

const METALS: readonly (readonly [WireRange['metal'], RegExp])[] = [
  ['copper', /\b(?:cu|copper)\b/],
  ['aluminium', /\b(?:al|alu|aluminum|aluminium)\b/],
];
const METAL_WORDS = /\b(?:cu|copper|al|alu|aluminum|aluminium)\b/g;
const JOINS_METALS = /(?:\/|,|&|\+|\bor\b|\band\b)/g;
const UNIT = /(awg|mm2|mm\^2|sq\.?\s?mm)$/;
const BETWEEN = /\s*(?:\bto\b|\bthrough\b|\.{2,3}|[-\u2013\u2014])\s*/;

/**
 * Reads the wires that terminals take: `14 to 6 AWG Cu`, `4 - 16 mm2 Cu`, `14 to 6 AWG Cu; 12 to 4 AWG Al`, `10 AWG to 1/0 AWG Cu/Al`.
 * A range that names no metal is of copper: terminals for aluminium are marked so (NEC 110.14(A), value from memory).
 * @param text the cell
 * @returns one range a metal, in the order of the cell; null where a part of it isn't a range of sizes, or names a metal twice
 */
export function readWireRanges(text: string): readonly WireRange[] | null {
  const found: WireRange[] = [];
  for (const one of text.normalize('NFKC').toLowerCase().split(/[;\n]/)) {
    if (one.trim() === '') continue;
    const metals = METALS.filter(([, named]) => named.test(one)).map(([metal]) => metal);
    const sizes = sizesOf(one.replace(METAL_WORDS, ' '), metals.length > 0);
    if (!sizes) return null;
    for (const metal of metals.length > 0 ? metals : (['copper'] as const)) {
      if (found.some((range) => range.metal === metal)) return null;
      found.push({ metal, ...sizes });
    }
  }
  return found.length > 0 ? found : null;
}

/** @param named true where a metal was taken out, and what joined two of them may stand there still */
function sizesOf(text: string, named: boolean): Pick<WireRange, 'least' | 'most'> | undefined {
  const bare = named ? text.replace(/[:()]/g, ' ').trim() : text.trim();
  const parts = bare
    .replace(named ? new RegExp(`(?:\\s*${JOINS_METALS.source}\\s*)+$`) : /$^/, '')
    .trim()
    .split(BETWEEN)
    .map((one) => one.trim());
  const [first = '', last = first, more] = parts;
  const unit = UNIT.exec(last)?.[1];
  if (more !== undefined || unit === undefined) return undefined;
  const a = sizeOf(UNIT.test(first) ? first : `${first} ${unit}`);
  const b = sizeOf(last);
  if (!a || !b) return undefined;
  return a.area <= b.area ? { least: a, most: b } : { least: b, most: a };
}

/** `#14`, `14 awg`, `1/0 awg`, `2.5 mm2` by the name that the trade has for it. */
function sizeOf(text: string): WireSize | undefined {
  const size = readWireSize(text);
  if (!size) return undefined;
  const name = text.replace(/^#\s*/, '').replace(/\s*(?:awg|mm2|mm\^2|sq\.?\s?mm)$/, '');
  return { name: `${name} ${text.endsWith('awg') ? 'AWG' : 'mm2'}`, ...size };
}
