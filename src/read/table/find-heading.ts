import type { HeadingIndex } from './headings.js';
import { readHeading } from './headings.js';
import { checkQuotes } from '../file/quotes.js';
import { readRecords } from '../file/records.js';

export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Where the heading stands and what separates its cells. */
export interface HeadingPlace {
  readonly delimiter: Delimiter;
  readonly line: number;
  readonly cells: readonly string[];
  /** Headings of it that were understood. */
  readonly known: number;
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
): HeadingPlace | null {
  const head = text.length > SEARCHED_TEXT ? text.slice(0, SEARCHED_TEXT) : text;
  let best: HeadingPlace | null = null;
  for (const delimiter of delimiters) {
    if (!head.includes(delimiter) && best !== null) continue;
    const { cells, lines } = readRecords(
      checkQuotes(head, delimiter, 0).text,
      delimiter,
      line > 0 ? line : SEARCHED_RECORDS,
    );
    let first = true;
    for (const [i, record] of cells.entries()) {
      if (record.every((cell) => cell.trim() === '')) continue;
      const known = knownIn(record, index);
      const place = { delimiter, line: lines[i] ?? 0, cells: record, known: known.length };
      const alone = first && known.length === 1 && index.vocabulary.identity.some((f) => known.includes(f));
      const enough = line > 0 ? place.line === line : place.known >= 2 || alone;
      first = false;
      if (enough && (best === null || place.known > best.known)) best = place;
    }
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
