import { element, line, rect } from './svg.js';

const STROKE = { stroke: '#000', 'stroke-width': 1.1, fill: 'none' };

/** From the tapped line down to the lowest bar of the ground symbol. */
export const SYMBOL_HEIGHT = 48;

/** Three bars that get shorter: earth, IEC 60617 / IEEE 315. */
export function groundSymbol(x: number, y: number): string {
  const bars = [9, 6, 3].map((half, index) => line(x - half, y + index * 3, x + half, y + index * 3, STROKE));
  return bars.join('');
}

/**
 * A surge protective device to ground, after IEC 60617 / IEEE 315: a box with an arrow from the line into it, and earth.
 * Drawn by ourselves.
 * @param x of its stem, in points
 * @param y of the line that it taps
 */
export function protectorSymbol(x: number, y: number): string {
  const box = { top: y + 11, width: 13, height: 19 };
  const tip = box.top + 13;
  return [
    element('circle', { cx: x, cy: y, r: 2.2, fill: '#000' }),
    line(x, y, x, box.top + 6, STROKE),
    rect(x - box.width / 2, box.top, box.width, box.height, { ...STROKE, fill: '#fff' }),
    line(x, box.top, x, tip - 5, STROKE),
    element('path', { d: `M ${x - 3.2} ${tip - 6} L ${x + 3.2} ${tip - 6} L ${x} ${tip} Z`, fill: '#000' }),
    line(x, box.top + box.height, x, y + 41, STROKE),
    groundSymbol(x, y + 41),
  ].join('');
}

/** The end of a line that goes on elsewhere. `direction` -1 points left, 1 right. */
export function arrowHead(x: number, y: number, direction: -1 | 1): string {
  const back = x - direction * 7;
  return element('path', { d: `M ${back} ${y - 3.5} L ${x} ${y} L ${back} ${y + 3.5} Z`, fill: '#000' });
}
