import type { DecimalMark } from '../text/numbers.js';
import type { Column } from './columns.js';

/** A comma that can only be a decimal mark: not followed by exactly three digits. */
const DECIMAL_COMMA = /(?:^|[^\d.,])\d+,(?:\d{1,2}|\d{4,})(?![\d.,])|^0,\d|\d\.\d{3},\d/;

/**
 * Whether a file shows decimal commas: then `1.234` can be read two ways as well. Only the column map and a flag state the mark for sure.
 * @param rows the records
 * @param columns those understood
 * @param delimiter of the file
 */
export function decimalMark(
  rows: readonly (readonly string[])[],
  columns: readonly Column<string>[],
  delimiter: string,
): DecimalMark {
  if (delimiter === ';') return 'auto-comma';
  const figures = columns.filter((c) => c.dimension !== null);
  for (const row of rows) {
    for (const { index } of figures) {
      const cell = row[index];
      if (cell?.includes(',') === true && cell.length < 60 && DECIMAL_COMMA.test(cell)) return 'auto-comma';
    }
  }
  return 'auto';
}
