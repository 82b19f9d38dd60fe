import { visible } from '../../words/visible.js';

/** What a spreadsheet takes for the start of a formula, where our own files put an apostrophe before it. */
const GUARD = /(^|[;|])'(?=[\s\p{Cc}\p{Cf}\p{Z}"]*[=+\-@|%\uff1d\uff0b\uff0d\uff20])/gu;

/**
 * A cell of a file that we wrote and someone filled in, without the apostrophes that kept it from running as a formula.
 * @param text the cell as typed
 */
export function unguarded(text: string): string {
  return text.replace(GUARD, '$1').trim();
}

/** No figure is longer. */
const LONGEST_FIGURE = 30;
const FIGURE = /^-?\d+(?:\.\d+)?$/;

const shown = (text: string): string => unguarded(visible(text.trim())).replace(/\s+/g, ' ');

/**
 * Whether a cell says what a question said that it says; a spreadsheet may have written 16 as 16.0.
 * @param asked what `found` says
 * @param cell as typed
 */
export function saysSame(asked: string, cell: string): boolean {
  const [one, other] = [shown(asked), shown(cell)];
  if (one === other) return true;
  const areFigures = [one, other].every((text) => text.length < LONGEST_FIGURE && FIGURE.test(text));
  return areFigures && Number(one) === Number(other);
}
