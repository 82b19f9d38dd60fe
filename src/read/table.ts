import type { OpenItem } from '../model/message.js';
import { itemAt, note, type MessageEntry } from '../text/message-kit.js';
import {
  CELLS_SURPLUS,
  COLUMN_WITHOUT_HEADING,
  ENCODING_GUESSED,
  FILE_EMPTY,
  FILE_NOT_TEXT,
  NO_HEADING,
  NO_ROWS,
  QUOTE_OPEN,
  QUOTE_STRAY,
  ROWS_LEFT_OUT,
} from '../text/messages/list.js';
import type { DecimalMark } from '../text/numbers.js';
import { shown } from '../text/shown.js';
import { decode, lineEnds, type Encoding } from './decode.js';
import { chooseColumns, type Column, type ColumnReading } from './columns.js';
import { decimalMark } from './decimal-mark.js';
import { DELIMITERS, findHeading, separatorLine, type Delimiter } from './find-heading.js';
import type { HeadingIndex } from './headings.js';
import { checkQuotes } from './quotes.js';
import { readRecords } from './records.js';
import { bodyOf, type LeftOut } from './body.js';

/** What a flag or the column map states about a file; what isn't stated is found out. */
export interface Dialect {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly decimal?: '.' | ',' | undefined;
  /** Line of the heading, first line 1. */
  readonly headingLine?: number | undefined;
}

/** How a file was understood; `read` and `columns` show it. */
export interface Understood {
  readonly file: string;
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  readonly headingLine: number;
  /** Line of units under the heading; 0: none. */
  readonly unitsLine: number;
  readonly columns: readonly ColumnReading[];
  readonly rows: number;
  readonly leftOut: readonly LeftOut[];
}

/** A file as a table: understood columns, and the records that are rows. */
export interface Table<F extends string> {
  readonly file: string;
  readonly columns: readonly Column<F>[];
  /** Fields that two headings name: neither is read, and an item says so. */
  readonly refused: readonly F[];
  readonly rows: readonly (readonly string[])[];
  readonly lines: readonly number[];
  readonly mark: DecimalMark;
  readonly headingLine: number;
  /** Items of single rows, by index of the row; such a row is kept with its tag only. */
  readonly shifted: ReadonlyMap<number, OpenItem>;
  /** Faults through which facts may be lost: they are every job's business. */
  readonly grave: readonly OpenItem[];
  /** What a person may want to look at. */
  readonly slight: readonly OpenItem[];
  readonly understood: Understood;
}

export type TableReading<F extends string> =
  { readonly ok: true; readonly table: Table<F> } | { readonly ok: false; readonly item: OpenItem };

/** Puts a note of a file to its line. */
function at<P>(entry: MessageEntry<P>, p: P, file: string, line: number, column = ''): OpenItem {
  return itemAt(note(entry, p), { file, line, column });
}

/**
 * Reads a file as a table: decodes, finds delimiter and heading, checks quotes, parses, and leaves out what is no row.
 * @param file as messages name it
 * @param content the file's bytes, or its text
 * @param index what its headings may mean
 * @param dialect what is stated about it
 */
export function readTable<F extends string>(
  file: string,
  content: Uint8Array | string,
  index: HeadingIndex<F>,
  dialect: Dialect = {},
): TableReading<F> {
  const decoded =
    typeof content === 'string'
      ? {
          text: lineEnds(content.startsWith('\ufeff') ? content.slice(1) : content),
          encoding: 'utf-8' as const,
          guessedAt: 0,
        }
      : decode(content, dialect.encoding);
  if ('kind' in decoded)
    return { ok: false, item: at(FILE_NOT_TEXT, { path: file, kind: decoded.kind }, file, 0) };
  const { text, encoding, guessedAt } = decoded;
  if (text.trim() === '') return { ok: false, item: at(FILE_EMPTY, { path: file }, file, 0) };

  const stated = dialect.delimiter ?? separatorLine(text);
  const place = findHeading(text, index, stated === null ? DELIMITERS : [stated], dialect.headingLine);
  if (place === null) {
    const first = text.split('\n', 20).find((l) => l.trim() !== '') ?? '';
    return { ok: false, item: at(NO_HEADING, { path: file, first: shown(first) }, file, 1) };
  }
  const quotes = checkQuotes(text, place.delimiter, place.cells.length);
  const { cells, lines } = readRecords(quotes.text, place.delimiter);
  const heading = lines.indexOf(place.line);
  const first = cells.findIndex((record, i) => i > heading && record.some((cell) => cell.trim() !== ''));
  const chosen = chooseColumns(file, place, index, cells, first);
  const body = bodyOf(
    cells,
    lines,
    heading,
    chosen.unitsRow,
    place.cells,
    chosen.columns,
    index.vocabulary.identity,
  );

  const grave = [...chosen.grave];
  const slight = [...chosen.slight];
  if (guessedAt > 0) slight.push(at(ENCODING_GUESSED, {}, file, guessedAt));
  for (const { line, shown: start, lines: many } of quotes.leftOut) {
    grave.push(at(QUOTE_OPEN, { found: shown(start), lines: many }, file, line));
  }
  const stray = quotes.stray[0];
  if (stray !== undefined) slight.push(at(QUOTE_STRAY, { count: quotes.stray.length }, file, stray));
  const out = body.leftOut[0];
  if (out !== undefined)
    slight.push(
      at(ROWS_LEFT_OUT, { lines: body.leftOut.map((l) => l.line), found: shown(out.text) }, file, out.line),
    );
  for (const [column, line] of body.withoutHeading)
    slight.push(at(COLUMN_WITHOUT_HEADING, { column: column + 1 }, file, line));
  if (body.rows.length === 0 && grave.length === 0)
    return { ok: false, item: at(NO_ROWS, { path: file }, file, place.line) };

  const shifted = new Map<number, OpenItem>();
  for (const { row, cells: many } of body.surplus) {
    shifted.set(
      row,
      at(CELLS_SURPLUS, { cells: many, headings: place.cells.length }, file, body.lines[row] ?? 0),
    );
  }
  const mark = dialect.decimal ?? decimalMark(body.rows, chosen.columns, place.delimiter);
  return {
    ok: true,
    table: {
      file,
      columns: chosen.columns,
      refused: chosen.refused,
      rows: body.rows,
      lines: body.lines,
      mark,
      headingLine: place.line,
      shifted,
      grave,
      slight,
      understood: {
        file,
        encoding,
        delimiter: place.delimiter,
        decimal: mark,
        headingLine: place.line,
        unitsLine: chosen.unitsRow < 0 ? 0 : (lines[chosen.unitsRow] ?? 0),
        columns: chosen.readings.map((reading) => ({
          ...reading,
          samples: samplesOf(body.rows, reading.index),
        })),
        rows: body.rows.length,
        leftOut: body.leftOut,
      },
    },
  };
}

/** Three different cells of a column that say something. */
function samplesOf(rows: readonly (readonly string[])[], index: number): string[] {
  const samples = new Set<string>();
  for (let i = 0; i < rows.length && i < 1000 && samples.size < 3; i += 1) {
    const cell = rows[i]?.[index]?.trim() ?? '';
    if (cell !== '') samples.add(shown(cell));
  }
  return [...samples];
}
