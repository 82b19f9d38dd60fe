import type { HeadingIndex } from './headings.js';
import { readHeading } from './headings.js';
import { checkQuotes } from '../file/quotes.js';
import { readRecords, type Records } from '../file/records.js';

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

/** Records of the beginning of a text, parted by one delimiter. */
function recordsBy(text: string, delimiter: Delimiter, line: number): Records {
  const head = text.length > SEARCHED_TEXT ? text.slice(0, SEARCHED_TEXT) : text;
  const most = Math.max(line, SEARCHED_RECORDS);
  return readRecords(checkQuotes(head, delimiter, 0).text, delimiter, most);
}

const isBlank = (record: readonly string[]): boolean => record.every((cell) => cell.trim() === '');

/**
 * How well a delimiter parts a file whose heading stands at `from`: the share of records from there on that have as many cells, and that
 * number; 0 where the heading is one cell.
 */
function fit(cells: Records['cells'], from: number): { readonly share: number; readonly cells: number } {
  const columns = cells[from]?.length ?? 0;
  const rows = cells.slice(from, from + SEARCHED_RECORDS).filter((record) => !isBlank(record));
  const alike = rows.filter((record) => record.length === columns).length;
  return { share: columns < 2 ? 0 : alike / rows.length, cells: columns };
}

/** A place with what decides between two delimiters under which as many of its headings are understood. */
interface Fitted {
  readonly place: TextHeading;
  readonly fit: ReturnType<typeof fit>;
}

function isBetter(one: Fitted, best: Fitted | null): boolean {
  if (best === null) return true;
  if (one.place.known !== best.place.known) return one.place.known > best.place.known;
  if (one.place.delimiter === best.place.delimiter) return false;
  return one.fit.share === best.fit.share ? one.fit.cells > best.fit.cells : one.fit.share > best.fit.share;
}

/**
 * Finds the heading line and the delimiter together: the line and the delimiter that make the most headings understood; of two that make
 * as many, the delimiter that parts the rows as it parts the heading.
 * @param text with `\n` line ends
 * @param index what headings may mean
 * @param delimiters those to try
 * @param line the heading's line where it is stated (none of its headings need be understood then); 0: search
 * @returns null where no line holds a heading that is understood
 */
export function findHeading<F extends string>(
  text: string,
  index: HeadingIndex<F>,
  delimiters: readonly Delimiter[],
  line = 0,
): TextHeading | null {
  let best: Fitted | null = null;
  for (const delimiter of delimiters) {
    if (best !== null && !text.slice(0, SEARCHED_TEXT).includes(delimiter)) continue;
    const { cells, lines } = recordsBy(text, delimiter, line);
    let first = true;
    for (const [i, record] of cells.entries()) {
      if (isBlank(record)) continue;
      const known = knownIn(record, index);
      const place = { delimiter, line: lines[i] ?? 0, cells: record, known: known.length };
      const alone = first && known.length === 1 && index.vocabulary.identity.some((f) => known.includes(f));
      const enough = line > 0 ? place.line === line : place.known >= 2 || alone;
      first = false;
      if (!enough || (best !== null && place.known < best.place.known)) continue;
      const one = { place, fit: fit(cells, i) };
      if (isBetter(one, best)) best = one;
    }
  }
  return best?.place ?? null;
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

/** A cell of a row rather than of a heading. */
const FIGURE = /^[^\p{L}]*\d[^\p{L}]*\p{L}{0,3}$/u;

/**
 * The likeliest heading of a file of which no heading is understood, so that a column map can be begun: under the delimiter that parts most
 * records into as many cells, the first record of that many whose cells all say something and are no figures.
 * @param text with `\n` line ends
 * @param delimiters those to try
 * @returns null where no delimiter parts the file
 */
export function likelyHeading(text: string, delimiters: readonly Delimiter[]): TextHeading | null {
  let best: Fitted | null = null;
  for (const delimiter of delimiters) {
    const { cells, lines } = recordsBy(text, delimiter, 0);
    const counts = new Map<number, number>();
    for (const record of cells)
      if (record.length > 1 && !isBlank(record))
        counts.set(record.length, (counts.get(record.length) ?? 0) + 1);
    const [columns] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [];
    if (columns === undefined) continue;
    const alike = (record: readonly string[]): boolean => record.length === columns && !isBlank(record);
    const isHeading = (record: readonly string[]): boolean =>
      alike(record) && record.every((cell) => cell.trim() !== '' && !FIGURE.test(cell.trim()));
    const words = cells.findIndex(isHeading);
    const at = words < 0 ? cells.findIndex(alike) : words;
    const place = { delimiter, line: lines[at] ?? 0, cells: cells[at] ?? [], known: 0 };
    // Titles above it count too: what parts a row by chance leaves the heading whole.
    const one = { place, fit: fit([place.cells, ...cells], 0) };
    if (isBetter(one, best)) best = one;
  }
  return best?.place ?? null;
}

/** The least share of the fullest record that a heading fills. */
const FILLED = 0.8;

/**
 * The likeliest heading among records of which none is understood, so that a column map can be begun: the first that fills nearly as many
 * cells as any, none of them with a figure.
 * @param cells of the records; only the first are searched
 * @param lines first line of each
 * @returns null where there is none
 */
export function likelyAmong(
  cells: readonly (readonly string[])[],
  lines: readonly number[],
): HeadingPlace | null {
  const filled = cells
    .slice(0, SEARCHED_RECORDS)
    .map((record) => record.map((cell) => cell.trim()).filter((cell) => cell !== ''));
  const most = Math.max(0, ...filled.map((record) => record.length));
  const at = filled.findIndex(
    (record) =>
      record.length >= 2 && record.length >= FILLED * most && !record.some((cell) => FIGURE.test(cell)),
  );
  const record = cells[at];
  return record === undefined ? null : { line: lines[at] ?? 0, cells: record, known: 0 };
}

/** True where each record above one has less than half as many filled cells: titles of a list, not rows of it. */
export function isBelowTitles(cells: readonly (readonly string[])[], at: number): boolean {
  const filled = (record: readonly string[] = []): number =>
    record.filter((cell) => cell.trim() !== '').length;
  return cells.slice(0, at).every((record) => filled(record) * 2 < filled(cells[at]));
}

function knownIn<F extends string>(record: readonly string[], index: HeadingIndex<F>): F[] {
  const fields = new Set<F>();
  for (const cell of record) {
    const { field } = readHeading(index, cell);
    if (field !== null) fields.add(field);
  }
  return [...fields];
}
