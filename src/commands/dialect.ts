import type { Dialect } from '../index.js';
import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { textOption, WrongCommandLine } from './usage.js';

/** What a command line states about how its lists are written. */
export interface DialectArguments {
  readonly encoding?: string | undefined;
  readonly delimiter?: string | undefined;
  readonly decimal?: string | undefined;
  readonly headingLine?: string | undefined;
}

const ENCODINGS: Readonly<Record<string, NonNullable<Dialect['encoding']>>> = {
  'utf-8': 'utf-8',
  'utf-16le': 'utf-16le',
  'utf-16be': 'utf-16be',
  'windows-1252': 'windows-1252',
};
const DELIMITERS: Readonly<Record<string, NonNullable<Dialect['delimiter']>>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  bar: '|',
};
const DECIMALS: Readonly<Record<string, NonNullable<Dialect['decimal']>>> = { point: '.', comma: ',' };

/** A heading lower than this is none. */
const LAST_HEADING_LINE = 100_000;

/**
 * How the lists are written, as far as the command line states it.
 * @throws WrongCommandLine for a value that is none
 */
export function dialectOf(given: DialectArguments): Dialect {
  return {
    encoding: worded('encoding', given.encoding, ENCODINGS),
    delimiter: worded('delimiter', given.delimiter, DELIMITERS),
    decimal: worded('decimal', given.decimal, DECIMALS),
    headingLine: lineOf(textOption('heading-line', given.headingLine)),
  };
}

/** A value by its word, or as the character that the word stands for. */
function worded<T extends string>(
  option: string,
  value: string | undefined,
  words: Readonly<Record<string, T>>,
): T | undefined {
  const text = textOption(option, value);
  if (text === undefined) return undefined;
  const word = text.toLowerCase();
  const meant = Object.hasOwn(words, word) ? words[word] : Object.values(words).find((sign) => sign === text);
  if (meant !== undefined) return meant;
  const expected = Object.keys(words).join(', ');
  throw new WrongCommandLine(note(COMMAND_MESSAGES.noSuchValue, { option, found: text, expected }));
}

function lineOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const line = /^\d{1,6}$/.test(text) ? Number(text) : 0;
  if (line >= 1 && line <= LAST_HEADING_LINE) return line;
  const expected = `a line from 1 to ${String(LAST_HEADING_LINE)}`;
  throw new WrongCommandLine(
    note(COMMAND_MESSAGES.noSuchValue, { option: 'heading-line', found: text, expected }),
  );
}
