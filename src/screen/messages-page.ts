import type { MessageEntry } from '../words/message-kit.js';

/** Stands where a sentence takes its figures and names from the case at hand. */
const STAND_IN = '…';

const WORD: object = new String(STAND_IN);

/** The figure of a quantity: no message of a real case has it, so that the page can put the stand-in in its place. */
const NO_FIGURE = Infinity;
/** What a quantity and a reason have that a word or a list lacks. */
const DATA: ReadonlyMap<unknown, unknown> = new Map<string, unknown>([
  ['value', NO_FIGURE],
  ['unit', ''],
  ['code', 'earlier/as-written'],
  ['values', { text: STAND_IN }],
]);

/** A parameter of any type, a word, a figure, a list, a quantity or a reason: whatever is done with it, the stand-in comes out. */
const parameter: object = new Proxy([STAND_IN], {
  get(target, key): unknown {
    if (key === Symbol.toPrimitive || key === 'toString' || key === 'toFixed') return () => STAND_IN;
    if (DATA.has(key)) return DATA.get(key);
    const of = key in target ? target : WORD;
    const member: unknown = Reflect.get(of, key);
    return typeof member === 'function' ? (member.bind(of) as unknown) : member;
  },
});
const parameters: object = new Proxy({}, { get: () => parameter });

/** A part of an entry as the page shows it; `varies` where it depends on more than a name or a figure. */
function textOf(part: string | ((p: never) => string)): string {
  if (typeof part === 'string') return part;
  try {
    const text = String((part as (p: object) => unknown)(parameters));
    return text.replaceAll(String(NO_FIGURE), STAND_IN);
  } catch {
    return 'varies with the case';
  }
}

const cell = (text: string): string =>
  text.replaceAll('|', '\\|').replaceAll('<', '&lt;').replace(/\s+/g, ' ').trim();

function rowOf({ kind, words }: MessageEntry): string {
  const who = kind.who === 'given' ? 'varies with the case' : kind.who;
  const cells = [
    `\`${kind.code}\``,
    kind.severity,
    words.title,
    textOf(words.expected),
    textOf(words.hint),
    who,
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

/**
 * The message catalogue as a page of Markdown, docs/messages.md: every message by its code.
 * @param entries of all rooms, in any order
 * @returns the page; a figure or name that a message takes from the case stands as `…`
 */
export function messagesPage(entries: readonly MessageEntry[]): string {
  const sorted = [...entries].sort((a, b) => (a.kind.code < b.kind.code ? -1 : 1));
  const rooms = new Map<string, MessageEntry[]>();
  for (const entry of sorted) {
    const room = entry.kind.code.split('/')[0] ?? '';
    rooms.set(room, [...(rooms.get(room) ?? []), entry]);
  }
  const lines = [
    '# The messages',
    '',
    'Written by `npm run docs:messages` from `src/words/messages/`; a change here is lost. A code is permanent. `missing` and',
    '`conflict` make a pack a draft; `confirm` is printed for a person to confirm. What a message takes from the case stands as `…`.',
  ];
  for (const [room, of] of rooms) {
    lines.push('', `## ${room}`, '');
    lines.push(
      '| code | severity | title | expected | hint | who can supply it |',
      '| --- | --- | --- | --- | --- | --- |',
    );
    lines.push(...of.map(rowOf));
  }
  return lines.map((line) => `${line}\n`).join('');
}
