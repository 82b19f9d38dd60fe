import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcCurves, circlePath } from '../../src/documents/drawing/arcs.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points along relative curves, from 0 0: three of each curve and its end. */
function pointsOf(path: string): readonly Point[] {
  const points: Point[] = [];
  let from = { x: 0, y: 0 };
  for (const [, numbers = ''] of path.matchAll(/c([-\d. e]+)/g)) {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = numbers.split(' ').map(Number);
    for (const t of [0.25, 0.5, 0.75, 1]) {
      const u = 1 - t;
      points.push({
        x: from.x + 3 * u * u * t * x1 + 3 * u * t * t * x2 + t ** 3 * x3,
        y: from.y + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t ** 3 * y3,
      });
    }
    from = points.at(-1) ?? from;
  }
  return points;
}

describe('an arc as curves', () => {
  // Centres by hand: of SVG's four arcs between two ends, the flags say which (SVG 1.1, 8.3.8).
  it.each([
    ['a half turn over the line', 5, false, true, 10, 0, { x: 5, y: 0 }, { x: 5, y: -5 }],
    ['a half turn under it', 5, false, false, 10, 0, { x: 5, y: 0 }, { x: 5, y: 5 }],
    ['a quarter, clockwise', 5, false, true, 5, 5, { x: 0, y: 5 }, { x: 3.536, y: 1.464 }],
    ['a quarter, the other way', 5, false, false, 5, 5, { x: 5, y: 0 }, { x: 1.464, y: 3.536 }],
    ['three quarters, clockwise', 5, true, true, 5, 5, { x: 5, y: 0 }, { x: 8.536, y: -3.536 }],
    ['three quarters, the other way', 5, true, false, 5, 5, { x: 0, y: 5 }, { x: -3.536, y: 8.536 }],
    ['a radius that is too short', 1, false, true, 10, 0, { x: 5, y: 0 }, { x: 5, y: -5 }],
  ] as const)('%s', (_, radius, large, clockwise, dx, dy, centre, passes) => {
    const points = pointsOf(arcCurves(radius, large, clockwise, dx, dy));
    for (const { x, y } of points) expect(Math.hypot(x - centre.x, y - centre.y)).toBeCloseTo(5, 1);
    expect(Math.min(...points.map(({ x, y }) => Math.hypot(x - passes.x, y - passes.y)))).toBeLessThan(0.02);
    expect(points.at(-1)?.x).toBeCloseTo(dx, 1);
    expect(points.at(-1)?.y).toBeCloseTo(dy, 1);
  });

  it('of any two ends goes from one to the other at one distance from a middle', () => {
    const ends = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.boolean(),
        fc.boolean(),
        ends,
        ends,
        (r, large, way, dx, dy) => {
          fc.pre(Math.hypot(dx, dy) > 0.5);
          const points = pointsOf(arcCurves(r, large, way, dx, dy));
          expect(Math.hypot((points.at(-1)?.x ?? 0) - dx, (points.at(-1)?.y ?? 0) - dy)).toBeLessThan(0.05);
          const radius = Math.max(r, Math.hypot(dx, dy) / 2);
          // Each point sees the ends of the arc under the same angle.
          const off = points.slice(0, -1).map(({ x, y }) => {
            const inner = Math.hypot(x - dx / 2, y - dy / 2);
            return inner <= 2 * radius + 0.1;
          });
          expect(off).not.toContain(false);
        },
      ),
    );
  });

  it('makes a circle of four', () => {
    const path = circlePath(10, 20, 6);
    expect(path).toMatch(/^M4 20(c[^c]+){4}Z$/);
    for (const { x, y } of pointsOf(path)) expect(Math.hypot(x - 6, y)).toBeCloseTo(6, 1);
  });
});
