import type { PennedSheet } from '../../src/documents/drawing/one-line.js';
import type { Area, Stroke } from '../../src/documents/drawing/one-line/pen.js';

/** Touching isn't lying on each other; a tenth of a millimetre is less than the width of a line. */
const SLACK = 0.1;

function overlap(a: Area, b: Area): boolean {
  return (
    a.x < b.x + b.width - SLACK &&
    b.x < a.x + a.width - SLACK &&
    a.y < b.y + b.height - SLACK &&
    b.y < a.y + a.height - SLACK
  );
}

const asArea = ({ x1, y1, x2, y2 }: Stroke): Area => ({
  x: Math.min(x1, x2),
  y: Math.min(y1, y2),
  width: Math.max(Math.abs(x2 - x1), 2 * SLACK + 0.01),
  height: Math.max(Math.abs(y2 - y1), 2 * SLACK + 0.01),
});

/** True for a text that stands wholly inside a box: its own. */
function inside(text: Area, box: Area): boolean {
  return (
    text.x >= box.x &&
    text.y >= box.y &&
    text.x + text.width <= box.x + box.width &&
    text.y + text.height <= box.y + box.height
  );
}

/** What lies on what in a drawn sheet, each as one line; none: the sheet is clean. */
export function faultsOf({ pen, width, height }: Pick<PennedSheet, 'pen' | 'width' | 'height'>): string[] {
  const faults: string[] = [];
  const texts = pen.texts.map((t) => ({ ...t, what: t.lines.map(({ text }) => text).join(' / ') }));
  for (const [index, text] of texts.entries()) {
    for (const other of texts.slice(index + 1))
      if (overlap(text, other)) faults.push(`"${text.what}" lies on "${other.what}"`);
    for (const wire of pen.wires)
      if (overlap(text, asArea(wire))) faults.push(`a line crosses "${text.what}"`);
    for (const symbol of pen.symbols)
      if (overlap(text, symbol)) faults.push(`a symbol lies on "${text.what}"`);
    for (const box of pen.boxes)
      if (overlap(text, box) && !inside(text, box))
        faults.push(`"${text.what}" lies across an edge of a box`);
    const isOut = text.x < 0 || text.y < 0 || text.x + text.width > width || text.y + text.height > height;
    if (isOut) faults.push(`"${text.what}" lies beyond the drawing`);
  }
  for (const [index, box] of pen.boxes.entries()) {
    for (const other of pen.boxes.slice(index + 1))
      if (overlap(box, other)) faults.push('a box lies on another');
    for (const wire of pen.wires) if (overlap(box, asArea(wire))) faults.push('a line crosses a box');
    for (const symbol of pen.symbols) if (overlap(box, symbol)) faults.push('a symbol lies on a box');
  }
  for (const [index, symbol] of pen.symbols.entries())
    for (const other of pen.symbols.slice(index + 1))
      if (overlap(symbol, other)) faults.push('a symbol lies on another');
  for (const [index, a] of pen.wires.entries()) {
    for (const b of pen.wires.slice(index + 1)) if (crossing(a, b)) faults.push('two lines cross');
  }
  return faults;
}

/** True where a level and an upright line pass through each other. */
function crossing(a: Stroke, b: Stroke): boolean {
  const [level, upright] = a.y1 === a.y2 ? [a, b] : [b, a];
  if (level.y1 !== level.y2 || upright.x1 !== upright.x2) return false;
  const [left, right] = [Math.min(level.x1, level.x2), Math.max(level.x1, level.x2)];
  const [top, bottom] = [Math.min(upright.y1, upright.y2), Math.max(upright.y1, upright.y2)];
  return (
    upright.x1 > left + SLACK &&
    upright.x1 < right - SLACK &&
    level.y1 > top + SLACK &&
    level.y1 < bottom - SLACK
  );
}
