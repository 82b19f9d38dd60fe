import type { Figure } from './figure.js';
import { Pen, type Area } from './pen.js';

/** Between two pieces on a sheet, mm. */
export const BETWEEN = 5;

/** A piece of more than this share of another isn't put into a gap of it; common practice, no source. */
const MOST_OF_OTHER = 0.5;

const drawnAreas = new WeakMap<Figure, readonly Area[]>();

/** What a figure covers with ink, as rectangles; mm from its upper left corner. */
function areasOf(figure: Figure): readonly Area[] {
  const known = drawnAreas.get(figure);
  if (known) return known;
  const pen = new Pen();
  figure.draw(pen, 0, 0);
  const wires = pen.wires.map(({ x1, y1, x2, y2 }) => ({
    x: Math.min(x1, x2),
    y: Math.min(y1, y2),
    width: Math.abs(x2 - x1),
    height: Math.abs(y2 - y1),
  }));
  const areas = [...pen.texts, ...pen.boxes, ...pen.symbols, ...wires];
  drawnAreas.set(figure, areas);
  return areas;
}

/** True where something stands nearer to a rectangle than pieces stand apart. */
const isNear = (at: Area, other: Area): boolean =>
  other.x < at.x + at.width + BETWEEN &&
  at.x < other.x + other.width + BETWEEN &&
  other.y < at.y + at.height + BETWEEN &&
  at.y < other.y + other.height + BETWEEN;

/**
 * A small piece in a gap of a figure, which becomes no larger by it: the highest gap, the first from the left.
 * @returns one figure, or none where no gap holds it
 */
export function nestled(figure: Figure, piece: Figure): Figure[] {
  if (piece.width * piece.height > figure.width * figure.height * MOST_OF_OTHER) return [];
  const areas = areasOf(figure);
  const lowest = figure.height - piece.height;
  const last = figure.width - piece.width;
  const from = (starts: readonly number[], most: number): number[] =>
    [...new Set([0, ...starts])].filter((at) => at <= most).sort((a, b) => a - b);
  const tops = from(
    areas.map((area) => area.y + area.height + BETWEEN),
    lowest,
  );
  const lefts = from(
    areas.map((area) => area.x + area.width + BETWEEN),
    last,
  );
  for (const y of tops) {
    for (const x of lefts) {
      const at = { x, y, width: piece.width, height: piece.height };
      if (areas.some((area) => isNear(at, area))) continue;
      return [
        {
          ...figure,
          draw(pen, left, top) {
            figure.draw(pen, left, top);
            piece.draw(pen, left + x, top + y);
          },
        },
      ];
    }
  }
  return [];
}
