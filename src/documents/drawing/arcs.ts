import { plainNumber } from '../parts/figures.js';

/** A curve takes a quarter of a turn at most: it then leaves the circle by less than 0.03 % of the radius. */
const LONGEST = Math.PI / 2;

/** How far the middle of a chord is from the middle of the circle. */
function middleOff(radius: number, chord: number): number {
  return Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
}

/**
 * An arc of a circle as curves of a path (`c`, relative). The browser would write an arc into a PDF as eight times as many curves.
 * Source: SVG 1.1, F.6.5 (centre of an arc from its ends); the length of a curve's handles, 4/3 of the tangent of a quarter of its angle, is
 * elementary geometry.
 * @param radius of the circle; half of the chord where that is more
 * @param large true: the longer way round
 * @param clockwise true: the way in which y goes down from x
 * @param dx, dy the end, from the beginning
 */
export function arcCurves(
  radius: number,
  large: boolean,
  clockwise: boolean,
  dx: number,
  dy: number,
): string {
  const chord = Math.hypot(dx, dy);
  if (chord === 0) return '';
  const r = Math.max(radius, chord / 2);
  const side = (large === clockwise ? -1 : 1) * middleOff(r, chord);
  const centre = { x: dx / 2 - (side * dy) / chord, y: dy / 2 + (side * dx) / chord };
  const begin = Math.atan2(-centre.y, -centre.x);
  const end = Math.atan2(dy - centre.y, dx - centre.x);
  const turn = ((end - begin) * (clockwise ? 1 : -1) + 2 * Math.PI) % (2 * Math.PI);
  const count = Math.ceil(turn / LONGEST - 1e-9);
  const step = ((clockwise ? 1 : -1) * turn) / count;
  const handle = (4 / 3) * Math.tan(step / 4) * r;
  const at = (angle: number): readonly [number, number] => [r * Math.cos(angle), r * Math.sin(angle)];
  const curves = Array.from({ length: count }, (_, i) => {
    const [fromX, fromY] = at(begin + i * step);
    const [toX, toY] = at(begin + (i + 1) * step);
    const first = [(-fromY * handle) / r, (fromX * handle) / r];
    const second = [toX - fromX + (toY * handle) / r, toY - fromY - (toX * handle) / r];
    return `c${[...first, ...second, toX - fromX, toY - fromY].map((n) => plainNumber(n)).join(' ')}`;
  });
  return curves.join('');
}

/** A whole circle as a path. */
export function circlePath(x: number, y: number, radius: number): string {
  const half = (dx: number): string => arcCurves(radius, false, true, dx, 0);
  return `M${plainNumber(x - radius)} ${plainNumber(y)}${half(2 * radius)}${half(-2 * radius)}Z`;
}
