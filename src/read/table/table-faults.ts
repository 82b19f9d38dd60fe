import type { OpenItem } from '../../model/open-item.js';
import { itemAt, note, type MessageKind } from '../../model/message.js';
import {
  CONTROL_CHARACTERS,
  ENCODING_GUESSED,
  QUOTE_OPEN,
  QUOTE_STRAY,
  ROWS_LEFT_OUT,
  UNSEEN_REMOVED,
} from '../../model/messages/list-file.js';
import {
  COLUMN_WITHOUT_HEADING,
  HEADING_AGAIN,
  QUOTE_IN_HEADING,
} from '../../model/messages/list-heading.js';
import { CELLS_SHORT, CELLS_SURPLUS, QUOTE_IN_NAME } from '../../model/messages/list.js';
import { visible } from '../../words/visible.js';
import type { Decoded } from '../file/decode.js';
import type { QuoteFaults } from '../file/quotes.js';
import type { SeenText } from '../file/unseen.js';
import type { Body } from './body.js';
import type { ChosenColumns } from './columns.js';
import type { HeadingPlace } from './find-heading.js';
import { oddRows, quotedRows } from './shifted.js';

/** Faults of a file: those through which facts may be lost, and those to look at. */
export interface Faults {
  readonly grave: OpenItem[];
  readonly slight: OpenItem[];
}

/** Puts a note of a file to its line. */
export function at<P extends object>(entry: MessageKind<P>, p: P, file: string, line: number): OpenItem {
  return itemAt(note(entry, p), { file, line, column: '' });
}

/** What is to be said of the text as a whole. */
export function sayText(
  file: string,
  { guessedAt }: Pick<Decoded, 'guessedAt'>,
  { control, turning }: Pick<SeenText, 'control' | 'turning'>,
  { grave, slight }: Faults,
): void {
  if (guessedAt > 0) slight.push(at(ENCODING_GUESSED, {}, file, guessedAt));
  if (turning !== null)
    slight.push(
      at(UNSEEN_REMOVED, { count: turning.count, found: visible(turning.shown) }, file, turning.line),
    );
  if (control !== null)
    grave.push(
      at(CONTROL_CHARACTERS, { count: control.count, found: visible(control.shown) }, file, control.line),
    );
}

/** What is to be said of lines that aren't read, or not as they stand. */
export function sayLines(file: string, quotes: QuoteFaults, body: Body, { grave, slight }: Faults): void {
  for (const { line, shown: start, lines } of quotes.leftOut) {
    grave.push(at(QUOTE_OPEN, { found: visible(start), lines }, file, line));
  }
  const stray = quotes.stray[0];
  if (stray !== undefined) slight.push(at(QUOTE_STRAY, { count: quotes.stray.length }, file, stray));
  const again = body.otherHeading;
  if (again !== null) grave.push(at(HEADING_AGAIN, { found: again.text }, file, again.line));
  const out = body.leftOut[0];
  if (out !== undefined)
    slight.push(
      at(ROWS_LEFT_OUT, { lines: body.leftOut.map((l) => l.line), found: out.text }, file, out.line),
    );
  for (const [column, line] of body.withoutHeading)
    slight.push(at(COLUMN_WITHOUT_HEADING, { column: column + 1 }, file, line));
}

/** A mark too many in the heading line may have joined two headings, or made one of none. */
export function sayHeading(
  file: string,
  { stray }: QuoteFaults,
  { line, cells }: HeadingPlace,
  { grave }: Faults,
): void {
  const last = line + cells.reduce((n, cell) => n + cell.split('\n').length - 1, 0);
  if (stray.some((one) => one >= line && one <= last))
    grave.push(
      at(QUOTE_IN_HEADING, { found: visible(cells.find((c) => c.includes('"')) ?? '') }, file, line),
    );
}

/** The item of every row whose cells may stand under the wrong headings, by index of the row. */
export function shiftedRows<F extends string>(
  file: string,
  body: Body,
  place: HeadingPlace,
  { columns, readings }: Pick<ChosenColumns<F>, 'columns' | 'readings'>,
  { stray }: QuoteFaults,
): Map<number, OpenItem> {
  const { rows, lines } = body;
  const headings = place.cells.length;
  const unknownHeading = readings.some((r) => r.how === 'unknown');
  const suspects = [
    ...quotedRows(rows, lines, stray, columns),
    ...oddRows(rows, { headings: place.cells, unknownHeading }),
  ];
  return new Map(
    suspects.map((one) => {
      const line = lines[one.row] ?? 0;
      if (one.by !== 'quote')
        return [
          one.row,
          at(one.by === 'short' ? CELLS_SHORT : CELLS_SURPLUS, { cells: one.cells, headings }, file, line),
        ];
      const said = note(QUOTE_IN_NAME, { found: one.text });
      return [one.row, itemAt(said, { file, line, column: visible(one.heading) })];
    }),
  );
}
