import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';

type Told = ReturnType<typeof note>;

/** A command line that can't be carried out; the run ends with 64. */
export class WrongCommandLine extends Error {
  override readonly name = 'WrongCommandLine';

  constructor(readonly note: Told) {
    super(note.code);
  }
}

/**
 * Marks the arguments that the parser would take for options or drop: `-`, and everything behind `--`.
 * @param args as the shell gives them
 * @returns the same, such an argument behind a NUL, which no shell can give
 */
export function markPlain(args: readonly string[]): string[] {
  const end = args.indexOf('--');
  const before = end < 0 ? args : args.slice(0, end);
  const behind = end < 0 ? [] : args.slice(end + 1);
  return [...before.map((a) => (a === '-' ? '\0-' : a)), ...behind.map((a) => `\0${a}`)];
}

/** Takes the mark of {@link markPlain} away. */
export function unmarkPlain(text: string): string {
  return text.replaceAll('\0', '');
}

/** The lists of a command line, unmarked; an empty name is refused. */
export function listsOf(lists: readonly string[]): readonly string[] {
  return lists.map((l) => filled('A list', unmarkPlain(l)));
}

/** One text option: given at most once, and not empty. */
export function textOption(name: string, value: string | readonly string[] | undefined): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value !== 'string')
    throw new WrongCommandLine(note(COMMAND_MESSAGES.givenTwice, { option: name }));
  return filled(`--${name}`, unmarkPlain(value));
}

/** A text option that may be given several times. */
export function textOptions(name: string, value: string | readonly string[] | undefined): readonly string[] {
  const all = value === undefined ? [] : typeof value === 'string' ? [value] : value;
  return all.map((one) => filled(`--${name}`, unmarkPlain(one)));
}

function filled(what: string, text: string): string {
  if (text === '') throw new WrongCommandLine(note(COMMAND_MESSAGES.emptyValue, { what }));
  return text;
}

/** Pages printed at a time, 1 to 64; undefined: not given. */
export function workersOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const workers = /^\d{1,2}$/.test(text) ? Number(text) : 0;
  if (workers < 1 || workers > 64)
    throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchWorkers, { found: text }));
  return workers;
}
