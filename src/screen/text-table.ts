import { UNSEEN } from '../words/visible.js';

/** Text for a terminal: nothing that a cell holds may steer it, and no cell may flood it. */

/** Longest piece of a cell or message that a screen shows, in characters. */
const LONGEST = 300;

const CONTROL_NAMES: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };

/**
 * Makes text safe to print on one line of a terminal.
 * @param text anything, e.g. a cell as typed
 * @param longest characters shown before it is cut, with the number of those left out
 * @returns one line; control characters and marks that reorder text stand as escapes such as `\u001b`
 */
export function printable(text: string, longest = LONGEST): string {
  const cut = text.length > longest ? text.slice(0, longest) : text;
  const safe = cut.replaceAll(
    UNSEEN,
    (c) => CONTROL_NAMES[c] ?? `\\u${(c.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`,
  );
  const left = text.length - longest;
  return cut === text ? safe : `${safe}… (${String(left)} more character${left === 1 ? '' : 's'})`;
}

/** A column of a table on the screen. */
export interface Column {
  readonly heading: string;
  readonly align?: 'left' | 'right';
}

/**
 * Sets rows as a table of plain text, columns two blanks apart, a line under the headings.
 * @param columns the headings, with their alignment
 * @param rows one cell a column; each is made safe and cut
 * @param longest characters of a cell before it is cut
 * @returns lines, each ended by a line feed
 */
export function textTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  longest = 60,
): string {
  const safe = rows.map((row) => columns.map((_, i) => printable(row[i] ?? '', longest)));
  const widths = columns.map((c, i) =>
    Math.max(c.heading.length, ...safe.map((row) => (row[i] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map((c, i) => {
        const cell = cells[i] ?? '';
        return c.align === 'right' ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0);
      })
      .join('  ')
      .trimEnd();
  return [line(columns.map((c) => c.heading)), line(widths.map((w) => '-'.repeat(w))), ...safe.map(line)]
    .map((l) => `${l}\n`)
    .join('');
}

/**
 * A number with its noun: `1 job`, `3 jobs`.
 * @param count how many
 * @param one the noun for one
 * @param many the noun for any other number; by default with an s
 */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${String(count)} ${count === 1 ? one : many}`;
}
