import { MOST_OF, WorkbookFault } from './fault.js';

/** A cell that spans rows, with what it holds. */
export interface MergedRows {
  readonly line: number;
  readonly lastLine: number;
  /** Index of its first column. */
  readonly column: number;
  readonly text: string;
}

/** A column that isn't shown, and the first text in it. */
export interface HiddenColumn {
  readonly letters: string;
  readonly text: string;
}

/** A sheet as it is stored: its rows that say something, with cells as text. */
export interface SheetCells {
  readonly name: string;
  readonly hidden: boolean;
  readonly cells: string[][];
  /** Row of each, first row 1. */
  readonly lines: number[];
  /** Rows that aren't shown and say something. */
  readonly hiddenRows: readonly number[];
  readonly hiddenColumns: readonly HiddenColumn[];
  readonly merged: readonly MergedRows[];
  /** By index of the column: rows whose cell is a date. */
  readonly dates: ReadonlyMap<number, readonly number[]>;
}

/** What all sheets of a workbook may hold together. */
export interface Allowance {
  cells: number;
  characters: number;
}

export const wholeAllowance = (): Allowance => ({ cells: MOST_OF.cells, characters: MOST_OF.characters });

/** What is known of a range of merged cells; indices of columns. */
export interface Merge {
  readonly line: number;
  readonly lastLine: number;
  readonly column: number;
  readonly lastColumn: number;
}

/** A cell as its format stores it, made into text. */
export interface StoredCell {
  readonly text: string;
  readonly isDate: boolean;
}

export const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;

/** Letters of a column. */
export function columnLetters(index: number): string {
  let letters = '';
  for (let n = index + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return letters;
}

/** Puts a sheet together, cell by cell, rows from the top down; refuses what is beyond the allowance before it is held. */
export class SheetInHand {
  readonly #cells: string[][] = [];
  readonly #lines: number[] = [];
  readonly #hiddenRows: number[] = [];
  readonly #hiddenColumns = new Map<number, string>();
  readonly #dates = new Map<number, number[]>();
  readonly #merges: Merge[] = [];
  readonly #isHiddenColumn = new Set<number>();

  constructor(
    readonly name: string,
    readonly hidden: boolean,
    private readonly left: Allowance,
  ) {}

  hideColumns(first: number, last: number): void {
    for (let i = first; i <= Math.min(last, LAST_COLUMN - 1); i += 1) this.#isHiddenColumn.add(i);
  }

  /**
   * Takes a row, and so many more that are as it is.
   * @param line its number, above all before it
   * @param row its cells by index of the column
   */
  takeRow(line: number, repeated: number, row: ReadonlyMap<number, StoredCell>, isHidden: boolean): void {
    const filled = [...row].filter(([, { text }]) => text.trim() !== '');
    if (filled.length === 0) return;
    if (line <= (this.#lines.at(-1) ?? 0) || line + repeated - 1 > LAST_ROW)
      throw new WorkbookFault('broken');
    // Blank cells between others are held too.
    const width = filled.reduce((most, [column]) => Math.max(most, column + 1), 0);
    const characters = filled.reduce((sum, [, { text }]) => sum + text.length, 0);
    this.left.cells -= Math.max(width / 4, filled.length) * repeated;
    this.left.characters -= characters * repeated;
    if (this.left.cells < 0) throw new WorkbookFault('cells');
    if (this.left.characters < 0) throw new WorkbookFault('characters');
    for (let i = 0; i < repeated; i += 1) this.#takeOne(line + i, filled, isHidden);
  }

  #takeOne(line: number, filled: readonly (readonly [number, StoredCell])[], isHidden: boolean): void {
    if (isHidden) {
      this.#hiddenRows.push(line);
      return;
    }
    const record: string[] = [];
    for (const [column, { text, isDate }] of filled) {
      if (this.#isHiddenColumn.has(column)) {
        if (!this.#hiddenColumns.has(column)) this.#hiddenColumns.set(column, text);
        continue;
      }
      while (record.length < column) record.push('');
      record[column] = text;
      if (isDate) this.#dates.set(column, [...(this.#dates.get(column)?.slice(0, 20) ?? []), line]);
    }
    if (record.length === 0) return;
    this.#cells.push(record);
    this.#lines.push(line);
  }

  merge(merge: Merge): void {
    this.#merges.push(merge);
    this.left.cells -= 1;
    if (this.left.cells < 0) throw new WorkbookFault('cells');
  }

  /** The sheet, without what stands under merged cells and isn't shown. */
  done(): SheetCells {
    const cells = this.#cells;
    const lines = this.#lines;
    const merged: MergedRows[] = [];
    for (const { line, lastLine, column, lastColumn } of this.#merges) {
      const first = firstAt(lines, line);
      const text = lines[first] === line ? (cells[first]?.[column] ?? '') : '';
      for (let r = first; r < lines.length && (lines[r] ?? 0) <= lastLine; r += 1) {
        const record = cells[r] ?? [];
        const last = Math.min(lastColumn, record.length - 1);
        this.left.cells -= 1 + Math.max(0, last - column) / 4;
        if (this.left.cells < 0) throw new WorkbookFault('cells');
        for (let c = column; c <= last; c += 1) if (c !== column || lines[r] !== line) record[c] = '';
      }
      if (lastLine > line && text.trim() !== '') merged.push({ line, lastLine, column, text });
    }
    return {
      name: this.name,
      hidden: this.hidden,
      cells,
      lines,
      hiddenRows: this.#hiddenRows,
      hiddenColumns: [...this.#hiddenColumns]
        .sort(([a], [b]) => a - b)
        .map(([index, text]) => ({ letters: columnLetters(index), text })),
      merged,
      dates: this.#dates,
    };
  }
}

/** Index of the first line at or behind one. */
export function firstAt(lines: readonly number[], line: number): number {
  let from = 0;
  let to = lines.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((lines[middle] ?? 0) < line) from = middle + 1;
    else to = middle;
  }
  return from;
}
