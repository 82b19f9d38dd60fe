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

function newlinesBetween(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

/** A quoted cell of several lines that has text behind its closing quote: that quote opens another cell. */
function spansLines(text: string, from: number, to: number): boolean {
  const end = text.indexOf('\n', from);
  return end >= 0 && end < to;
}

/** True where a whole line inside a quoted cell has as many delimiters as a record: a quote was left open. */
function swallowsRows(text: string, from: number, to: number, delimiter: string, columns: number): boolean {
  if (columns < 3) return false;
  let at = text.indexOf('\n', from);
  for (let lines = 0; at >= 0 && at < to && lines < 50; lines += 1) {
    const end = text.indexOf('\n', at + 1);
    const stop = end < 0 || end > to ? to : end;
    let count = 0;
    for (let i = text.indexOf(delimiter, at); i >= 0 && i < stop; i = text.indexOf(delimiter, i + 1))
      count += 1;
    if (count >= columns - 1) return true;
    at = end;
  }
  return false;
}

/**
 * Walks along the quotes of a text as the parser will (RFC 4180, relaxed): finds quotes that are never closed or that swallow
 * whole rows, and empties those lines. Linear in the length of the text.
 * @param text with `\n` line ends
 * @param delimiter one character
 * @param columns cells of the heading; 0: not known yet, then only a quote that is never closed is a fault
 * @returns the text to parse and the faults
 */
export function checkQuotes(text: string, delimiter: string, columns: number): QuoteFaults {
  const leftOut: { line: number; shown: string; lines: number }[] = [];
  const stray: number[] = [];
  let at = text.indexOf('"');
  if (at < 0) return { text, leftOut, stray };
  let out = '';
  let copied = 0;
  let counted = 0;
  let line = 1;
  const lineAt = (position: number): number => {
    line += newlinesBetween(text, counted, position);
    counted = position;
    return line;
  };
  while (at >= 0) {
    const before = at === 0 ? '\n' : text[at - 1];
    if (before !== delimiter && before !== '\n') {
      const here = lineAt(at);
      if (stray.at(-1) !== here) stray.push(here);
      at = text.indexOf('"', at + 1);
      continue;
    }
    const close = closing(text, at, delimiter);
    const end = close.at < 0 ? text.length : close.at;
    const faulty =
      close.at < 0 ||
      (close.stray && spansLines(text, at, end)) ||
      (columns > 0 && swallowsRows(text, at, end, delimiter, columns));
    if (!faulty) {
      if (close.stray) stray.push(lineAt(at));
      at = text.indexOf('"', end + 1);
      continue;
    }
    const start = text.lastIndexOf('\n', at) + 1;
    const stop = leftOut.length >= MOST_REPAIRS ? -1 : text.indexOf('\n', at);
    const next = stop < 0 ? text.length : stop;
    leftOut.push({
      line: lineAt(start),
      shown: text.slice(start, start + 200),
      lines: newlinesBetween(text, start, next) + 1,
    });
    out += text.slice(copied, start);
    copied = next;
    at = text.indexOf('"', next);
  }
  return { text: leftOut.length === 0 ? text : out + text.slice(copied), leftOut, stray };
}

/** Where a quoted cell ends; `at` -1: never. `stray`: its closing quote has text after it. */
function closing(
  text: string,
  open: number,
  delimiter: string,
): { readonly at: number; readonly stray: boolean } {
  let at = text.indexOf('"', open + 1);
  while (at >= 0) {
    const next = text[at + 1];
    if (next === '"') {
      at = text.indexOf('"', at + 2);
      continue;
    }
    return { at, stray: next !== undefined && next !== delimiter && next !== '\n' };
  }
  return { at: -1, stray: false };
}
