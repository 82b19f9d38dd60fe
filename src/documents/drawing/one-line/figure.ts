import type { Pen } from './pen.js';

/** A part of the drawing that can be placed: mm from its upper left corner. */
export interface Figure {
  readonly width: number;
  readonly height: number;
  /** Where a line from the left arrives at it, and how far from its left edge: no further for a box. */
  readonly entryY: number;
  readonly inset?: number;
  /** Where a line from above arrives at it: across, and how far down its box begins. */
  readonly entryX: number;
  readonly topY: number;
  draw(pen: Pen, x: number, y: number): void;
}

/** Room, mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Shapes of one figure that are kept; common practice, no source. */
const MOST_SHAPES = 10;

/** True where a figure goes into a room; a hair of tolerance for sums of decimals. */
export function fitsInto({ width, height }: Room, room: Room): boolean {
  return width <= room.width + 0.001 && height <= room.height + 0.001;
}

/**
 * Those figures of which no other is both narrower and lower, the widest first.
 * @param room what doesn't go into it is left out
 */
export function bestShapes(figures: readonly Figure[], room: Room): Figure[] {
  const sorted = figures
    .filter((f) => fitsInto(f, room))
    .sort((a, b) => a.height - b.height || a.width - b.width);
  const kept: Figure[] = [];
  for (const figure of sorted) {
    const last = kept.at(-1);
    if (last === undefined || figure.width < last.width - 0.01) kept.push(figure);
  }
  if (kept.length <= MOST_SHAPES) return kept;
  // The ends, and as many between.
  const step = (kept.length - 1) / (MOST_SHAPES - 1);
  return Array.from({ length: MOST_SHAPES }, (_, i) => kept[Math.round(i * step)]).flatMap((f) => f ?? []);
}

/**
 * One shape of each of several figures so that together they are least in one direction, for each limit in the other.
 * @param sets the shapes of each; none of them empty
 * @param limited the direction of which none may exceed the limit
 */
export function choices(
  sets: readonly (readonly Figure[])[],
  limited: 'width' | 'height',
): readonly (readonly Figure[])[] {
  const other = limited === 'width' ? 'height' : 'width';
  const all = [...new Set(sets.flatMap((set) => set.map((f) => f[limited])))].sort((a, b) => a - b);
  const least = Math.max(0, ...sets.map((set) => Math.min(...set.map((f) => f[limited]))));
  const limits = all.filter((limit) => limit >= least);
  const step = Math.max(1, Math.ceil(limits.length / MOST_SHAPES));
  const tried = limits.filter((_, i) => i % step === 0 || i === limits.length - 1);
  return tried.map((limit) =>
    sets.flatMap((set) => {
      const within = set.filter((f) => f[limited] <= limit);
      return (
        within.reduce<Figure | undefined>((a, b) => (a && a[other] <= b[other] ? a : b), undefined) ?? []
      );
    }),
  );
}
