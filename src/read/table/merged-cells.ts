import type { OpenItem } from '../../model/open-item.js';
import { CELLS_MERGED, COUNT_MERGED } from '../../model/messages/workbook.js';
import { itemAt, note } from '../../model/message.js';
import { visible } from '../../words/visible.js';
import { firstAt, type MergedRows } from '../file/workbook/sheet.js';
import type { Column } from './columns.js';

/** Records of a sheet with the row of each. */
export interface SheetRecords {
  readonly cells: string[][];
  readonly lines: readonly number[];
}

/** Merged cells of one column. */
interface MergedHere {
  readonly lines: number[];
  readonly found: string;
}

/**
 * Takes a merged cell for each row that it spans. A count in one may be that of all its rows together, or of each: nobody knows.
 * @param file as messages name the sheet
 * @param records they are changed
 * @param merged cells that span rows
 * @param columns those understood
 * @param below row of the heading, or of the units under it: what begins there or above is no cell of a row
 * @returns an item for each column in which one stands
 */
export function takeMergedCells(
  file: string,
  { cells, lines }: SheetRecords,
  merged: readonly MergedRows[],
  columns: readonly Column<string>[],
  below: number,
): OpenItem[] {
  const byColumn = new Map<number, MergedHere>();
  const known = new Map(columns.map((column) => [column.index, column]));
  for (const { line, lastLine, column, text } of merged) {
    const of = known.get(column);
    const from = firstAt(lines, line);
    const to = firstAt(lines, lastLine + 1);
    // Of one row that says something, nothing is taken for another.
    if (of === undefined || line <= below || to - from < 2) continue;
    const here = byColumn.get(column) ?? { lines: [], found: visible(text) };
    byColumn.set(column, here);
    for (let r = from; r < to; r += 1) {
      here.lines.push(lines[r] ?? 0);
      const record = cells[r] ?? [];
      if (of.dimension === 'pieces' || r === from) continue;
      while (record.length < column) record.push('');
      record[column] = text;
    }
  }
  return columns.flatMap(({ index, heading, dimension }) => {
    const here = byColumn.get(index);
    if (here === undefined) return [];
    const kind = dimension === 'pieces' ? COUNT_MERGED : CELLS_MERGED;
    const said = note(kind, { column: visible(heading), lines: here.lines, found: here.found });
    return [itemAt(said, { file, line: here.lines[0] ?? 0, column: visible(heading) })];
  });
}
