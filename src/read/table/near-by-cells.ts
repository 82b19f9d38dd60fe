import type { Field } from '../../model/list.js';
import { kindWord } from '../cell/kind-words.js';
import { wordKey } from '../cell/yes-no.js';

/** So many records are looked at. */
const MOST_LOOKED = 300;
/** The least share of the cells of a column that have to look like a field. */
const SHARE = 0.6;

/** An AC system as no other cell is written: two voltages, or a word beside one. */
const AC_SYSTEM = /^\d{3}(?:y)?\/\d{3}(?:-?v)?$/;

/**
 * The fields that columns look like by what their cells hold: words of kinds, AC systems, names that are each another, and names of those.
 * @param records of the file
 * @param first index of the first record under the heading; -1: there is none
 * @param unknown indices of the columns whose headings aren't understood
 * @param tags index of the column of tags, where it is known; -1: it isn't
 */
export function nearByCells(
  records: readonly (readonly string[])[],
  first: number,
  unknown: readonly number[],
  tags: number,
): ReadonlyMap<number, Field> {
  const near = new Map<number, Field>();
  if (first < 0) return near;
  const rows = records.slice(first, first + MOST_LOOKED).filter((r) => r.some((cell) => cell.trim() !== ''));
  const cellsOf = (column: number): readonly string[] =>
    rows.map((row) => row[column]?.trim() ?? '').filter((cell) => cell !== '');
  const columns = new Map(unknown.map((column) => [column, cellsOf(column)]));
  for (const [column, cells] of columns) {
    if (mostly(cells, (cell) => kindWord(cell) !== undefined)) near.set(column, 'kind');
    else if (mostly(cells, (cell) => AC_SYSTEM.test(wordKey(cell)))) near.set(column, 'ac_in');
  }
  const left = [...columns].filter(([column]) => !near.has(column));
  const namesIn =
    tags >= 0 ? [[tags, cellsOf(tags)] as const] : left.filter(([, cells]) => areNames(cells, rows.length));
  for (const [column, cells] of left) {
    const others = namesIn.filter(([other]) => other !== column);
    const of = others.find(([other, names]) => nameThose(cells, names) && !sameRows(rows, column, other));
    if (of === undefined) continue;
    near.set(column, 'connects_to');
    if (tags < 0) near.set(of[0], 'tag');
  }
  return near;
}

function mostly(cells: readonly string[], holds: (cell: string) => boolean): boolean {
  return cells.length >= 2 && cells.filter(holds).length >= SHARE * cells.length;
}

/** Names that are each another, one in nearly every row. */
function areNames(cells: readonly string[], rows: number): boolean {
  return cells.length >= 2 && cells.length >= SHARE * rows && new Set(cells).size === cells.length;
}

/** Whether the cells name rows by their names, with or without an input behind a slash. */
function nameThose(cells: readonly string[], names: readonly string[]): boolean {
  const known = new Set(names);
  const isName = (cell: string): boolean =>
    cell
      .split(';')
      .every((part) => known.has(part.trim()) || known.has(part.replace(/\s*\/[\d+\s]*$/, '').trim()));
  return new Set(cells).size > 1 && mostly(cells, isName);
}

/** A column that repeats the names row by row names no other rows. */
function sameRows(rows: readonly (readonly string[])[], one: number, other: number): boolean {
  return rows.filter((row) => row[one]?.trim() === row[other]?.trim()).length > rows.length / 2;
}
