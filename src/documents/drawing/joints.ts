import type { Layout } from './layout.js';

type Point = Layout['routes'][number][number];

/** Routes of the layout library end within a hundredth of a point of each other. */
const same = (a: number, b: number): boolean => Math.abs(a - b) < 0.05;
const between = (value: number, a: number, b: number): boolean =>
  value > Math.min(a, b) + 0.05 && value < Math.max(a, b) - 0.05;

/** The directions in which a segment leaves a point: two where it passes through, one where it ends there. */
function directions(at: Point, a: Point, b: Point): readonly string[] {
  const level = same(a.y, b.y);
  if (level ? !same(at.y, a.y) : !same(at.x, a.x)) return [];
  const [low, high] = level ? ['west', 'east'] : ['north', 'south'];
  const [value, first, second] = level ? [at.x, a.x, b.x] : [at.y, a.y, b.y];
  if (between(value, first, second)) return [low, high];
  if (same(value, first)) return [second < first ? low : high];
  return same(value, second) ? [first < second ? low : high] : [];
}

/**
 * Where runs that share an end part: corners of one run from which lines leave in three directions or more.
 * @param routes orthogonal polylines, in points
 */
export function joints(routes: Layout['routes']): readonly Point[] {
  const found: Point[] = [];
  for (const route of routes) {
    const [start, end] = [route[0], route.at(-1)];
    if (start === undefined || end === undefined) continue;
    const kin = routes.filter((other) => {
      const [first, last] = [other[0], other.at(-1)];
      return first && last && (meets(first, start) || meets(last, end));
    });
    for (const corner of route.slice(1, -1)) {
      const leaving = new Set(
        kin.flatMap((other) => other.slice(1).flatMap((b, i) => directions(corner, other[i] ?? b, b))),
      );
      if (leaving.size > 2 && !found.some((p) => meets(p, corner))) found.push(corner);
    }
  }
  return found;
}

function meets(a: Point, b: Point): boolean {
  return same(a.x, b.x) && same(a.y, b.y);
}
