import { heightOf, widthOf, type Line } from './measure.js';
import type { Pen } from './pen.js';
import { tapSymbol, type DrawnSymbol, type SymbolFamily, type TapSymbol } from './symbols.js';
import type { Branch, Tap, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** A protector as it hangs on a line. */
interface HungTap {
  readonly symbol: DrawnSymbol;
  readonly lines: readonly Line[];
}

/** A line with its words and its protectors, measured for both directions. */
export interface LineBlock {
  /** Level: words above the line, protectors below. */
  readonly level: { readonly width: number; readonly above: number; readonly below: number };
  /** Upright: words and protectors to its right, below each other. */
  readonly upright: { readonly height: number; readonly right: number };
  drawLevel(pen: Pen, x: number, y: number, length: number): void;
  drawUpright(pen: Pen, x: number, y: number, length: number): void;
}

/** Between a line and the words at it. */
const OFF = 1.2;
/** From the left of a protector's room to its stem. */
const STEM = 4.2;
/** From its stem to its words. */
const WORDS = 3.4;
const APART = 2.6;
/** A line without words. */
const SHORTEST = 9;

/** Which symbol a protector has. */
export function tapSymbolOf({ protectors }: Tap): TapSymbol {
  const [protector] = protectors;
  const device = protector?.overcurrent[0]?.device ?? 'unknown';
  return {
    device: device === 'unknown' ? 'either' : device,
    isThreePlusOne: protector?.partDetails?.connection === '3+1',
  };
}

function hung(taps: readonly Tap[], words: OneLineWords, family: SymbolFamily): HungTap[] {
  return taps.map((tap) => ({ symbol: tapSymbol(tapSymbolOf(tap), family), lines: words.tap(tap) }));
}

const tapWidth = ({ lines }: HungTap): number => STEM + WORDS + widthOf(lines) + APART;
const tapHeight = ({ lines, symbol }: HungTap): number =>
  Math.max(symbol.height, OFF + heightOf(lines)) + 1.5;

function drawTap(pen: Pen, tap: HungTap, x: number, y: number): void {
  pen.symbol(tap.symbol.parts, x, y);
  pen.text(tap.lines, x + WORDS, y + OFF);
}

/**
 * Measures a line with what stands at it.
 * @param near the node that it leaves
 */
export function lineBlock(
  branch: Branch,
  near: TreeNode,
  words: OneLineWords,
  family: SymbolFamily,
): LineBlock {
  const lines = words.atLine(branch, near);
  const taps = hung([...branch.nearTaps, ...branch.farTaps], words, family);
  const isOpen = branch.child === null;
  const goesOn = isOpen && branch.far.length > 0;
  const tapsWidth = taps.reduce((sum, tap) => sum + tapWidth(tap), 0);
  const width = Math.max(SHORTEST, widthOf(lines) + 3.5, tapsWidth + 1);
  const tapsHeight = taps.reduce((sum, tap) => sum + tapHeight(tap), 0);
  const above = lines.length === 0 ? 1 : heightOf(lines) + OFF;
  const below = taps.reduce((most, tap) => Math.max(most, tapHeight(tap)), 2);
  const start = lines.length === 0 ? 1 : OFF + heightOf(lines) + 1;
  const height = Math.max(SHORTEST, start + tapsHeight + 0.5);
  const right = Math.max(2, 1.8 + widthOf(lines), ...taps.map((tap) => tapWidth(tap) + 1)) + 1;
  return {
    level: { width, above, below },
    upright: { height: height + (isOpen ? 2 : 0), right },
    drawLevel(pen, x, y, length) {
      pen.wire(x, y, x + length, y);
      pen.text(lines, x + 1.6, y - OFF - heightOf(lines));
      let at = x;
      for (const tap of taps) {
        drawTap(pen, tap, at + STEM, y);
        at += tapWidth(tap);
      }
      if (goesOn) pen.symbol(ARROW_RIGHT, x + length, y);
    },
    drawUpright(pen, x, y, length) {
      pen.wire(x, y, x, y + length);
      pen.text(lines, x + 1.8, y + OFF);
      let at = y + start;
      for (const tap of taps) {
        pen.wire(x, at, x + STEM + 1, at);
        drawTap(pen, tap, x + STEM + 1, at);
        at += tapHeight(tap);
      }
      if (goesOn) pen.symbol(ARROW_DOWN, x, y + length);
    },
  };
}

const ARROW_RIGHT = [
  { filled: true, commands: [['M', -2.4, -1.1], ['L', 0, 0], ['L', -2.4, 1.1], ['Z']] },
] as const;
const ARROW_DOWN = [
  { filled: true, commands: [['M', -1.1, -2.4], ['L', 0, 0], ['L', 1.1, -2.4], ['Z']] },
] as const;
