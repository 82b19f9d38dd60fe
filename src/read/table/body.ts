import { visible } from '../../words/visible.js';
import type { Column } from './columns.js';

/** A record that is no row: a title above the heading, a total, a note. */
export interface LeftOut {
  readonly line: number;
  readonly text: string;
  /** A cell of it is a figure: something may be lost with it. */
  readonly figures: boolean;
  /** Index of the row that follows. */
  readonly row: number;
}

/** A note that stands alone in one column, right above a row: in the job column it may be the job of the rows under it. */
export interface Aside {
  readonly line: number;
  readonly text: string;
  readonly column: number;
  /** Index of the row that follows. */
  readonly row: number;
}

/** The rows of a table, and what was found among them. */
export interface Body {
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  readonly leftOut: readonly LeftOut[];
  readonly asides: readonly Aside[];
  /** Another heading among the rows, which stands for other columns: it and what is under it aren't read. */
  readonly otherHeading: Pick<LeftOut, 'line' | 'text'> | null;
  /** Columns without a heading that hold something, with the first line. */
  readonly withoutHeading: ReadonlyMap<number, number>;
}

const TOTAL_OR_NOTE =
  /^(?:grand\s+|sub-?\s*)?totals?\b|^sum\b|^(?:foot)?notes?\b|^remarks?\b|^end of\b|^legend\b|^prepared by\b|^printed\b|^page \d/i;
/**
 * A name of one word is a tag or a model, unless it is one of those above: no need to look at the rest of its row. Asked by what parts
 * words: an expression for the whole word keeps a place to go back to for each character, and runs out of them in a cell of megabytes.
 */
