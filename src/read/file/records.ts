import { parse } from 'csv-parse/sync';
import type { Options } from 'csv-parse/sync';
import { atOneGo, STEP, type InSteps } from './in-steps.js';

/**
 * The reader's options of csv-parse: text in, arrays of cells as typed out; line ends are `\n` already, quotes are checked before.
 * @param delimiter one character
 */
export function parserOptions(delimiter: string): Options {
  return {
    delimiter,
    record_delimiter: '\n',
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
  };
}

/** The records of a text with the line on which each begins. */
export interface Records {
  readonly cells: string[][];
  readonly lines: number[];
}

/** Lines that are read between two pauses. */
const LINES_A_STEP = 20_000;

/**
 * Splits a text into records.
 * @param text with `\n` line ends and closed quotes
 * @param delimiter one character
 * @param most stop after so many records; 0: all
 * @returns the cells as typed and the first line of each record, first line 1
 */
export function readRecords(text: string, delimiter: string, most = 0): Records {
  return atOneGo(readingRecords(text, delimiter, most));
}

/**
 * As {@link readRecords}, in steps, and without records in which no cell says anything where those aren't wanted. Cells are those
 * that csv-parse gives. csv-parse itself is asked only about a record with text behind a
 * closing quote: of a record that has more or fewer cells than the first it makes an error, which costs as much as a hundred records.
 */
export function* readingRecords(
  text: string,
  delimiter: string,
  most = 0,
  withoutBlank = false,
): InSteps<Records> {
  const cells: string[][] = [];
  const lines: number[] = [];
  const quotes = quoteFinder(text);
  let line = 1;
  const isLeftOut = (record: readonly string[]): boolean =>
    withoutBlank && record.every((cell) => cell.trim() === '');
  let paused = { at: 0, line: 1 };
  for (let at = 0; at < text.length && (most === 0 || cells.length < most);) {
    if (at - paused.at > STEP || line - paused.line > LINES_A_STEP) {
      yield;
      paused = { at, line };
    }
    const newline = text.indexOf('\n', at);
    const end = newline < 0 ? text.length : newline;
    const first = line;
    line += 1;
    let record: string[];
    if (quotes(at) >= end) {
      record = text.slice(at, end).split(delimiter);
      at = end + 1;
    } else {
      const read = quotedRecord(text, at, delimiter);
      record = read.cells;
      at = read.end + 1;
      for (const cell of record)
        for (let inside = cell.indexOf('\n'); inside >= 0; inside = cell.indexOf('\n', inside + 1)) line += 1;
    }
    if (isLeftOut(record)) continue;
    cells.push(record);
    lines.push(first);
  }
  return { cells, lines };
}

/** The first quote at or behind a position (the text's length: none), for positions that only rise. */
function quoteFinder(text: string): (position: number) => number {
  let found = -1;
  return (position) => {
    if (found < position) {
      const next = text.indexOf('"', position);
      found = next < 0 ? text.length : next;
    }
    return found;
  };
}

/** A record in which a quote stands, and where it ends. A quote inside an unquoted cell stands for itself. */
function quotedRecord(text: string, start: number, delimiter: string): { cells: string[]; end: number } {
  const cells: string[] = [];
  let relaxed = false;
  for (let at = start; ;) {
    const open = at;
    // Behind its closing quote a cell may go on, as an unquoted one does.
    if (text[at] === '"') at = behindClosing(text, at);
    const end = cellEnd(text, at, delimiter);
    if (text[open] !== '"') cells.push(text.slice(open, end));
    else if (end === at) cells.push(text.slice(open + 1, at - 1).replaceAll('""', '"'));
    else relaxed = true;
    if (text[end] === delimiter) {
      at = end + 1;
      continue;
    }
    if (!relaxed) return { cells, end };
    const [record = []] = parse(text.slice(start, end), parserOptions(delimiter));
    return { cells: record, end };
  }
}

/** Behind the quote that closes one; a quote that stands twice is a quote in the cell. */
function behindClosing(text: string, open: number): number {
  let at = text.indexOf('"', open + 1);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at < 0 ? text.length : at + 1;
}

function cellEnd(text: string, from: number, delimiter: string): number {
  let at = from;
  while (at < text.length && text[at] !== delimiter && text[at] !== '\n') at += 1;
  return at;
}
