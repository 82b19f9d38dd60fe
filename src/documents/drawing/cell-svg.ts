import { FONT, labelText, LINE, SHARED_FRAME } from './cell.js';
import type { CellShape, RowShape, SharedShape, TapShape } from './cell.js';
import { element, line, rect, textAt } from './svg.js';
import { arrowHead, protectorSymbol } from './symbols.js';

const WIRE = { stroke: '#000', 'stroke-width': 1.1 };

function tapSvg(tap: TapShape, y: number): string {
  const label = tap.lines.map((text, index) =>
    textAt(tap.x + 13, y + 16 + index * LINE, text, index === 0 ? { 'font-weight': 700 } : {}),
  );
  return element('g', { 'data-protector': tap.protector.tag }, protectorSymbol(tap.x, y) + label.join(''));
}

type SheetOf = (key: string) => number | null;

function rowSvg(cell: CellShape, shape: RowShape, sheetOf: SheetOf): string {
  const { y, row } = shape;
  const west = row.side === 'west';
  const box = west ? cell.boxLeft : cell.boxRight;
  const edge = west ? 0 : cell.width;
  const outermost = west ? Math.min(...shape.taps.map((t) => t.x)) : Math.max(...shape.taps.map((t) => t.x));
  const drops = row.shared.length * 8;
  const end = shape.toEdge ? edge : shape.taps.length > 0 ? outermost : west ? box - drops : box + drops;
  const labels = shape.labels.map((label, index) => {
    const text = labelText(label, sheetOf);
    const labelY = y - 4 - (shape.labels.length - 1 - index) * LINE;
    return textAt(west ? 4 : cell.width - 4, labelY, text, west ? {} : { 'text-anchor': 'end' });
  });
  const name = textAt(
    west ? cell.boxLeft + 5 : cell.boxRight - 5,
    y + 3.5,
    row.port,
    west ? {} : { 'text-anchor': 'end' },
  );
  return [
    end === box ? '' : line(end, y, box, y, WIRE),
    shape.arrow ? arrowHead(row.outside && west ? 9 : edge, y, row.outside ? 1 : west ? -1 : 1) : '',
    labels.join(''),
    row.port === '' ? '' : name,
    shape.taps.map((tap) => tapSvg(tap, y)).join(''),
  ].join('');
}

function sharedSvg(cell: CellShape, shape: SharedShape): string {
  const { top, protector } = shape;
  const inner = top + 8;
  const sides = cell.rows
    .filter((r) => r.row.shared.includes(protector))
    .map((r) => {
      const west = r.row.side === 'west';
      const dropX = west ? cell.boxLeft - shape.drop : cell.boxRight + shape.drop;
      const symbolX = west ? cell.boxLeft + 18 : cell.boxRight - 18;
      const path = `M ${dropX} ${r.y} V ${inner} H ${symbolX}`;
      return (
        element('circle', { cx: dropX, cy: r.y, r: 2.2, fill: '#000' }) +
        element('path', { d: path, fill: 'none', ...WIRE }) +
        protectorSymbol(symbolX, inner)
      );
    });
  const middle = (cell.boxLeft + cell.boxRight) / 2;
  const label = shape.lines.map((text, index) =>
    textAt(middle, top + 22 + index * LINE, text, {
      'text-anchor': 'middle',
      ...(index === 0 ? { 'font-weight': 700 } : {}),
    }),
  );
  const frame = rect(cell.boxLeft, top, cell.boxRight - cell.boxLeft, SHARED_FRAME, {
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 0.8,
    'stroke-dasharray': '4 2',
  });
  return element('g', { 'data-protector': protector.tag }, frame + sides.join('') + label.join(''));
}

/**
 * The cell of an equipment with its upper left corner at the origin.
 * @param sheetOf the sheet on which a row is drawn, `null` for the cell's own
 */
export function cellSvg(cell: CellShape, sheetOf: SheetOf): string {
  const box = rect(cell.boxLeft, 0, cell.boxRight - cell.boxLeft, cell.boxBottom, {
    fill: '#fff',
    stroke: '#000',
    'stroke-width': 1.4,
    'data-equipment': cell.unit.equipment.tag,
  });
  const tag = cell.tag.map((text, index) =>
    textAt(cell.boxLeft + 6, LINE * (index + 1) - 1, text, { 'font-weight': 700 }),
  );
  const details = cell.details.map((text, index) =>
    textAt(cell.boxLeft + 6, cell.detailsTop + LINE * (index + 1) - 1, text),
  );
  const rows = cell.rows.map((shape) => rowSvg(cell, shape, sheetOf));
  const shared = cell.shared.map((shape) => sharedSvg(cell, shape));
  return element(
    'g',
    { 'font-size': FONT },
    box + tag.join('') + details.join('') + rows.join('') + shared.join(''),
  );
}
