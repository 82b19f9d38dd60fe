import {
  drawLying,
  drawTap,
  hungTaps,
  lyingFoot,
  lyingHeight,
  lyingWidth,
  OFF,
  STEM,
  tapHeight,
  tapWidth,
  type HungTap,
} from './hung-taps.js';
import { heightOf, LEADING, widthOf, type Line } from './measure.js';
import type { Pen } from './pen.js';
import { JOINT, mainSymbol, turned, type DrawnSymbol, type SymbolFamily } from './symbols.js';
import type { Branch, TreeNode } from './tree.js';
import type { OneLineWords } from './words.js';

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

/** Between the stems of protectors that hang below each other. */
const STEMS_APART = 4.8;
/** A line without words. */
const SHORTEST = 9;
/** Of an upright line, from the box to the first protector. */
const FIRST = 2;
/** From the box to the symbol of the main, and the room of both. */
const MAIN_AT = 1.5;
const MAIN_ROOM = 8;
const MAIN_WORDS: readonly Line[] = [{ text: 'main', bold: false }];

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

interface At {
  readonly lines: readonly Line[];
  /** Protectors of the end where it leaves, and of the end where it arrives: each stand at their end. */
  readonly near: readonly HungTap[];
  readonly far: readonly HungTap[];
  readonly main: DrawnSymbol | null;
  /** Of a line that goes on where its words say: which way what flows in it goes. */
  readonly goesOn: 'out' | 'in' | null;
}

/** How deep each of several protectors hangs whose stems stand close: the one next to the box is the lowest. */
function depths(taps: readonly HungTap[], base: number): number[] {
  return taps.map((_, index) => base + sum(taps.slice(index + 1).map(tapHeight)));
}

/** From a box to the stems of its protectors. */
const stemsFrom = (start: number, taps: readonly HungTap[]): number[] =>
  taps.map((_, index) => start + STEM + index * STEMS_APART);

/** Their room from the box on; what lies before it if there are none. */
const roomOf = (start: number, stems: readonly number[], taps: readonly HungTap[]): number =>
  Math.max(start, ...taps.map((tap, index) => (stems[index] ?? 0) - STEM + tapWidth(tap)));

function levelLine({ lines, near, far, main, goesOn }: At, isBelow: boolean): LevelLine {
  const start = main === null ? 0 : MAIN_ROOM;
  const [nearStems, farStems] = [stemsFrom(start, near), stemsFrom(0, far)];
  const [nearRoom, farRoom] = [roomOf(start, nearStems, near), roomOf(0, farStems, far)];
  const nearDeep = depths(near, 0);
  // Below those of the near end their stems alone need room beside them.
  const isStepped = isBelow && near.length > 0 && far.length > 0;
  const farDeep = depths(far, isStepped ? sum(near.map(tapHeight)) : 0);
  const stemsRoom = far.length === 0 ? 0 : (farStems.at(-1) ?? 0) + 3;
  const hung = isStepped ? Math.max(nearRoom + stemsRoom, farRoom + start) : nearRoom + farRoom;
  // No protector may stand nearer to the other end than to its own.
  const ownHalf = 2 * Math.max(nearStems.at(-1) ?? 0, farStems.at(-1) ?? 0) + 1;
  const bottoms = [
    ...near.map((tap, index) => (nearDeep[index] ?? 0) + tapHeight(tap)),
    ...far.map((tap, index) => (farDeep[index] ?? 0) + tapHeight(tap)),
  ];
  return {
    width: Math.max(SHORTEST, start + widthOf(lines) + 3.5, hung + 1, ownHalf),
    above: Math.max(lines.length === 0 ? 1 : heightOf(lines) + OFF, main === null ? 0 : main.half + 0.5),
    below: Math.max(2, main === null ? 0 : OFF + LEADING + 0.5, ...bottoms),
    draw(pen, x, y, length) {
      if (main === null) pen.wire(x, y, x + length, y);
      else {
        pen.wire(x, y, x + MAIN_AT, y);
        pen.symbol(turned(main.parts), x + MAIN_AT, y);
        pen.wire(x + MAIN_AT + main.height, y, x + length, y);
        pen.text(MAIN_WORDS, x + MAIN_AT - 0.5, y + OFF);
      }
      pen.text(lines, x + start + 1.6, y - OFF - heightOf(lines));
      for (const [index, tap] of near.entries()) {
        const stem = x + (nearStems[index] ?? 0);
        drawTap(pen, tap, stem, y, nearDeep[index] ?? 0, 'right');
        pen.taps.push({ x: stem, y, protectors: tap.tags });
      }
      for (const [index, tap] of far.entries()) {
        const stem = x + length - (farStems[index] ?? 0);
        drawTap(pen, tap, stem, y, farDeep[index] ?? 0, 'left');
        pen.taps.push({ x: stem, y, protectors: tap.tags });
      }
      if (goesOn !== null) pen.symbol(goesOn === 'out' ? ARROW_RIGHT : ARROW_LEFT, x + length, y);
    },
  };
}

