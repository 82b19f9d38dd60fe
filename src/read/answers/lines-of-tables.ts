import type { OpenItem } from '../../model/open-item.js';
import type { InSteps } from '../file/in-steps.js';
import type { HeadingIndex } from '../table/headings.js';
import type { Table } from '../table/table.js';
import { readingTables } from '../table/tables.js';

/** What came of a file: its lines, and what is to be said. */
export interface LinesRead<L> {
  readonly lines: readonly L[];
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/**
 * Reads the lines of every table of a file, of a workbook its sheets.
 * @param name as messages call it
 * @param content of the file
 * @param index what its headings may mean
 * @param linesOf reads one table; of several sheets the name of each is the job of its lines where it has no job column
 * @returns a sheet that is no such table makes the file unreadable only where no other is one
 */
export function* linesOfTables<F extends string, L>(
  name: string,
  content: Uint8Array | string,
  index: HeadingIndex<F>,
  linesOf: (table: Table<F>, jobOfAll: string | null) => InSteps<LinesRead<L>>,
): InSteps<LinesRead<L>> {
  const read = yield* readingTables<F>(name, content, index);
  const lines: L[] = [];
  const items: OpenItem[] = [...read.items];
  const others: OpenItem[] = [];
  let isRead = false;
  for (const table of read.tables) {
    const one = yield* linesOf(table, read.tables.length > 1 ? table.sheet : null);
    // Not spread: there may be more than a call takes.
    for (const line of one.lines) lines.push(line);
    items.push(...one.items);
    others.push(...one.unreadable);
    isRead ||= one.unreadable.length === 0;
  }
  return isRead
    ? { lines, items: [...items, ...others], unreadable: read.unreadable }
    : { lines, items, unreadable: [...read.unreadable, ...others] };
}
