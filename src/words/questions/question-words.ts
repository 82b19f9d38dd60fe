import { FIELDS } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { Note } from '../../model/open-item.js';
import { ACCEPT } from '../../model/questions.js';
import { told } from '../messages/told.js';

/** What can settle a question: `list`: nothing but the list, a file or whatever the item says. */
export type Takes = 'value' | 'value or accept' | 'accept' | 'list';

type Item = Pick<Note, 'code' | 'values'>;

/**
 * The question of items alike: what each of them says, each sentence once.
 * @param rowOf the tag of the row that an equipment is of: what is said of each equipment of a quantity is said of their row
 */
export function questionText(
  items: readonly Item[],
  rowOf: (equipment: string) => string | undefined = () => undefined,
): string {
  const ofRow = (item: Item): Item => {
    const { values } = item;
    if (!('tag' in values) || typeof values.tag !== 'string') return item;
    return { ...item, values: { ...values, tag: rowOf(values.tag) ?? values.tag } };
  };
  const counts = new Map<string, number>();
  const key = (item: Item): string => JSON.stringify([item.code, ofRow(item).values]);
  for (const item of items) counts.set(key(item), (counts.get(key(item)) ?? 0) + 1);
  const asked = items.map((item) => ((counts.get(key(item)) ?? 0) > 1 ? ofRow(item) : item));
  return [...new Set(asked.map((item): string => told(item).message))].join(' ');
}

/** What was found, where that is no cell of the list. */
export function foundText(item: Item): string {
  return told(item).found;
}

/** What an answer may be, or what to do where none can be taken. */
export function expectedText(item: Item, takes: Takes, field: Field | undefined): string {
  const { expected, hint } = told(item);
  if (takes === 'accept') return `${ACCEPT}; before that: ${hint}`;
  if (takes === 'list' || field === undefined) return `no answer here: ${hint}`;
  const cell = FIELDS[field].expected;
  const whole: string = expected;
  const more = cell.includes(whole) ? '' : ` (${whole})`;
  return `${takes === 'value' ? '' : `${ACCEPT}, or `}${cell}${more}`;
}

/** Apostrophes of our own before what could run as a formula, lines of a list (it may have been exported again), and blanks. */
const plain = (text: string): string =>
  text
    .replace(/(^|[;|])'/g, '$1')
    .replace(/\b(lines?) \d+(?:(?:, | and )\d+)*/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();

/**
 * Whether a question is asked as it was, wherever its rows stand by now.
 * @param asked as a file of answers has it
 * @param now as it is asked now
 */
export function isAskedAlike(asked: string, now: string): boolean {
  return plain(asked) === plain(now);
}
