import type { HeadingIndex } from './headings.js';
import { readHeading } from './headings.js';
import { checkQuotes } from '../file/quotes.js';
import { readRecords } from '../file/records.js';

export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Where the heading stands. */
export interface HeadingPlace {
  readonly line: number;
  readonly cells: readonly string[];
  /** Headings of it that were understood. */
  readonly known: number;
}

/** The heading of a text, and what separates its cells. */
export interface TextHeading extends HeadingPlace {
  readonly delimiter: Delimiter;
}

/** A heading stands among the first records of a file, and in the first half million characters. */
const SEARCHED_RECORDS = 60;
const SEARCHED_TEXT = 500_000;

/**
 * The `sep=;` line that a spreadsheet may put first.
 * @param text with `\n` line ends
 * @returns the delimiter that it names, or null
 */
export function separatorLine(text: string): Delimiter | null {
  const match = /^"?sep=(.)"?[^\S\n]*(?:\n|$)/i.exec(text.slice(0, 20));
  return DELIMITERS.find((d) => d === match?.[1]) ?? null;
}

/**
 * Finds the heading line and the delimiter together: the line and the delimiter that make the most headings understood.
 * @param text with `\n` line ends
 * @param index what headings may mean
 * @param delimiters those to try
 * @param line the heading's line where it is stated; 0: search
 * @returns null where no line holds a heading that is understood
 */
export function findHeading<F extends string>(
  text: string,
  index: HeadingIndex<F>,
  delimiters: readonly Delimiter[],
  line = 0,
): TextHeading | null {
  const head = text.length > SEARCHED_TEXT ? text.slice(0, SEARCHED_TEXT) : text;
  let best: TextHeading | null = null;
  for (const delimiter of delimiters) {
    if (!head.includes(delimiter) && best !== null) continue;
    const { cells, lines } = readRecords(
      checkQuotes(head, delimiter, 0).text,
      delimiter,
      line > 0 ? line : SEARCHED_RECORDS,
    );
    const found = headingAmong(cells, lines, index, line);
    if (found !== null && (best === null || found.known > best.known)) best = { ...found, delimiter };
  }
  return best;
}

/**
 * Finds the heading among records: the one of which the most headings are understood.
 * @param cells of the records; only the first are searched
 * @param lines first line of each
 * @param index what headings may mean
 * @param line the heading's line where it is stated; 0: search
 * @returns null where no record holds a heading that is understood
 */
export function headingAmong<F extends string>(
  cells: readonly (readonly string[])[],
  lines: readonly number[],
  index: HeadingIndex<F>,
  line = 0,
): HeadingPlace | null {
  let best: HeadingPlace | null = null;
  let first = true;
  for (let i = 0; i < cells.length && (line > 0 || i < SEARCHED_RECORDS); i += 1) {
    const record = cells[i] ?? [];
    if (record.every((cell) => cell.trim() === '')) continue;
    const at = lines[i] ?? 0;
    const alone = first;
    first = false;
    if (line > 0 && at !== line) continue;
    const known = knownIn(record, index);
    const named = alone && known.length === 1 && index.vocabulary.identity.some((f) => known.includes(f));
    const enough = line > 0 || known.length >= 2 || named;
    if (enough && (best === null || known.length > best.known))
      best = { line: at, cells: record, known: known.length };
  }
  return best;
}

function knownIn<F extends string>(record: readonly string[], index: HeadingIndex<F>): F[] {
  const fields = new Set<F>();
  for (const cell of record) {
    const { field } = readHeading(index, cell);
    if (field !== null) fields.add(field);
  }
  return [...fields];
}
