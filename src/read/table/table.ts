import { LIMITS } from '../../model/limits.js';
import type { OpenItem } from '../../model/open-item.js';
import {
  FILE_EMPTY,
  FILE_NOT_TEXT,
  FILE_TOO_LARGE,
  FILE_TOO_MANY_ROWS,
} from '../../model/messages/list-file.js';
import { NO_HEADING } from '../../model/messages/list-heading.js';
import type { DecimalMark } from '../cell/numbers.js';
import { visible } from '../../words/visible.js';
import { bodyOf, type Aside, type Body, type LeftOut } from './body.js';
import { chooseColumns, type ChosenColumns, type Column, type ColumnReading } from './columns.js';
import { decimalMark } from './decimal-mark.js';
import { decoding, lineEnds, type Decoded, type Encoding } from '../file/decode.js';
import {
  decider,
  statedDialect,
  statesPlace,
  type Decided,
  type DecidedBy,
  type Dialect,
} from './dialect.js';
import {
  DELIMITERS,
  findHeading,
  isBelowTitles,
  likelyHeading,
  separatorLine,
  type Delimiter,
  type HeadingPlace,
} from './find-heading.js';
import { headingMeaning, type HeadingIndex } from './headings.js';
import type { WordReading } from './word-reading.js';
import { checkingQuotes, type QuoteFaults } from '../file/quotes.js';
import type { InSteps } from '../file/in-steps.js';
import { readingRecords, type Records } from '../file/records.js';
import { seeingText } from '../file/unseen.js';
import { at, sayHeading, sayLines, sayText, shiftedRows, type Faults } from './table-faults.js';

/** How a file was understood; `read` and `columns` show it. */
export interface Understood {
  readonly file: string;
  /** Null: a sheet of a workbook has none. */
  readonly encoding: Encoding | null;
  /** Null: a sheet of a workbook has none. */
  readonly delimiter: Delimiter | null;
  readonly decimal: DecimalMark;
  readonly headingLine: number;
  readonly decidedBy: Decided;
  /** Line of units under the heading; 0: none. */
  readonly unitsLine: number;
  readonly columns: readonly ColumnReading[];
  readonly rows: number;
  readonly leftOut: readonly LeftOut[];
  /** Words of the list that aren't understood, or are by the words of a column map or of the settings. */
  readonly words: readonly WordReading[];
}

/** A file as a table: understood columns, and the records that are rows. */
export interface Table<F extends string> {
  readonly file: string;
  /** The name of its sheet; null: it is a text. */
  readonly sheet: string | null;
  readonly columns: readonly Column<F>[];
  /** Fields whose headings can't be used, each with the item that says why (it is one of the grave). */
  readonly refused: ReadonlyMap<F, OpenItem>;
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  readonly mark: DecimalMark;
  readonly headingLine: number;
  /** Items of single rows, by index of the row; such a row is kept with its tag only. */
  readonly shifted: ReadonlyMap<number, OpenItem>;
  /** Records that are no rows and hold figures all the same. */
  readonly figuresLeftOut: readonly LeftOut[];
  /** Notes among the rows that stand alone in one column. */
  readonly asides: readonly Aside[];
  /** Cells of lines that a quote made unreadable. */
  readonly lostCells: readonly string[];
  /** Faults through which facts may be lost: they are every job's business. */
  readonly grave: readonly OpenItem[];
  /** What a person may want to look at. */
  readonly slight: readonly OpenItem[];
  readonly understood: Understood;
}

export type TableReading<F extends string> =
  | { readonly ok: true; readonly table: Table<F> }
  /** `understood`: of a file of which no heading is known, what a column map can be begun from. */
  | { readonly ok: false; readonly item: OpenItem; readonly understood?: Understood };

/** A list beyond this is none: bytes of a file, characters of a text. A string of the platform ends at about twice that. */
const LARGEST_FILE = 200e6;

/** Beyond so many records it is looked whether most of them are blank. */
export const MOST_RECORDS = 3 * LIMITS.fileRows;

/** A table's records and heading, before its columns are chosen. */
export interface Source {
  /** As messages name it. */
  readonly file: string;
  /** The name of its sheet; null: it is a text. */
  readonly sheet: string | null;
  readonly cells: readonly (readonly string[])[];
  /** First line of each. */
  readonly lines: readonly number[];
  readonly place: HeadingPlace;
  /** Index of the first record that can be a title: behind a line that names the separator. */
  readonly firstTitle: number;
  readonly written: Pick<Understood, 'encoding' | 'delimiter' | 'decidedBy'>;
  readonly mark: (rows: Table<string>['rows'], columns: readonly Column<string>[]) => DecimalMark;
  /** Puts right what can be once the columns are known, and says of it what every job has to know. */
  readonly settle: (chosen: ChosenColumns<string>) => readonly OpenItem[];
  /** What is to be said of the file beside its columns. */
  readonly say: (faults: Faults, body: Body) => void;
  /** Rows whose cells may stand under the wrong headings. */
  readonly shifted: (
    body: Body,
    columns: readonly Column<string>[],
    readings: ChosenColumns<string>['readings'],
  ) => Map<number, OpenItem>;
  readonly lostCells: readonly string[];
  /** Says that no heading of it is known; `stands`: what is above the likeliest line could be titles, so that it is one. */
  readonly noHeading: (stands: boolean) => OpenItem;
}

