import type { FontFamily, FontWeight } from '../../fonts/faces.js';
import { lineWidth } from './text-width.js';

/** How the lines are set. */
export interface LineSetting {
  /** Font size, in the unit of the width. */
  readonly size: number;
  /** Default 400. */
  readonly weight?: FontWeight;
  /** Default `Plex`. */
  readonly family?: FontFamily;
  /** Stands in front of the first line, which leaves room for it. */
  readonly before?: string;
}

/** Blanks at which a line breaks: not those that keep a figure and its unit together. */
const BLANKS = /[^\S\u00a0]+/;

/**
 * Text on lines no wider than `width`: broken at blanks, and inside a word only where the word alone is wider.
 * @param text any text without line breaks
 * @param width of a line, in the unit of the font size
 */
export function wrapped(text: string, width: number, setting: LineSetting): string[] {
  const { size, weight, family, before = '' } = setting;
  const fits = (line: string): boolean => lineWidth(line, size, weight, family) <= width;
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(BLANKS).filter((w) => w !== '')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (fits(lines.length === 0 ? `${before}${longer}` : longer)) {
      current = longer;
      continue;
    }
    if (current !== '' || (lines.length === 0 && before !== '')) lines.push(current);
    const pieces = fits(word) ? [word] : broken(word, fits);
    lines.push(...pieces.slice(0, -1));
    current = pieces.at(-1) ?? '';
  }
  return current === '' ? lines : [...lines, current];
}

/** Puts the pieces of a word that is wider than a line on lines of their own. */
function broken(word: string, fits: (line: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && !fits(piece + character)) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}