function uprightLine({ lines, near, far, main, goesOn }: At, isBelow: boolean): UprightLine {
  const start = main === null ? 0 : MAIN_ROOM;
  const downs = near.map(
    (_, index) => start + FIRST + (isBelow ? sum(near.slice(0, index).map(tapHeight)) : 0),
  );
  const stems = near.map((_, index) => STEM + 1 + (isBelow ? 0 : sum(near.slice(0, index).map(tapWidth))));
  const wordsAt = Math.max(start, ...near.map((tap, index) => (downs[index] ?? 0) + tapHeight(tap))) + OFF;
  const bottom = lines.length === 0 ? wordsAt : wordsAt + heightOf(lines) + 1;
  // From the bottom of the line to the bottom of the room of each.
  const ups = far.map((_, index) => sum(far.slice(0, index).map(lyingHeight)));
  const lastUp = Math.max(0, ...far.map((tap, index) => (ups[index] ?? 0) + lyingFoot(tap)));
  const ownHalf = 2 * Math.max(downs.at(-1) ?? 0, lastUp) + 1;
  const rights = near.map((tap, index) => (stems[index] ?? 0) - STEM + tapWidth(tap));
  const height = Math.max(SHORTEST, bottom + sum(far.map(lyingHeight)) + 0.5, ownHalf);
  return {
    height: height + (goesOn === null ? 0 : 2.5),
    right:
      Math.max(2, 1.8 + widthOf(lines), ...rights, ...far.map(lyingWidth), main === null ? 0 : 3 + SHORTEST) +
      1,
    draw(pen, x, y, length) {
      if (main === null) pen.wire(x, y, x, y + length);
      else {
        pen.wire(x, y, x, y + MAIN_AT);
        pen.symbol(main.parts, x, y + MAIN_AT);
        pen.wire(x, y + MAIN_AT + main.height, x, y + length);
        pen.text(MAIN_WORDS, x + main.half + 1, y + MAIN_AT + 1);
      }
      pen.text(lines, x + 1.8, y + wordsAt);
      for (const [index, tap] of near.entries()) {
        const [stem, down] = [x + (stems[index] ?? 0), y + (downs[index] ?? 0)];
        pen.wire(x, down, stem, down);
        drawTap(pen, tap, stem, down, 0, 'right');
        pen.taps.push({ x, y: down, protectors: tap.tags });
        if (index === 0 || isBelow) pen.symbol(JOINT, x, down);
      }
      for (const [index, tap] of far.entries()) drawLying(pen, tap, x, y + length - (ups[index] ?? 0));
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
    near: hungTaps(branch.nearTaps, words, family),
    far: hungTaps(branch.farTaps, words, family),
    main: branch.hasMain ? mainSymbol(family) : null,
    goesOn: branch.child === null && branch.far.length > 0 ? (branch.isUpstream ? 'in' : 'out') : null,
  };
  return {
    level: [levelLine(at, false), levelLine(at, true)],
    upright: [uprightLine(at, false), uprightLine(at, true)],
    isManifold: at.near.length + at.far.length > 1,
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
