import {
  CELLS_MERGED,
  COLUMNS_HIDDEN,
  COUNT_MERGED,
  DATE_IN_NAME,
  ROWS_HIDDEN,
  SHEET_NOT_A_TABLE,
  SHEETS_HIDDEN,
  WORKBOOK_BINARY,
  WORKBOOK_BROKEN,
  WORKBOOK_ENCRYPTED,
  WORKBOOK_TOO_LARGE,
} from '../../model/messages/workbook.js';
import { says } from '../message-kit.js';

function size(what: string, millions: number): string {
  if (what === 'unpacked') return `${millions} MB when it is unpacked`;
  if (what === 'cells') return `${millions} million cells`;
  return what === 'characters' ? `${millions} million characters in its cells` : `${millions} MB`;
}

/** The first of several, and how many more there are. */
function firstOf(all: readonly (string | number)[], most: number): string {
  const more = all.length > most ? ` and ${all.length - most} more` : '';
  return `${all.slice(0, most).join(', ')}${more}`;
}

const rows = (lines: readonly number[]): string =>
  `${lines.length === 1 ? 'row' : 'rows'} ${firstOf(lines, 8)}`;

/** Words of the messages of model/messages/workbook.ts. */
export const WORKBOOK_WORDS = [
  says(WORKBOOK_BROKEN, {
    title: 'A workbook is damaged',
    message: ({ path }) => `${path} can’t be read as a workbook: it is damaged, or is no workbook at all.`,
    expected: 'a workbook in .xlsx, .xlsm or .ods',
    hint: 'Open it in a spreadsheet program and save it anew as .xlsx or .ods.',
  }),
  says(WORKBOOK_ENCRYPTED, {
    title: 'A workbook asks for a password',
    message: ({ path }) => `${path} can’t be read: it opens with a password only.`,
    expected: 'a workbook that opens without a password',
    hint: 'Save it without a password.',
  }),
  says(WORKBOOK_BINARY, {
    title: 'A workbook is in a binary form',
    message: ({ path }) => `${path} can’t be read: it is a workbook in a binary form.`,
    expected: 'a workbook in .xlsx, .xlsm or .ods',
    hint: 'Save it as .xlsx, .ods or CSV.',
  }),
  says(WORKBOOK_TOO_LARGE, {
    title: 'A workbook is too large to be a list',
    message: ({ path, what, millions }) => `${path} holds more than ${size(what, millions)}: it isn’t read.`,
    expected: ({ what, millions }) => `a workbook of at most ${size(what, millions)}`,
    hint: 'Check that it is a list; give a large batch as several files.',
  }),
  says(SHEETS_HIDDEN, {
    title: 'Hidden sheets of a workbook are not read',
    message: ({ sheets }) =>
      `${sheets.length === 1 ? 'A hidden sheet is' : `${sheets.length} hidden sheets are`} not read: ${firstOf(sheets, 8)}.`,
    found: ({ sheets }) => firstOf(sheets, 8),
    expected: 'sheets that are shown',
    hint: 'Show the sheet in the workbook if it is a list; else nothing needs doing.',
  }),
  says(SHEET_NOT_A_TABLE, {
    title: 'A sheet beside those that were read holds no list',
    message: ({ sheet, why }) =>
      why === 'no-rows'
        ? `The sheet ${sheet} has a heading and no rows: nothing of it is read.`
        : `The sheet ${sheet} has no heading line that is understood: nothing of it is read.`,
    found: ({ first }) => first,
    expected: 'a heading line, such as job, tag, kind, connects_to, and rows under it',
    hint: 'If it is a list, correct its headings, or state them in a column map; notes may stay.',
  }),
  says(ROWS_HIDDEN, {
    title: 'Hidden rows of a sheet are not read',
    message: ({ lines }) =>
      `${lines.length === 1 ? 'A hidden row is' : `${lines.length} hidden rows are`} not read: ${rows(lines)}.`,
    found: ({ lines }) => `hidden: ${rows(lines)}`,
    expected: 'rows that are shown',
    hint: 'Take filters off and show the rows if they are equipment of the job; else nothing needs doing.',
  }),
  says(COLUMNS_HIDDEN, {
    title: 'Hidden columns of a sheet are not read',
    message: ({ columns }) =>
      `${columns.length === 1 ? 'A hidden column is' : `${columns.length} hidden columns are`} not read: ${firstOf(columns, 8)}.`,
    found: ({ columns }) => firstOf(columns, 8),
    expected: 'columns that are shown',
    hint: 'Show the column in the workbook if it belongs to the list; else nothing needs doing.',
  }),
  says(CELLS_MERGED, {
    title: 'A merged cell was taken for each row that it spans',
    message: ({ column, lines }) =>
      `Merged cells under ${column} were taken for each row that they span: ${rows(lines)}.`,
    found: ({ found }) => found,
    expected: 'one cell a row',
    hint: 'If it is true of the first row only, split the cell in the workbook.',
  }),
  says(COUNT_MERGED, {
    title: 'A count stands in a merged cell that spans several rows',
    message: ({ column, lines }) =>
      `A merged cell under ${column} spans several rows (${rows(lines)}): whether it counts all of them together or each isn’t known.`,
    found: ({ found }) => found,
    expected: 'one cell a row',
    hint: 'Split the cell in the workbook, and type the count of each row.',
  }),
  says(DATE_IN_NAME, {
    title: 'A name is stored as a date',
    message: ({ column, lines }) =>
      `Cells under ${column} are stored as dates (${rows(lines)}): a spreadsheet made dates of what was typed.`,
    found: ({ found }) => found,
    expected: 'text',
    hint: 'Format the column as text in the workbook, and type the names again.',
  }),
];
