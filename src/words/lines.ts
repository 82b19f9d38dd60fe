import type { FileLine } from '../model/fact.js';

/**
 * A line of a list as a message names it: `line 3`, and with its file where the lines that are named stand in several.
 * @param of the line
 * @param among all lines that the message names; none: the file is never named
 */
export function lineOf(of: FileLine, among: readonly FileLine[] = []): string {
  const isOneFile = among.every((one) => one.file === of.file);
  return isOneFile ? `line ${of.line}` : `line ${of.line} of ${of.file}`;
}
