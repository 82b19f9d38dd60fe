import { heightOf, widthOf, type Line } from './measure.js';
import type { Pen } from './pen.js';
import { JOINT, tapSymbol, turned, type DrawnSymbol, type SymbolFamily, type TapSymbol } from './symbols.js';
import type { Tap } from './tree.js';
import type { OneLineWords } from './words.js';

/** A protector as it hangs on a line. */
export interface HungTap {
  readonly tags: readonly string[];
  readonly symbol: DrawnSymbol;
  readonly lines: readonly Line[];
}

/** Between a line and the words at it. */
export const OFF = 1.2;
/** From the edge of a protector's room to its stem. */
export const STEM = 4.2;
/** From its stem to its words. */
const WORDS = 3.4;
const APART = 2.6;

/** Which symbol a protector has. */
export function tapSymbolOf({ protectors }: Tap): TapSymbol {
  const [protector] = protectors;
  const device = protector?.overcurrent[0]?.device ?? 'unknown';
  return {
    device: device === 'unknown' ? 'either' : device,
    isThreePlusOne: protector?.partDetails?.connection === '3+1',
  };
}

/** Protectors with their symbols and words. */
export function hungTaps(taps: readonly Tap[], words: OneLineWords, family: SymbolFamily): HungTap[] {
  return taps.map((tap) => ({
    tags: tap.protectors.map(({ tag }) => tag),
    symbol: tapSymbol(tapSymbolOf(tap), family),
    lines: words.tap(tap),
  }));
}

/** Room of a protector that hangs down, mm. */
export const tapWidth = ({ lines }: HungTap): number => STEM + WORDS + widthOf(lines) + APART;
/** Room of a protector that hangs down, mm. */
export const tapHeight = ({ lines, symbol }: HungTap): number =>
  Math.max(symbol.height, OFF + heightOf(lines)) + 1.5;

/**
 * Draws a protector whose stem leaves a line at a place and hangs so much below it.
 * @param side where its words stand
 */
export function drawTap(
  pen: Pen,
  tap: HungTap,
  x: number,
  y: number,
  depth: number,
  side: 'left' | 'right',
): void {
  pen.symbol(JOINT, x, y);
  if (depth > 0) pen.wire(x, y, x, y + depth);
  const { parts, half, height } = tap.symbol;
  pen.symbol(parts, x, y + depth);
  pen.symbols.push({ x: x - half, y: y + depth, width: 2 * half, height });
  pen.text(tap.lines, side === 'right' ? x + WORDS : x - WORDS - widthOf(tap.lines), y + depth + OFF);
}

/** Between a protector that lies beside an upright line and its words, and what follows. */
const CLEAR = 0.8;

/** Room of a protector that lies to the right of an upright line, below its words, mm. */
export const lyingHeight = ({ lines, symbol }: HungTap): number =>
  heightOf(lines) + 2 * symbol.half + 3 * CLEAR;
/** Room of a protector that lies to the right of an upright line, mm. */
export const lyingWidth = ({ lines, symbol }: HungTap): number =>
  Math.max(symbol.height, 1.8 + widthOf(lines)) + 1;
/** From where a lying protector taps its line to the bottom of its room, mm. */
export const lyingFoot = ({ symbol }: HungTap): number => symbol.half + CLEAR;

/** Draws a protector that lies to the right of an upright line, above a place. */
export function drawLying(pen: Pen, tap: HungTap, x: number, bottom: number): void {
  const { parts, half, height } = tap.symbol;
  const y = bottom - lyingFoot(tap);
  pen.symbol(JOINT, x, y);
  pen.symbol(turned(parts), x, y);
  pen.symbols.push({ x, y: y - half, width: height, height: 2 * half });
  pen.text(tap.lines, x + 1.8, y - half - CLEAR - heightOf(tap.lines));
  pen.taps.push({ x, y, protectors: tap.tags });
}
