import type { SymbolPart } from './pen.js';

/** Whose graphical symbols a drawing has: IEEE 315 or IEC 60617. Both from memory, drawn by ourselves, and told in the legend. */
export type SymbolFamily = 'ieee-315' | 'iec-60617';

/** A symbol with its size: it hangs from its place, which is at the middle of its top. */
export interface DrawnSymbol {
  readonly parts: readonly SymbolPart[];
  readonly height: number;
  /** How far it goes to each side. */
  readonly half: number;
}

type Commands = SymbolPart['commands'];

const strokes = (...commands: Commands): SymbolPart => ({ filled: false, commands });
const fill = (...commands: Commands): SymbolPart => ({ filled: true, commands });

const disc = (x: number, y: number, r: number): SymbolPart =>
  fill(['M', x - r, y], ['a', r, r, 0, 1, 0, 2 * r, 0], ['a', r, r, 0, 1, 0, -2 * r, 0], ['Z']);
const down = (y: number, length: number): SymbolPart => strokes(['M', 0, y], ['v', length]);
const arrow = (y: number, up = false): SymbolPart =>
  up
    ? fill(['M', -0.9, y + 1.7], ['L', 0.9, y + 1.7], ['L', 0, y], ['Z'])
    : fill(['M', -0.9, y - 1.7], ['L', 0.9, y - 1.7], ['L', 0, y], ['Z']);
const frame = (y: number, height: number, half = 1.8): SymbolPart =>
  strokes(['M', -half, y], ['h', 2 * half], ['v', height], ['h', -2 * half], ['Z']);

const GROUND: readonly SymbolPart[] = [
  strokes(['M', -2.2, 0], ['h', 4.4], ['M', -1.4, 0.9], ['h', 2.8], ['M', -0.6, 1.8], ['h', 1.2]),
];

/** A part turned from hanging down to lying to the right; its left side is then below. */
function turnedCommand(command: Commands[number]): Commands[number] {
  const [letter, ...n] = command;
  const [a = 0, b = 0] = n;
  if (letter === 'M' || letter === 'L' || letter === 'l') return [letter, b, -a];
  if (letter === 'h') return ['v', -a];
  if (letter === 'v') return ['h', a];
  if (letter === 'a') return [letter, ...n.slice(0, 5), n[6] ?? 0, -(n[5] ?? 0)];
  return command;
}

/** A symbol that hangs down, as it lies to the right of its place. */
export function turned(parts: readonly SymbolPart[]): SymbolPart[] {
  return parts.map((part) => ({ ...part, commands: part.commands.map(turnedCommand) }));
}

const moved = (parts: readonly SymbolPart[], dy: number): SymbolPart[] =>
  parts.map((part) => ({
    ...part,
    commands: part.commands.map(([letter, ...n]) =>
      letter === 'M' || letter === 'L'
        ? ([letter, ...n.map((v, i) => (i % 2 === 0 ? v : v + dy))] as const)
        : ([letter, ...n] as const),
    ),
  }));

/** The overcurrent device in a protector's line, 4.4 mm high: by family, and by what it is. */
const DEVICES = {
  'ieee-315': {
    breaker: [
      disc(0, 0.5, 0.45),
      disc(0, 3.9, 0.45),
      strokes(['M', 0, 0.5], ['a', 2.2, 2.2, 0, 0, 1, 0, 3.4]),
    ],
    fuse: [strokes(['M', 0, 0], ['a', 1.1, 1.1, 0, 0, 1, 0, 2.2], ['a', 1.1, 1.1, 0, 0, 0, 0, 2.2])],
  },
  'iec-60617': {
    breaker: [
      strokes(['M', 0, 0], ['v', 0.8], ['M', -0.7, 0.1], ['l', 1.4, 1.4], ['M', 0.7, 0.1], ['l', -1.4, 1.4]),
      strokes(['M', 0, 4.4], ['v', -0.6], ['l', -1.7, -2.7]),
    ],
    fuse: [frame(0.4, 3.6, 0.9), down(0, 4.4)],
  },
} as const satisfies Record<SymbolFamily, Record<'breaker' | 'fuse', readonly SymbolPart[]>>;

/** Which kind isn't settled: a square. */
const EITHER: readonly SymbolPart[] = [strokes(['M', 0, 0], ['v', 0.7]), frame(0.7, 3, 1.5), down(3.7, 0.7)];

const ARRESTER: Readonly<Record<SymbolFamily, readonly SymbolPart[]>> = {
  'ieee-315': [frame(0, 5.4), down(0, 0.8), arrow(2.4), arrow(3, true), down(4.6, 0.8)],
  'iec-60617': [frame(0, 5.4), down(0, 2.4), arrow(3.9)],
};

/** Neutral to ground in a 3+1 part: a gap of its own below the channels to N. */
const GAP: readonly SymbolPart[] = [
  frame(0, 4.6),
  arrow(2, false),
  arrow(2.6, true),
  down(0, 0.4),
  down(4.2, 0.4),
];

/** The main disconnect of a service, in its line, its blade to the right. */
const MAIN: Readonly<Record<SymbolFamily, readonly SymbolPart[]>> = {
  'ieee-315': [disc(0, 0.05, 0.45), disc(0, 5.05, 0.45), strokes(['M', 0, 5.5], ['L', 2.1, 1.2])],
  'iec-60617': [
    strokes(['M', 0, 0], ['v', 0.9], ['M', -0.9, 0.9], ['h', 1.8], ['M', 0, 6], ['v', -0.9], ['L', 2, 1.4]),
  ],
};

/** The main disconnect of a service from where its line is broken to where it goes on. */
export function mainSymbol(family: SymbolFamily): DrawnSymbol {
  return { parts: MAIN[family], height: 6, half: 2.2 };
}

/** Where a line leaves another. */
export const JOINT: readonly SymbolPart[] = [disc(0, 0, 0.6)];

export type DeviceSymbol = 'breaker' | 'fuse' | 'either' | 'none';

/** What hangs in a protector's line. */
export interface TapSymbol {
  readonly device: DeviceSymbol;
  readonly isThreePlusOne: boolean;
}

/** A protector from the line that it taps down to ground. */
export function tapSymbol({ device, isThreePlusOne }: TapSymbol, family: SymbolFamily): DrawnSymbol {
  const parts: SymbolPart[] = [down(0, 1.4)];
  let y = 1.4;
  if (device !== 'none') {
    parts.push(...moved(device === 'either' ? EITHER : DEVICES[family][device], y));
    y += 4.4;
  }
  parts.push(down(y, 0.8), ...moved(ARRESTER[family], y + 0.8));
  y += 6.2;
  if (isThreePlusOne) {
    // The line between is the neutral's.
    parts.push(
      down(y, 1.6),
      strokes(['M', -2.6, y + 0.8], ['h', 2.6]),
      disc(0, y + 0.8, 0.4),
      ...moved(GAP, y + 1.6),
    );
    y += 6.2;
  }
  parts.push(down(y, 1), ...moved(GROUND, y + 1));
  return { parts, height: y + 2.8, half: 2.6 };
}
