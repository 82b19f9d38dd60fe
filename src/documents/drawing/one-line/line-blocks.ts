import { heightOf, widthOf, type Line } from './measure.js';
import type { Pen } from './pen.js';
import { JOINT, tapSymbol, type DrawnSymbol, type SymbolFamily, type TapSymbol } from './symbols.js';
import type { Branch, Tap, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

/** A protector as it hangs on a line. */
interface HungTap {
  readonly symbol: DrawnSymbol;
  readonly lines: readonly Line[];
}

/** A level line: words above it, protectors below. */
export interface LevelLine {
  readonly width: number;
  readonly above: number;
  readonly below: number;
  draw(pen: Pen, x: number, y: number, length: number): void;
}

/** An upright line: words and protectors to its right. */
export interface UprightLine {
  readonly height: number;
  readonly right: number;
  draw(pen: Pen, x: number, y: number, length: number): void;
}

/** A line with its words and its protectors, measured for both directions: with its protectors beside each other, and below each other. */
export interface LineBlock {
  readonly level: readonly [beside: LevelLine, below: LevelLine];
  readonly upright: readonly [beside: UprightLine, below: UprightLine];
  /** True where the two differ. */
  readonly isManifold: boolean;
}

/** Between a line and the words at it. */
const OFF = 1.2;
/** From the left of a protector's room to its stem. */
const STEM = 4.2;
/** From its stem to its words. */
const WORDS = 3.4;
const APART = 2.6;
/** Between the stems of protectors that hang below each other. */
const STEMS_APART = 4.8;
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

/** A protector whose stem leaves a line at a place and hangs so much below it. */
function drawTap(pen: Pen, tap: HungTap, x: number, y: number, depth = 0): void {
  pen.symbol(JOINT, x, y);
  if (depth > 0) pen.wire(x, y, x, y + depth);
  const { parts, half, height } = tap.symbol;
  pen.symbol(parts, x, y + depth);
  pen.symbols.push({ x: x - half, y: y + depth, width: 2 * half, height });
  pen.text(tap.lines, x + WORDS, y + depth + OFF);
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

interface At {
  readonly lines: readonly Line[];
  readonly taps: readonly HungTap[];
  /** Of a line that goes on where its words say: which way what flows in it goes. */
  readonly goesOn: 'out' | 'in' | null;
}

function levelLine({ lines, taps, goesOn }: At, isBelow: boolean): LevelLine {
  const deep = taps.map((_, index) => (isBelow ? sum(taps.slice(index + 1).map(tapHeight)) : 0));
  const stems = taps.map(
    (_, index) => STEM + (isBelow ? index * STEMS_APART : sum(taps.slice(0, index).map(tapWidth))),
  );
  const rights = taps.map((tap, index) => (stems[index] ?? 0) - STEM + tapWidth(tap));
  const bottoms = taps.map((tap, index) => (deep[index] ?? 0) + tapHeight(tap));
  return {
    width: Math.max(SHORTEST, widthOf(lines) + 3.5, ...rights.map((right) => right + 1)),
    above: lines.length === 0 ? 1 : heightOf(lines) + OFF,
    below: Math.max(2, ...bottoms),
    draw(pen, x, y, length) {
      pen.wire(x, y, x + length, y);
      pen.text(lines, x + 1.6, y - OFF - heightOf(lines));
      for (const [index, tap] of taps.entries()) drawTap(pen, tap, x + (stems[index] ?? 0), y, deep[index]);
      if (goesOn !== null) pen.symbol(goesOn === 'out' ? ARROW_RIGHT : ARROW_LEFT, x + length, y);
    },
  };
}

function uprightLine({ lines, taps, goesOn }: At, isBelow: boolean): UprightLine {
  const start = lines.length === 0 ? 1 : OFF + heightOf(lines) + 1;
  const downs = taps.map((_, index) => start + (isBelow ? sum(taps.slice(0, index).map(tapHeight)) : 0));
  const stems = taps.map((_, index) => STEM + 1 + (isBelow ? 0 : sum(taps.slice(0, index).map(tapWidth))));
  const bottom = Math.max(start, ...taps.map((tap, index) => (downs[index] ?? 0) + tapHeight(tap)));
  const rights = taps.map((tap, index) => (stems[index] ?? 0) - STEM + tapWidth(tap));
  return {
    height: Math.max(SHORTEST, bottom + 0.5) + (goesOn === null ? 0 : 2.5),
    right: Math.max(2, 1.8 + widthOf(lines), ...rights) + 1,
    draw(pen, x, y, length) {
      pen.wire(x, y, x, y + length);
      pen.text(lines, x + 1.8, y + OFF);
      for (const [index, tap] of taps.entries()) {
        const [stem, down] = [x + (stems[index] ?? 0), y + (downs[index] ?? 0)];
        pen.wire(x, down, stem, down);
        drawTap(pen, tap, stem, down);
        if (index === 0 || isBelow) pen.symbol(JOINT, x, down);
      }
      if (goesOn !== null) pen.symbol(goesOn === 'out' ? ARROW_DOWN : ARROW_UP, x, y + length);
    },
  };
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
  const at: At = {
    lines: words.atLine(branch, near),
    taps: hung([...branch.nearTaps, ...branch.farTaps], words, family),
    goesOn: branch.child === null && branch.far.length > 0 ? (branch.isUpstream ? 'in' : 'out') : null,
  };
  return {
    level: [levelLine(at, false), levelLine(at, true)],
    upright: [uprightLine(at, false), uprightLine(at, true)],
    isManifold: at.taps.length > 1,
  };
}

const ARROW_RIGHT = [
  { filled: true, commands: [['M', -2.4, -1.1], ['L', 0, 0], ['L', -2.4, 1.1], ['Z']] },
] as const;
const ARROW_DOWN = [
  { filled: true, commands: [['M', -1.1, -2.4], ['L', 0, 0], ['L', 1.1, -2.4], ['Z']] },
] as const;
const ARROW_LEFT = [
  { filled: true, commands: [['M', 0, -1.1], ['L', -2.4, 0], ['L', 0, 1.1], ['Z']] },
] as const;
const ARROW_UP = [
  { filled: true, commands: [['M', -1.1, 0], ['L', 0, -2.4], ['L', 1.1, 0], ['Z']] },
] as const;
