import { keeping } from '../../model/keeping.js';

const POLES: Readonly<Record<string, number>> = {
  '1': 1,
  '2': 2,
  '3': 3,
  '4': 4,
  one: 1,
  single: 1,
  two: 2,
  double: 2,
  three: 3,
  four: 4,
};
const NAMED = new RegExp(`(?<![\\w.-])(${Object.keys(POLES).join('|')})[- ]poles?(?!\\w)`, 'gi');

/**
 * How many poles the words of a catalogue name: `two-pole breaker, 20 A or less`.
 * @param words as a company wrote them
 * @returns undefined where they name none, or several numbers
 */
export const polesInWords = keeping((words: string) => words, lookedUp);

function lookedUp(words: string): number | undefined {
  const named = new Set([...words.matchAll(NAMED)].map(([, word = '']) => POLES[word.toLowerCase()]));
  const [only, another] = named;
  return another === undefined ? only : undefined;
}
