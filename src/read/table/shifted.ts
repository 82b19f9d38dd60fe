import { visible } from '../../words/visible.js';
import type { Column } from './columns.js';

/** A row whose cells may stand under the wrong headings, and what shows it. */
export type Suspect =
  | { readonly row: number; readonly by: 'surplus' | 'short'; readonly cells: number }
  | { readonly row: number; readonly by: 'quote'; readonly heading: string; readonly text: string };

/** What the rows are held against. */
export interface Expected {
  readonly headings: readonly string[];
  /** A heading isn't understood: two headings that lost what separates them are one that nobody knows. */
  readonly unknownHeading: boolean;
}

const isBlank = (cell: string | undefined): boolean => cell === undefined || cell.trim() === '';

/** One row in so many may be shorter than the heading where that is the manner of a file; a row or two by themselves are faults. */
const SHARE_OF_A_MANNER = 4;

/**
 * Rows with fewer or more cells than the heading. A file that leaves out blank cells at the ends of its rows, or puts a delimiter behind
 * each, is read as it is meant; a row that is odd among others has lost a delimiter or has one too many, and nobody can say which.
 * @param rows the records under the heading
 * @param expected the heading
 */
export function oddRows(rows: readonly (readonly string[])[], expected: Expected): readonly Suspect[] {
  const { headings } = expected;
  const full = headings.length;
  if (rows.every((row) => row.length === full)) return [];
  const named = headings.findLastIndex((heading) => heading.trim() !== '') + 1;
  const odd = rows.map((row, at) => ({ row, at })).filter(({ row }) => row.length !== full);
  const long = odd.filter(({ row }) => row.length > full);
  const filled = long.filter(({ row }) => row.slice(full).some((cell) => !isBlank(cell)));
  const exact = rows.length - odd.length;
  const manyLong = long.length > 1 && long.length * 2 >= rows.length;
  const longIsManner = exact === 0 ? !expected.unknownHeading : manyLong;
  const surplus = longIsManner ? filled : long;
  const short = odd.filter(({ row }) => row.length < named);
  return [
    ...surplus.map(({ row, at }): Suspect => ({ row: at, by: 'surplus', cells: row.length })),
    ...(shortIsManner(rows, short, expected, named, exact)
      ? []
      : short.map(({ row, at }): Suspect => ({ row: at, by: 'short', cells: row.length }))),
  ].sort((a, b) => a.row - b.row);
}

/** Whether the file leaves out the blank cells at the ends of its rows. */
function shortIsManner(
  rows: readonly (readonly string[])[],
  short: readonly { readonly row: readonly string[] }[],
  { headings }: Expected,
  named: number,
  exact: number,
): boolean {
  // A blank heading among the others came of a delimiter too many; under it every row is one short.
  if (exact === 0) return !headings.slice(0, named).some((heading) => heading.trim() === '');
  if (short.length < 2 || short.length * SHARE_OF_A_MANNER < rows.length) return false;
  return rows.every((row) => row.length > named || !isBlank(row.at(-1)));
}

/** Fields by whose cells rows find each other and the library, and places are compared: a mark too many in one is another name. */
const NAMES = new Set(['job', 'tag', 'kind', 'maker', 'model', 'connects_to', 'place', 'building']);

/** Feet and inches: the mark of inches is meant. */
const FEET_AND_INCHES = /\d\s*['\u2032\u2019]/;

/**
 * Rows with a quotation mark inside a cell that has none around it, where that cell names something, or is a length that the mark makes one
 * in inches; also rows where the mark stands in no cell any more.
 * @param rows the records under the heading
 * @param lines the first line of each
 * @param stray lines with such a mark
 * @param columns those understood
 */
export function quotedRows(
  rows: readonly (readonly string[])[],
  lines: readonly number[],
  stray: readonly number[],
  columns: readonly Column<string>[],
): readonly Suspect[] {
  if (stray.length === 0) return [];
  const marked = new Set(stray);
  const found: Suspect[] = [];
  for (const [r, row] of rows.entries()) {
    const first = lines[r] ?? 0;
    const last = first + row.reduce((n, cell) => n + cell.split('\n').length - 1, 0);
    let inRow = false;
    for (let line = first; line <= last && !inRow; line += 1) inRow = marked.has(line);
    if (!inRow) continue;
    const column = columns.find((c) => isDamaged(c, row[c.index] ?? ''));
    if (column !== undefined)
      found.push({ row: r, by: 'quote', heading: column.heading, text: visible(row[column.index] ?? '') });
    else if (!row.some((cell) => cell.includes('"')))
      found.push({ row: r, by: 'quote', heading: '', text: '' });
  }
  return found;
}

function isDamaged({ field, dimension }: Column<string>, cell: string): boolean {
  if (!cell.includes('"')) return false;
  return NAMES.has(field) || (dimension === 'length' && !FEET_AND_INCHES.test(cell));
}
