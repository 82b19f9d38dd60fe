import { line } from './svg.js';

const STROKE = { stroke: '#000', 'stroke-width': 1.1, fill: 'none' };

/** Three bars that get shorter: earth, IEC 60617 / IEEE 315. */
export function groundSymbol(x: number, y: number): string {
  const bars = [9, 6, 3].map((half, index) => line(x - half, y + index * 3, x + half, y + index * 3, STROKE));
  return bars.join('');
}
