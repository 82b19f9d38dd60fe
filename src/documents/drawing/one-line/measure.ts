import { lineWidth } from '../../parts/text-width.js';
import { wrapped } from '../../parts/wrapped.js';

/** Size of all type of the drawing, mm: 10 pt, and a hair more so that it never reads back as less. */
export const TYPE = 3.53;
/** From one line of text to the next, mm. */
export const LEADING = 4.2;

/** A line of text of the drawing. */
export interface Line {
  readonly text: string;
  readonly bold: boolean;
  /** What the line says once the sheets are counted; `text` is as wide as it can become. */
  readonly late?: () => string;
}

/** A blank at which no line breaks: between a figure and its unit. */
export const NO_BREAK = '\u00a0';

/** What the list doesn't say is filled in by hand. */
export const BLANK = '____';

/** A figure or a name that stays on one line: `15 to 30 A`. */
export function unbroken(text: string): string {
  return text.replaceAll(' ', NO_BREAK);
}

/** Text on lines no wider than a width in mm, broken at plain blanks, and inside a word only where the word alone is wider. */
export function onLines(text: string, width: number, bold = false): Line[] {
  const lines = wrapped(text, width, { size: TYPE, weight: bold ? 700 : 400 });
  return lines.map((line) => ({ text: line, bold }));
}

/** Width of the widest of some lines, mm. */
export function widthOf(lines: readonly Line[]): number {
  return lines.reduce((most, { text, bold }) => Math.max(most, lineWidth(text, TYPE, bold ? 700 : 400)), 0);
}

/** Height of some lines below each other, mm. */
export function heightOf(lines: readonly Line[]): number {
  return lines.length * LEADING;
}
