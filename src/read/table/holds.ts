import type { Holds } from '../../model/item-causes.js';

/** A cell that holds a figure, with its unit or currency. */
const FIGURE = /^[^\p{L}\d]*\d[\d.,' ]*\s*[\p{L}°%/$€£²"']{0,8}$/u;
/** So many records are looked at. */
const MOST_LOOKED = 1000;
/** So large a share of figures makes a column one of figures: totals and notes stand in some as well. */
const SHARE = 0.75;

/**
 * What the cells of a column hold.
 * @param records of the file
 * @param first index of the first record under the heading; -1: there is none
 * @param column index of the column
 */
export function holdsOf(records: readonly (readonly string[])[], first: number, column: number): Holds {
  if (first < 0) return 'nothing';
  let filled = 0;
  let figures = 0;
  for (const record of records.slice(first, first + MOST_LOOKED)) {
    const cell = record[column]?.trim() ?? '';
    if (cell === '') continue;
    filled += 1;
    if (FIGURE.test(cell)) figures += 1;
  }
  if (filled === 0) return 'nothing';
  return figures >= SHARE * filled ? 'figures' : 'words';
}
