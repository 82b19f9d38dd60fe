import { textWidth } from '../text-width.js';
import { wrapped } from '../text-width.js';

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

/** Plain lines. */
export function plainLines(texts: readonly string[]): Line[] {
  return texts.map((text) => ({ text, bold: false }));
}

/** Text on lines no wider than a width in mm. */
export function onLines(text: string, width: number, bold = false): Line[] {
  return wrapped(text, width, TYPE, bold).map((line) => ({ text: line, bold }));
}

/** Width of the widest of some lines, mm. */
export function widthOf(lines: readonly Line[]): number {
  return lines.reduce((most, { text, bold }) => Math.max(most, textWidth(text, TYPE, bold)), 0);
}

/** Height of some lines below each other, mm. */
export function heightOf(lines: readonly Line[]): number {
  return lines.length * LEADING;
}
