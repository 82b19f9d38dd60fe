import type { Field } from '../../model/list.js';
import { nearest } from '../../words/closeness.js';
import { wrong, type Wrong } from './cell-reading.js';
import { sameVoltages } from './same-voltages.js';
import { wordKey } from './yes-no.js';

const ROMAN = new Map([
  ['1', 'I'],
  ['2', 'II'],
  ['3', 'III'],
  ['4', 'IV'],
]);

const AC_PORTS = new Set<Field>(['ac_in', 'ac_in_2', 'ac_out']);

/** Looks a word up among those of a field; AC systems forgive a `V` after them and blanks around a slash. */
export function readWord(
  field: Field,
  text: string,
  list: readonly string[],
): Wrong | { readonly value: string } {
  const key = wordKey(text);
  const same = list.find((w) => wordKey(w) === key);
  if (same !== undefined) return { value: same };
  const loose = looseKey(text);
  const near =
    list.find((w) => wordKey(w) === loose) ??
    (field === 'overvoltage_category' ? ROMAN.get(loose) : undefined);
  if (near !== undefined) return { value: near };
  const meant = nearestWord(field, text, list);
  const write =
    meant === null
      ? `Known are ${list.join(', ')}: write the one that is meant`
      : `Write ${meant} if that is what is meant`;
  return wrong(
    'it is none of the words that may stand here',
    `${write}; a word of your own is taught by words in the column map or the settings.`,
  );
}

/** Without a `V` at its end, blanks around a slash and the word category before it. */
function looseKey(text: string): string {
  return wordKey(text)
    .replace(/-?\/-?/g, '/')
    .replace(/-?v(?:-?ac)?$|^cat(?:egory)?\.?-|^ovc-/g, '');
}

/**
 * The words of a field that a text may be meant for: of AC systems those of the same voltages, of all else a slip of the hand.
 * @returns several joined by `or`; null: none is near
 */
export function nearestWord(field: Field, text: string, list: readonly string[]): string | null {
  const loose = looseKey(text);
  const guess = nearest(wordKey(text), list.filter(canBeMisspelt).map(wordKey));
  const close = list.filter((w) => wordKey(w) === guess);
  const meant = AC_PORTS.has(field) && /\d/.test(loose) ? sameVoltages(loose) : close;
  return meant.length === 0 ? null : meant.join(' or ');
}

/** A code says what it says by each of its letters and figures: `nec-2026` is no slip for `nec-2020`, nor `TI` for `IT`. */
function canBeMisspelt(word: string): boolean {
  return word.length > 3 && !/\d/.test(word);
}
