import { message } from '../message.js';

/** Messages about workbooks: why one can't be read, and what of its sheets isn't. */

export const WORKBOOK_BROKEN = message<{ path: string }>('workbook/broken', 'conflict', 'office');

export const WORKBOOK_ENCRYPTED = message<{ path: string }>('workbook/encrypted', 'conflict', 'office');

/** Its parts are no XML. */
export const WORKBOOK_BINARY = message<{ path: string }>('workbook/binary', 'conflict', 'office');

/** Bytes are given in MB, cells and characters in millions. */
export const WORKBOOK_TOO_LARGE = message<{
  path: string;
  what: 'bytes' | 'unpacked' | 'cells' | 'characters';
  millions: number;
}>('workbook/too-large', 'conflict', 'office');

export const SHEETS_HIDDEN = message<{ sheets: readonly string[] }>(
  'workbook/sheets-hidden',
  'confirm',
  'office',
);

export const SHEET_NOT_A_TABLE = message<{ sheet: string; why: 'no-heading' | 'no-rows'; first: string }>(
  'workbook/sheet-not-a-table',
  'confirm',
  'office',
);

export const ROWS_HIDDEN = message<{ lines: readonly number[] }>('workbook/rows-hidden', 'confirm', 'office');

/** Each column by its letters, with its heading. */
export const COLUMNS_HIDDEN = message<{ columns: readonly string[] }>(
  'workbook/columns-hidden',
  'confirm',
  'office',
);

export const CELLS_MERGED = message<{ column: string; lines: readonly number[]; found: string }>(
  'workbook/cells-merged',
  'confirm',
  'office',
);

export const COUNT_MERGED = message<{ column: string; lines: readonly number[]; found: string }>(
  'workbook/count-merged',
  'conflict',
  'office',
);

export const DATE_IN_NAME = message<{ column: string; lines: readonly number[]; found: string }>(
  'workbook/date-in-name',
  'conflict',
  'office',
);
