import { parse } from 'csv-parse/sync';
import type { Options } from 'csv-parse/sync';

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

/**
 * Splits a text into records.
 * @param text with `\n` line ends and closed quotes
 * @param delimiter one character
 * @param most stop after so many records; 0: all
 * @returns the cells as typed and the first line of each record, first line 1
 */
export function readRecords(text: string, delimiter: string, most = 0): Records {
  const cells = parse(text, {
    ...parserOptions(delimiter),
    ...(most > 0 ? { to: most } : {}),
  });
  return { cells, lines: firstLines(cells, text.includes('"')) };
}

/** No text is lost between cells, so a record of several lines shows by the line ends in its cells: no need for the parser's costly `info`. */
function firstLines(cells: readonly string[][], quoted: boolean): number[] {
  const lines = new Array<number>(cells.length);
  let line = 1;
  for (let i = 0; i < cells.length; i += 1) {
    lines[i] = line;
    line += 1;
    if (!quoted) continue;
    for (const cell of cells[i] ?? []) {
      for (let at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) line += 1;
    }
  }
  return lines;
}
