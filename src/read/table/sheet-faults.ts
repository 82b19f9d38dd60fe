import type { OpenItem } from '../../model/open-item.js';
import { COLUMN_WITHOUT_HEADING } from '../../model/messages/list-heading.js';
import { COLUMNS_HIDDEN, DATE_IN_NAME, ROWS_HIDDEN } from '../../model/messages/workbook.js';
import { itemAt, note } from '../../model/message.js';
import { visible } from '../../words/visible.js';
import type { SheetCells } from '../file/workbook/sheet.js';
import type { Column } from './columns.js';
import type { HeadingPlace } from './find-heading.js';
import { at } from './table-faults.js';

/** Names whose own cells can't tell a date that was typed from one that a spreadsheet made. */
const NAMES = new Set(['job', 'part']);

/** So many columns without a heading are told one by one. */
const MOST_TOLD = 50;

/** What of a sheet isn't read as it isn't shown. */
export function hiddenIn(file: string, { hiddenRows, hiddenColumns }: SheetCells): OpenItem[] {
  const items: OpenItem[] = [];
  const [row] = hiddenRows;
  if (row !== undefined) items.push(at(ROWS_HIDDEN, { lines: hiddenRows }, file, row));
  if (hiddenColumns.length > 0) {
    const columns = hiddenColumns.map(({ letters, text }) => `${letters} (${visible(text)})`);
    items.push(at(COLUMNS_HIDDEN, { columns }, file, 1));
  }
  return items;
}

/** Columns of names in which a cell under the heading is stored as a date. */
export function datesInNames(
  file: string,
  { dates, cells, lines }: SheetCells,
  columns: readonly Column<string>[],
  headingLine: number,
): OpenItem[] {
  return columns.flatMap(({ field, index, heading }) => {
    const found = NAMES.has(field) ? (dates.get(index) ?? []).filter((line) => line > headingLine) : [];
    const [first] = found;
    if (first === undefined) return [];
    const text = cells[lines.indexOf(first)]?.[index] ?? '';
    const column = visible(heading);
    const said = note(DATE_IN_NAME, { column, lines: found, found: visible(text) });
    return [itemAt(said, { file, line: first, column })];
  });
}

/** Columns behind the last heading that hold something. */
export function columnsBehind(
  file: string,
  { cells, lines }: SheetCells,
  { line, cells: headings }: HeadingPlace,
): OpenItem[] {
  const firstLines = new Map<number, number>();
  for (const [r, record] of cells.entries()) {
    if ((lines[r] ?? 0) <= line) continue;
    for (let c = headings.length; c < record.length; c += 1)
      if (record[c] !== '' && !firstLines.has(c)) firstLines.set(c, lines[r] ?? 0);
  }
  return [...firstLines]
    .sort(([a], [b]) => a - b)
    .slice(0, MOST_TOLD)
    .map(([column, first]) => at(COLUMN_WITHOUT_HEADING, { column: column + 1 }, file, first));
}