const isOneWord = (name: string): boolean => name !== '' && !/\s/.test(name);
/** A cell longer than this is looked at as a cell, not taken for a note. */
const LONGEST_NOTE = 400;
/** A heading begins with a letter and holds letters before all else. */
const HEADING_WORD = /^[\s"]*\p{L}[\p{L}\s._-]{1,39}$/u;
/** A cell that is a figure, with its unit or currency. */
const FIGURE = /^[^\p{L}\d]*\d[\d.,' ]*\s*\p{L}{0,3}$/u;
/** Words of a sentence that stands alone in its row. */
const SENTENCE_WORDS = 4;

const isBlank = (cell: string | undefined): boolean =>
  cell === undefined || cell === '' || cell.trim() === '';

function blankRecord(record: readonly string[]): boolean {
  for (const cell of record) if (!isBlank(cell)) return false;
  return true;
}

function sameAsHeading(record: readonly string[], headings: readonly string[]): boolean {
  let same = 0;
  for (let i = 0; i < record.length; i += 1) {
    const cell = record[i]?.trim() ?? '';
    if (cell === '') continue;
    if (cell !== headings[i]?.trim()) return false;
    same += 1;
  }
  return same >= 2;
}

/**
 * Whether a record names no equipment: one sentence, a first cell such as `Total`, or figures alone.
 * `figures` is a total only where no row follows; elsewhere its names are lost, and it must be asked for them.
 */
function sortOf(
  record: readonly string[],
  identity: readonly number[],
  named: readonly number[],
): 'row' | 'note' | 'figures' {
  const first = record.find((cell) => !isBlank(cell))?.trim() ?? '';
  if (first.length > LONGEST_NOTE) return 'row';
  const filled = record.reduce((n, cell) => n + (isBlank(cell) ? 0 : 1), 0);
  const naming = identity.reduce((n, i) => n + (isBlank(record[i]) ? 0 : 1), 0);
  if (TOTAL_OR_NOTE.test(first)) return naming <= 1 ? 'note' : 'row';
  if (filled === 1 && first.split(/\s+/).length >= SENTENCE_WORDS) return 'note';
  return naming === 0 && named.every((i) => isBlank(record[i])) ? 'figures' : 'row';
}

/** What a cell means as a heading, its unit included; null where it is none. */
export type HeadingMeaning = (cell: string) => string | null;

/** Whether a record is a heading, of the same columns or of others; it is none where one of its cells is none. */
function headingAgain(
  record: readonly string[],
  headings: readonly string[],
  meaning: HeadingMeaning,
): 'same' | 'other' | null {
  // Most rows begin with a tag or a job that holds a figure or a hyphen: no need to look further.
  const first = record.find((cell) => !isBlank(cell)) ?? '';
  if (!HEADING_WORD.test(first)) return null;
  let filled = 0;
  let same = true;
  for (const [i, cell] of record.entries()) {
    if (isBlank(cell)) continue;
    const means = meaning(cell);
    if (means === null) return null;
    filled += 1;
    same &&= means === meaning(headings[i] ?? '');
  }
  return filled < 2 ? null : same ? 'same' : 'other';
}

/** The records of a file, and which of them are the heading and the units. */
export interface Records {
  readonly records: readonly (readonly string[])[];
  /** First line of each. */
  readonly lines: readonly number[];
  readonly heading: number;
  /** Index of the first record that can be a title: behind a line that names the separator. */
  readonly firstTitle: number;
  /** -1: none. */
  readonly unitsRow: number;
}

/**
 * Takes the rows out of the records under the heading.
 * @param file the records of the file
 * @param headings the heading's cells
 * @param columns those understood
 * @param identity fields of which one stands in every row
 * @param meaning of a cell as a heading
 */
export function bodyOf(
  file: Records,
  headings: readonly string[],
  columns: readonly Column<string>[],
  identity: readonly string[],
  meaning: HeadingMeaning,
): Body {
  const { records, lines, heading, unitsRow, firstTitle } = file;
  const rows: (readonly string[])[] = [];
  const rowLines: number[] = [];
  const leftOut: LeftOut[] = [];
  const asides: Aside[] = [];
  const leave = (record: readonly string[], line: number, row: number): LeftOut => {
    const text = visible(record.filter((c) => !isBlank(c)).join(' '));
    const out = { line, text, figures: record.some((cell) => FIGURE.test(cell.trim())), row };
    leftOut.push(out);
    return out;
  };
  for (let i = firstTitle; i < heading; i += 1) {
    const record = records[i] ?? [];
    if (!blankRecord(record)) leave(record, lines[i] ?? 0, -1);
  }
  const withoutHeading = new Map<number, number>();
  const identityAt = columns.filter((c) => identity.includes(c.field)).map((c) => c.index);
  const key = identityAt[0] ?? -1;
  // Columns of text beside the identity: a row that states one of them (a job's facts) is no total.
  const namedAt = columns
    .filter((c) => c.dimension === null && !identityAt.includes(c.index))
    .map((c) => c.index);
  let otherHeading: Body['otherHeading'] = null;
  let last: number | null = null;
  const lastRow = (): number =>
    (last ??= records.findLastIndex(
      (record) => !blankRecord(record) && sortOf(record, identityAt, namedAt) === 'row',
    ));
  const headless = headings.flatMap((h, i) => (h.trim() === '' ? [i] : []));
  const firstHeading = headings[0] ?? '';
  for (let i = heading + 1; i < records.length; i += 1) {
    const record = records[i] ?? [];
    if (i === unitsRow) continue;
    const name = key < 0 ? '' : (record[key] ?? '');
    if (!isOneWord(name) || TOTAL_OR_NOTE.test(name) || record[0] === firstHeading) {
      if (blankRecord(record) || sameAsHeading(record, headings)) continue;
      const sort = sortOf(record, identityAt, namedAt);
      if (sort === 'note' || (sort === 'figures' && i > lastRow())) {
        const { line, text } = leave(record, lines[i] ?? 0, rows.length);
        const column = record.findIndex((c) => !isBlank(c));
        if (record.every((c, at) => at === column || isBlank(c)))
          asides.push({ line, text, column, row: rows.length });
        continue;
      }
    }
    const again = headingAgain(record, headings, meaning);
    if (again === 'same') continue;
    if (again === 'other') {
      otherHeading = { line: lines[i] ?? 0, text: visible(record.join(' ')) };
      break;
    }
    for (const column of headless) {
      if (!isBlank(record[column]) && !withoutHeading.has(column)) withoutHeading.set(column, lines[i] ?? 0);
    }
    rows.push(record);
    rowLines.push(lines[i] ?? 0);
  }
  return { rows, lines: rowLines, leftOut, asides, otherHeading, withoutHeading };
}