/**
 * Reads a text as a table, in steps: decodes, finds delimiter and heading, checks quotes, parses, and leaves out what is no row.
 * @param file as messages name it
 * @param content the file's bytes, or its text
 * @param index what its headings may mean
 * @param map what the column map states about it
 * @param flags what flags state about it; goes before the column map
 * @returns the table, or the one item that says why there is none; never throws
 */
export function* readingTable<F extends string>(
  file: string,
  content: Uint8Array | string,
  index: HeadingIndex<F>,
  map: Dialect = {},
  flags: Dialect = {},
): InSteps<TableReading<F>> {
  const dialect = statedDialect(map, flags);
  const decidedBy = decider(map, flags);
  if (content.length > LARGEST_FILE)
    return { ok: false, item: at(FILE_TOO_LARGE, { path: file, megabytes: LARGEST_FILE / 1e6 }, file, 1) };
  const decoded = typeof content === 'string' ? textOf(content) : yield* decoding(content, dialect.encoding);
  if ('kind' in decoded)
    return { ok: false, item: at(FILE_NOT_TEXT, { path: file, kind: decoded.kind }, file, 1) };
  yield;
  const seen = yield* seeingText(decoded.text);
  yield;
  if (seen.text.trim() === '') return { ok: false, item: at(FILE_EMPTY, { path: file }, file, 1) };
  const separator = separatorLine(seen.text);
  const stated = dialect.delimiter ?? separator;
  const delimiters = stated === null ? DELIMITERS : [stated];
  const place =
    findHeading(seen.text, index, delimiters, dialect.headingLine) ?? likelyHeading(seen.text, delimiters);
  if ((place?.known ?? 0) === 0 && statesPlace(map)) {
    const other = yield* readingTable(file, content, index, {}, flags);
    if (other.ok) return other;
  }
  if (place === null) return { ok: false, item: noHeading(file, 1, firstLine(seen.text), index) };
  const quotes = yield* checkingQuotes(seen.text, place.delimiter, place.cells.length);
  yield;
  const records = yield* recordsOf(quotes.text, place.delimiter);
  yield;
  if (records === null) return tooManyRows(file);
  return yield* tableOf(index, {
    file,
    sheet: null,
    ...records,
    place,
    firstTitle: separator === null ? 0 : 1,
    written: {
      encoding: decoded.encoding,
      delimiter: place.delimiter,
      decidedBy: {
        // Stated as UTF-8 and none: what was taken instead is a guess all the same.
        encoding:
          decoded.guessedAt > 0
            ? 'a guess'
            : decidedBy('encoding', decoded.marked ? 'its first bytes' : 'its text'),
        delimiter: decidedBy('delimiter', separator === null ? 'its text' : 'its sep= line'),
        decimal: decidedBy('decimal', 'its text'),
        headingLine: decidedBy('headingLine', 'its text'),
      },
    },
    mark: (rows, columns) => dialect.decimal ?? decimalMark(rows, columns, place.delimiter),
    settle: () => [],
    say: (faults, body) => {
      sayText(file, decoded, seen, faults);
      sayLines(file, quotes, body, faults);
      sayHeading(file, quotes, place, faults);
    },
    shifted: (body, columns, readings) => shiftedRows(file, body, place, { columns, readings }, quotes),
    lostCells: lostCells(quotes, place.delimiter),
    noHeading: (stands) =>
      stands || dialect.headingLine !== undefined
        ? noHeading(file, place.line, place.cells.join(place.delimiter), index)
        : noHeading(file, 1, firstLine(seen.text), index),
  });
}

