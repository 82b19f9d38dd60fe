import type { DecimalMark } from '../cell/numbers.js';
import type { Column } from './columns.js';

/** A comma that can only be a decimal mark: it isn't followed by exactly three digits. */
const DECIMAL_COMMA = /(?:^|[^\d.,])\d+,(?:\d{1,2}|\d{4,})(?![\d.,])|(?:^|[^\d.,])0,\d|\d\.\d{3},\d/;
/** A point that can only be a decimal mark. */
const DECIMAL_POINT = /(?:^|[^\d.,])\d+\.(?:\d{1,2}|\d{4,})(?![\d.,])|(?:^|[^\d.,])0\.\d|\d,\d{3}\.\d/;
/** A cell longer than this is no figure. */
const LONGEST = 60;

/**
 * Whether `1.234` can be read two ways in this file as well as `1,234`: where its figures show decimal commas, or where no comma separates
 * its cells (spreadsheets take another mark in places with a decimal comma) and no figure shows a decimal point. Only the column map or a flag states
 * the mark for sure.
 * @param rows the records
 * @param columns those understood
 * @param delimiter of the file
 */
export function decimalMark(
  rows: readonly (readonly string[])[],
  columns: readonly Column<string>[],
  delimiter: string,
): DecimalMark {
  const figures = columns.filter((c) => c.dimension !== null).map((c) => c.index);
  let points = delimiter === ',';
  for (const row of rows) {
    for (const index of figures) {
      const cell = row[index];
      if (cell === undefined || cell.length > LONGEST) continue;
      if (cell.includes(',') && DECIMAL_COMMA.test(cell)) return 'auto-comma';
      if (!points && cell.includes('.') && DECIMAL_POINT.test(cell)) points = true;
    }
  }
  return points ? 'auto' : 'auto-comma';
}
