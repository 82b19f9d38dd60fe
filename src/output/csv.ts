import { stringify } from 'csv-stringify/sync';
import { hundredths } from '../model/rounding.js';

/** A cell: a number is written as one; null is an empty cell. */
export type Cell = string | number | null;

// A spreadsheet cuts what is longer, and then takes the rest for further cells.
const LONGEST = 32_000;

/** What a spreadsheet takes for the start of a formula, as typed on a narrow or a wide keyboard. */
const FORMULA_START = /^[=+\-@|%\uff1d\uff0b\uff0d\uff20]/;
/**
 * What a spreadsheet passes over before it looks for one: blanks, control and format characters; and quotes, which stand
 * doubled in the file, so that where another dialect begins a cell they open and close at once.
 */
const PASSED_OVER = /^[\s\p{Cc}\p{Cf}\p{Z}"]+/u;
/** A plain number, or the dash that stands for standard input: neither can run. */
const HARMLESS = /^-?(?:\d+(?:\.\d+)?)?$/;
const NUMBER = /^ ?-?\d+(?:\.\d+)?$/;
/** Where a spreadsheet of another dialect begins a new cell, quotes or no quotes; a tab is never written. */
const SEPARATORS = /[;|]/g;

/**
 * Writes a table as RFC 4180 says: a heading, CRLF, quotes where they are needed. No cell runs as a formula where the
 * file is opened in a spreadsheet, and every record stands on one line.
 * @param headings the heading line, written as it is
 * @param rows one array a record, as long as the headings
 */
export function csvText(headings: readonly string[], rows: Iterable<readonly Cell[]>): string {
  return csvRecords([headings, ...rows]);
}

/**
 * Records of a table that is written piece by piece; the first piece begins with the headings.
 * @param rows one array a record
 */
export function csvRecords(rows: Iterable<readonly Cell[]>): string {
  return stringify(Array.from(rows, record), { record_delimiter: '\r\n' });
}

/** Where another dialect separates, the first cell goes on into the next: even a number can be the start of a formula there. */
function record(cells: readonly Cell[]): string[] {
  return cells.map((cell, i) =>
    i === 0 && typeof cell === 'string' && cell.startsWith('-') && HARMLESS.test(cell)
      ? `'${cell}`
      : safeCell(cell),
  );
}

/**
 * A cell as it is written: text that could run as a formula, here or where a reader separates at `;`, `|` or a tab, gets
 * an apostrophe before it; a line break or tab becomes a blank, other control characters show as `[U+0000]`.
 * @param cell a number stays one (rounded to 0.01)
 */
export function safeCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(hundredths(cell)) : '';
  if (HARMLESS.test(cell)) return cell;
  const shown = guarded(cell)
    .replace(/[\t\r\n]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, codeOf);
  return shown.length > LONGEST ? `${shown.slice(0, LONGEST)} [cut: ${shown.length} characters]` : shown;
}

/** A text with an apostrophe at its start, and behind each separator, where what follows could run. */
function guarded(text: string): string {
  // Most cells have none, and a report has many cells.
  if (text.search(SEPARATORS) < 0) return apostrophe(text) + text;
  const starts = [0, ...Array.from(text.matchAll(SEPARATORS), ({ index }) => index + 1)];
  return starts
    .map((start, i) => {
      const next = starts[i + 1];
      const piece = text.slice(start, next);
      // A number between two separators is one cell there; the last piece goes on into the next cell.
      const isOne = next !== undefined && text[start - 1] === text[next - 1];
      return isOne && NUMBER.test(piece.slice(0, -1)) ? piece : apostrophe(piece) + piece;
    })
    .join('');
}

/** What stands before a text that could run as a formula. */
function apostrophe(text: string): string {
  return FORMULA_START.test(text.replace(PASSED_OVER, '')) ? "'" : '';
}

const codeOf = (character: string): string =>
  `[U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;
