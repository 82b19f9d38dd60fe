import { atOneGo, STEP, type InSteps } from './in-steps.js';

/** What a walk along a text's quotes found, before the parser sees it. */
export interface QuoteFaults {
  /** The text; lines that a quote made unreadable are emptied, so that every other line keeps its number. */
  readonly text: string;
  /** First lines of records left out because of their quotes, with what stood there. */
  readonly leftOut: readonly { readonly line: number; readonly shown: string; readonly lines: number }[];
  /** Lines with a quote inside an unquoted cell (`3" conduit`): read as typed. */
  readonly stray: readonly number[];
}

/** More damaged lines than this and the rest of the file isn't worth guessing at. */
const MOST_REPAIRS = 200;

const LINE_END = 10;
/** A line longer than this, in characters, is no row that a quote has swallowed. */
const LONGEST_LINE = 100_000;

function newlinesBetween(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** True where a whole line inside a quoted cell has as many delimiters as a record: a quote was left open. */
function swallowsRows(text: string, from: number, to: number, delimiter: string, columns: number): boolean {
  if (columns < 3) return false;
  const mark = delimiter.charCodeAt(0);
  let count = 0;
  // Only lines that begin inside the cell count, hence nothing before its first line end.
  for (let at = text.indexOf('\n', from), end = at; at >= 0 && at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code === LINE_END) {
      if (count >= columns - 1) return true;
      count = 0;
      end = at;
    } else if (code === mark) count += 1;
    if (at - end > LONGEST_LINE) return false;
  }
  return count >= columns - 1;
}

/** Where the cell of an opening quote begins, blanks before it left out; -1: the quote stands inside an unquoted cell. */
function cellStart(text: string, quote: number, delimiter: string): number {
  let at = quote;
  while (at > 0 && isBlank(text[at - 1], delimiter)) at -= 1;
  const before = text[at - 1];
  return at === 0 || before === delimiter || before === '\n' ? at : -1;
}

function isBlank(character: string | undefined, delimiter: string): boolean {
  return character === ' ' || (character === '\t' && delimiter !== '\t');
}

interface Closing {
  /** -1: the quote is never closed. */
  readonly at: number;
  /** Where the cell ends, blanks behind the quote included. */
  readonly end: number;
  /** There is text behind the quote. */
  readonly stray: boolean;
}

function closing(text: string, open: number, delimiter: string): Closing {
  let at = text.indexOf('"', open + 1);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  if (at < 0) return { at, end: text.length, stray: false };
  let end = at + 1;
  while (isBlank(text[end], delimiter)) end += 1;
  const next = text[end];
  const stray = next !== undefined && next !== delimiter && next !== '\n';
  return { at, end: stray ? at + 1 : end, stray };
}

/**
 * Walks along the quotes of a text as the parser will (RFC 4180, relaxed): finds quotes that are never closed or that swallow
 * whole rows, and empties those lines; takes out blanks between a quote and its delimiter. Linear in the length of the text.
 * @param text with `\n` line ends
 * @param delimiter one character
 * @param columns cells of the heading; 0: not known yet, then only a quote that is never closed is a fault
 * @returns the text to parse and the faults
 */
export function checkQuotes(text: string, delimiter: string, columns: number): QuoteFaults {
  return atOneGo(checkingQuotes(text, delimiter, columns));
}

/** As {@link checkQuotes}, in steps. */
export function* checkingQuotes(text: string, delimiter: string, columns: number): InSteps<QuoteFaults> {
  const leftOut: { line: number; shown: string; lines: number }[] = [];
  const stray: number[] = [];
  const sayStray = (where: number): void => {
    if (stray.at(-1) !== where) stray.push(where);
  };
  const lineAt = lineCounter(text);
  const newlineFrom = newlineFinder(text);
  const pieces: string[] = [];
  /** Up to here the text is in `pieces`, or left out. */
  let taken = 0;
  /** Blanks of the record that the walk is in, to be left out unless the whole record is. */
  let blanks: (readonly [number, number])[] = [];
  const leave = (from: number, to: number): void => {
    pieces.push(text.slice(taken, from));
    taken = to;
  };
  /** Where that record began, and where its last quoted cell ended. */
  let record = 0;
  let line = 1;
  let passed = 0;
  let paused = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', passed)) {
    if (at - paused > STEP) {
      yield;
      paused = at;
    }
    const newline = newlineFrom(passed);
    if (newline >= 0 && newline < at) {
      for (const [from, to] of blanks) leave(from, to);
      blanks = [];
      record = text.lastIndexOf('\n', at) + 1;
      line = lineAt(record);
    }
    const start = cellStart(text, at, delimiter);
    if (start < passed) {
      sayStray(lineAt(at));
      passed = at + 1;
      continue;
    }
    const close = closing(text, at, delimiter);
    const inside = newlineFrom(at);
    const lines = inside >= 0 && inside < close.at;
    if (
      close.at >= 0 &&
      !(lines && (close.stray || swallowsRows(text, inside, close.at, delimiter, columns)))
    ) {
      if (close.stray) sayStray(lineAt(at));
      if (start < at) blanks.push([start, at]);
      if (close.at + 1 < close.end) blanks.push([close.at + 1, close.end]);
      passed = close.end;
      continue;
    }
    const next = inside < 0 || leftOut.length >= MOST_REPAIRS ? text.length : inside;
    const more = newlinesBetween(text, record, next);
    leftOut.push({ line, shown: text.slice(record, record + 200), lines: more + 1 });
    leave(record, next);
    pieces.push('\n'.repeat(more));
    blanks = [];
    passed = next;
  }
  for (const [from, to] of blanks) leave(from, to);
  return { text: taken === 0 ? text : pieces.join('') + text.slice(taken), leftOut, stray };
}

/** The line of a position, for positions that only rise. */
function lineCounter(text: string): (position: number) => number {
  let next = text.indexOf('\n');
  let line = 1;
  return (position) => {
    while (next >= 0 && next < position) {
      line += 1;
      next = text.indexOf('\n', next + 1);
    }
    return line;
  };
}

/** The first line end at or behind a position (-1: none), for positions that only rise: each part of the text is searched once. */
function newlineFinder(text: string): (position: number) => number {
  let found = text.indexOf('\n');
  return (position) => {
    if (found >= 0 && found < position) found = text.indexOf('\n', position);
    return found;
  };
}
