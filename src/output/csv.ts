import { stringify } from 'csv-stringify/sync';
import { hundredths } from '../model/rounding.js';

/** A cell: a number is written as one; null is an empty cell. */
export type Cell = string | number | null;

// A spreadsheet cuts what is longer, and then takes the rest for further cells.
const LONGEST = 32_000;

/** What a spreadsheet takes for the start of a formula, as typed on a narrow or a wide keyboard. */
const FORMULA_START = /^[=+\-@|%\uff1d\uff0b\uff0d\uff20]/;
/** What a spreadsheet passes over before it looks for one: blanks, control and format characters. */
const PASSED_OVER = /^[\s\p{Cc}\p{Cf}\p{Z}]+/u;
/** A plain number, or the dash that stands for standard input: neither can run. */
const HARMLESS = /^-?(?:\d+(?:\.\d+)?)?$/;

/**
 * Writes a table as RFC 4180 says: a heading, CRLF, quotes where they are needed. No cell runs as a formula where the
 * file is opened in a spreadsheet, and every record stands on one line.
 * @param headings the heading line, written as it is
 * @param rows one array a record, as long as the headings
 */
export function csvText(headings: readonly string[], rows: Iterable<readonly Cell[]>): string {
  const records = Array.from(rows, (row) => row.map(safeCell));
  return stringify([headings.map(safeCell), ...records], { record_delimiter: '\r\n' });
}

/**
 * A cell as it is written: text that could run as a formula gets an apostrophe before it, a line break or tab becomes
 * a blank, other control characters show as `[U+0000]`.
 * @param cell a number stays one (rounded to 0.01)
 */
export function safeCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(hundredths(cell)) : '';
  if (HARMLESS.test(cell)) return cell;
  // A spreadsheet that separates cells by semicolons begins a new one behind each, quotes or no quotes.
  const [first = '', ...further] = cell.split(';');
  const parts = [
    first,
    ...further.map((part) => (HARMLESS.test(part.replace(/^ /, '')) ? part : apostrophe(part) + part)),
  ];
  const guarded = apostrophe(cell) + parts.join(';');
  const shown = guarded.replace(/[\t\r\n]+/g, ' ').replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, codeOf);
  return shown.length > LONGEST ? `${shown.slice(0, LONGEST)} [cut: ${shown.length} characters]` : shown;
}

/** What stands before a text that could run as a formula. */
function apostrophe(text: string): string {
  return FORMULA_START.test(text.replace(PASSED_OVER, '')) ? "'" : '';
}

const codeOf = (character: string): string =>
  `[U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;