/** Takes columns and rows out of records whose heading is known. */
export function* tableOf<F extends string>(index: HeadingIndex<F>, source: Source): InSteps<TableReading<F>> {
  const { file, cells, lines, place } = source;
  const heading = lines.indexOf(place.line);
  const first = cells.findIndex((record, i) => i > heading && record.some((cell) => cell.trim() !== ''));
  const chosen = chooseColumns(file, place, index, cells, first);
  const settled = source.settle(chosen);
  const body = bodyOf(
    { records: cells, lines, heading, firstTitle: source.firstTitle, unitsRow: chosen.unitsRow },
    place.cells,
    chosen.columns,
    index.vocabulary.identity,
    headingMeaning(index),
  );
  if (body.rows.length > LIMITS.fileRows) return tooManyRows(file);
  yield;
  const faults = { grave: [...chosen.grave, ...settled], slight: [...chosen.slight] };
  source.say(faults, body);
  const mark = source.mark(body.rows, chosen.columns);
  const rows = place.known > 0 ? body.rows : cells.slice(heading + 1).filter((row) => !row.every(isBlank));
  const { decidedBy } = source.written;
  const understood: Understood = {
    file,
    ...source.written,
    decimal: mark,
    headingLine: place.line,
    decidedBy: place.known > 0 ? decidedBy : { ...decidedBy, headingLine: guessed(decidedBy.headingLine) },
    unitsLine: chosen.unitsRow < 0 ? 0 : (lines[chosen.unitsRow] ?? 0),
    columns: chosen.readings.map((reading) => ({
      ...reading,
      samples: samplesOf(rows.length > 0 ? rows : cells.slice(heading + 1), reading.index),
    })),
    rows: rows.length,
    leftOut: place.known > 0 ? body.leftOut : [],
    words: [],
  };
  if (place.known === 0)
    return { ok: false, item: source.noHeading(isBelowTitles(cells, heading)), understood };
  return {
    ok: true,
    table: {
      file,
      sheet: source.sheet,
      columns: chosen.columns,
      refused: chosen.refused,
      rows: body.rows,
      lines: body.lines,
      mark,
      headingLine: place.line,
      shifted: source.shifted(body, chosen.columns, chosen.readings),
      figuresLeftOut: body.leftOut.filter((out) => out.figures && out.row >= 0),
      asides: body.asides,
      lostCells: source.lostCells,
      ...faults,
      understood,
    },
  };
}

/** Where no heading is known, the file shows nothing of its line: it is a guess, unless it was stated. */
const guessed = (by: DecidedBy): DecidedBy => (by === 'its text' || by === 'its cells' ? 'a guess' : by);

const isBlank = (cell: string): boolean => cell.trim() === '';

/** The first line that says something. */
const firstLine = (text: string): string => text.trimStart().slice(0, 10_000).split('\n', 1)[0] ?? '';

/** `found`: what stands where a heading would; `list`: the path of the file, also where it is a sheet of it. */
export function noHeading<F extends string>(
  file: string,
  line: number,
  found: string,
  { vocabulary }: HeadingIndex<F>,
  list = file,
): OpenItem {
  const p = { path: file, list, first: visible(found), mapped: vocabulary.mapped === true };
  return at(NO_HEADING, p, file, line);
}

export function tooManyRows(file: string): { readonly ok: false; readonly item: OpenItem } {
  return { ok: false, item: at(FILE_TOO_MANY_ROWS, { path: file, most: LIMITS.fileRows }, file, 1) };
}

/** The records of a text; null: it has so many that say something that they can't be rows, notes and totals of one list. */
function* recordsOf(text: string, delimiter: Delimiter): InSteps<Records | null> {
  const first = yield* readingRecords(text, delimiter, MOST_RECORDS);
  if (first.cells.length < MOST_RECORDS) return first;
  const filled = first.cells.filter((record) => record.some((cell) => cell.trim() !== '')).length;
  if (filled > MOST_RECORDS / 2) return null;
  // There may be hundreds of millions of blank ones, more than a table can hold.
  const all = yield* readingRecords(text, delimiter, MOST_RECORDS, true);
  return all.cells.length < MOST_RECORDS ? all : null;
}

function textOf(content: string): Decoded {
  return {
    text: lineEnds(content.startsWith('\ufeff') ? content.slice(1) : content),
    encoding: 'utf-8',
    marked: false,
    guessedAt: 0,
  };
}

/** What stood between the delimiters of lines left out for their quotes, as far as those lines are kept. */
function lostCells({ leftOut }: QuoteFaults, delimiter: Delimiter): string[] {
  const cells = leftOut.flatMap(({ shown: start }) => start.split('\n', 1)[0]?.split(delimiter) ?? []);
  return [...new Set(cells.map((cell) => cell.replaceAll('"', '').trim()))].filter((cell) => cell !== '');
}

/** Three different cells of a column that say something, from its first thousand rows. */
function samplesOf(rows: readonly (readonly string[])[], index: number): string[] {
  const samples = new Set<string>();
  for (let i = 0; i < rows.length && i < 1000 && samples.size < 3; i += 1) {
    const cell = rows[i]?.[index]?.trim() ?? '';
    if (cell !== '') samples.add(visible(cell));
  }
  return [...samples];
}
