import { lineWidth } from '../parts/text-width.js';
import { wrapped as wrappedLines } from '../parts/wrapped.js';

/** Width of a line of text in the drawings' family, in the unit of its size. */
export function textWidth(text: string, size: number, bold = false): number {
  return lineWidth(text, size, bold ? 700 : 400);
}

/** Text on lines no wider than `width`, as `src/documents/parts/wrapped.ts` breaks it. */
export function wrapped(text: string, width: number, size: number, bold = false, before = ''): string[] {
  return wrappedLines(text, width, { size, weight: bold ? 700 : 400, before });
}
