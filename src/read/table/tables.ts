import type { OpenItem } from '../../model/open-item.js';
import { FILE_EMPTY, FILE_NOT_TEXT } from '../../model/messages/list-file.js';
import { NO_HEADING } from '../../model/messages/list-heading.js';
import {
  SHEET_NOT_A_TABLE,
  SHEETS_HIDDEN,
  WORKBOOK_BINARY,
  WORKBOOK_BROKEN,
  WORKBOOK_ENCRYPTED,
  WORKBOOK_TOO_LARGE,
} from '../../model/messages/workbook.js';
import { visible } from '../../words/visible.js';
import type { InSteps } from '../file/in-steps.js';
import { MOST_OF, type WorkbookProblem } from '../file/workbook/fault.js';
import type { SheetCells } from '../file/workbook/sheet.js';
import { isWorkbook, readingWorkbook } from '../file/workbook/workbook.js';
import { statedDialect, type Dialect } from './dialect.js';
import type { HeadingIndex } from './headings.js';
import { hiddenIn } from './sheet-faults.js';
import { sheetTable } from './sheet-table.js';
import { readingTable, type Table, type TableReading, type Understood } from './table.js';
import { at } from './table-faults.js';

/** The tables of a file: one of a text, one a sheet of a workbook. */
export interface Tables<F extends string> {
  /** None: `unreadable` says why. */
  readonly tables: readonly Table<F>[];
  readonly unreadable: readonly OpenItem[];
  /** What of the file isn't read though the rest is. */
  readonly items: readonly OpenItem[];
  /** Those of which no heading is known: what a column map can be begun from. */
  readonly unknown: readonly Understood[];
}

/**
 * Reads a file as tables, in steps: a text as one, each sheet of a workbook (`.xlsx`, `.xlsm`, `.ods`) that is shown and holds something as one.
 * @param file as messages name it; a sheet is named `list.xlsx!Sheet`
 * @param content the file's bytes, or its text
 * @param index what its headings may mean
 * @param map what the column map states about it
 * @param flags what flags state about it; goes before the column map
 * @returns the tables, or why there are none; never throws
 */
export function* readingTables<F extends string>(
  file: string,
  content: Uint8Array | string,
  index: HeadingIndex<F>,
  map: Dialect = {},
  flags: Dialect = {},
): InSteps<Tables<F>> {
  if (typeof content === 'string' || !isWorkbook(file, content)) {
    const reading = yield* readingTable(file, content, index, map, flags);
    return reading.ok
      ? { tables: [reading.table], unreadable: [], items: [], unknown: [] }
      : { tables: [], unreadable: [reading.item], items: [], unknown: unknownOf(reading) };
  }
  if (content.length === 0)
    return { tables: [], unreadable: [at(FILE_EMPTY, { path: file }, file, 1)], items: [], unknown: [] };
  const workbook = yield* readingWorkbook(content, statedDialect(map, flags).decimal ?? '.');
  if (!workbook.ok)
    return { tables: [], unreadable: [notRead(file, workbook.problem)], items: [], unknown: [] };
  yield;
  return yield* sheetsAsTables(file, workbook.sheets, index, map, flags);
}

const unknownOf = <F extends string>(reading: TableReading<F>): Understood[] =>
  reading.ok || reading.understood === undefined ? [] : [reading.understood];

function notRead(file: string, problem: WorkbookProblem): OpenItem {
  if (problem === 'no-workbook')
    return at(FILE_NOT_TEXT, { path: file, kind: 'a zip archive of something else' }, file, 1);
  if (problem === 'broken') return at(WORKBOOK_BROKEN, { path: file }, file, 1);
  if (problem === 'encrypted') return at(WORKBOOK_ENCRYPTED, { path: file }, file, 1);
  if (problem === 'binary') return at(WORKBOOK_BINARY, { path: file }, file, 1);
  return at(WORKBOOK_TOO_LARGE, { path: file, what: problem, millions: MOST_OF[problem] / 1e6 }, file, 1);
}

function* sheetsAsTables<F extends string>(
  file: string,
  sheets: readonly SheetCells[],
  index: HeadingIndex<F>,
  map: Dialect,
  flags: Dialect,
): InSteps<Tables<F>> {
  const items: OpenItem[] = [];
  const names = sheetNames(sheets);
  const says = ({ cells, hiddenRows }: SheetCells): boolean => cells.length > 0 || hiddenRows.length > 0;
  const hidden = sheets.flatMap((sheet, i) => (sheet.hidden && says(sheet) ? [names[i] ?? ''] : []));
  if (hidden.length > 0) items.push(at(SHEETS_HIDDEN, { sheets: hidden }, file, 1));
  const readings: { readonly name: string; readonly reading: TableReading<F>; readonly first: string }[] = [];
  for (const [i, sheet] of sheets.entries()) {
    if (sheet.hidden || !says(sheet)) continue;
    const name = names[i] ?? '';
    const first = visible((sheet.cells[0] ?? []).filter((cell) => cell !== '').join(' '));
    // All that it says is hidden.
    if (sheet.cells.length === 0) items.push(...hiddenIn(`${file}!${name}`, sheet));
    else
      readings.push({
        name,
        first,
        reading: yield* sheetTable(`${file}!${name}`, { ...sheet, name }, index, map, flags),
      });
    yield;
  }
  const unknown = readings.flatMap(({ reading }) => unknownOf(reading));
  const tables = readings.flatMap(({ reading }) => (reading.ok ? [reading.table] : []));
  const withRows = tables.filter((table) => table.rows.length > 0);
  if (withRows.length === 0) {
    const failed = readings.flatMap(({ reading }) => (reading.ok ? [] : [reading.item]));
    const empty = readings.length === 0 ? [at(FILE_EMPTY, { path: file }, file, 1)] : [];
    return { tables, unreadable: tables.length > 0 ? [] : [...failed.slice(0, 1), ...empty], items, unknown };
  }
  // Beside a list a workbook may hold notes; a sheet that is too long for a list is none of these.
  const unreadable: OpenItem[] = [];
  for (const { name, reading, first } of readings) {
    if (reading.ok && reading.table.rows.length > 0) continue;
    if (!reading.ok && reading.item.code !== NO_HEADING.code) unreadable.push(reading.item);
    else {
      const why = reading.ok ? 'no-rows' : 'no-heading';
      items.push(at(SHEET_NOT_A_TABLE, { sheet: name, why, first }, `${file}!${name}`, 1));
    }
  }
  return { tables: withRows, unreadable, items, unknown: [] };
}

/** What sheets are called in messages and, where they have no job column, as jobs: each by a name of its own. */
function sheetNames(sheets: readonly SheetCells[]): string[] {
  const taken = new Set<string>();
  return sheets.map(({ name }, i) => {
    const shown = visible(name.trim()) || `Sheet ${i + 1}`;
    let told = shown;
    for (let n = 2; taken.has(told); n += 1) told = `${shown} (${n})`;
    taken.add(told);
    return told;
  });
}
