import { decoding } from './decode.js';
import { atOneGo } from './in-steps.js';

/** What ends the first cell of a line. */
const CELL_END = /[\t;,|]/;

/**
 * The serials of a file that has one a line: the first cell of each, whatever stands behind it; a heading `serial` is none.
 * @param bytes the file, a text
 * @returns in the file's order; none where it is no text
 */
export function serialLines(bytes: Uint8Array): readonly string[] {
  const decoded = atOneGo(decoding(bytes));
  if ('kind' in decoded) return [];
  const cells = decoded.text.split('\n').map((line) => firstCell(line).trim());
  return cells.filter((cell, i) => cell !== '' && !(i === 0 && cell.toLowerCase() === 'serial'));
}

function firstCell(line: string): string {
  const quoted = /^\s*"((?:[^"]|"")*)"/.exec(line)?.[1];
  if (quoted !== undefined) return quoted.replaceAll('""', '"');
  return line.split(CELL_END, 1)[0] ?? '';
}
