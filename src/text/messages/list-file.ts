import type { MessageEntry } from '../message-kit.js';

/** Messages about how a file is written, and why it can't be read. */

export const FILE_NOT_THERE: MessageEntry<{ path: string }> = {
  code: 'file/not-there',
  severity: 'conflict',
  title: 'A file that was named is not there',
  message: ({ path }) => `There is no file or folder ${path}.`,
  expected: 'a file or folder that is there',
  hint: 'Check the path.',
  who: 'office',
};

export const FILE_NOT_READABLE: MessageEntry<{ path: string; because: string }> = {
  code: 'file/not-readable',
  severity: 'conflict',
  title: 'A file could not be opened',
  message: ({ path, because }) => `${path} can't be opened: ${because}.`,
  expected: 'a file that may be read',
  hint: 'Check the rights on the file, or save it anew.',
  who: 'office',
};

export const FILE_EMPTY: MessageEntry<{ path: string }> = {
  code: 'file/empty',
  severity: 'conflict',
  title: 'A file holds nothing',
  message: ({ path }) => `${path} is empty.`,
  expected: 'a heading line and at least one row',
  hint: 'Export the list again.',
  who: 'office',
};

export const FILE_TOO_LARGE: MessageEntry<{ path: string; megabytes: number }> = {
  code: 'file/too-large',
  severity: 'conflict',
  title: 'A file is too large to be a list',
  message: ({ path, megabytes }) => `${path} holds more than ${megabytes} MB: it isn't read.`,
  expected: ({ megabytes }) => `a CSV text of at most ${megabytes} MB`,
  hint: 'Check that it is a list; give a large batch as several files.',
  who: 'office',
};

export const FILE_TOO_MANY_ROWS: MessageEntry<{ path: string; rows: number; most: number }> = {
  code: 'file/too-many-rows',
  severity: 'conflict',
  title: 'A file has more rows than are read',
  message: ({ path, rows, most }) => `${path} has ${rows} rows: a file of more than ${most} isn't read.`,
  found: ({ rows }) => `${rows} rows`,
  expected: ({ most }) => `at most ${most} rows`,
  hint: 'Check that it is a list; give a large batch as several files.',
  who: 'office',
};

export const FILE_NOT_TEXT: MessageEntry<{ path: string; kind: string }> = {
  code: 'file/not-text',
  severity: 'conflict',
  title: 'A file is no text, whatever its name says',
  message: ({ path, kind }) => `${path} is ${kind}, not a CSV text.`,
  found: ({ kind }) => kind,
  expected: 'a CSV text',
  hint: 'Save it as CSV (comma-separated values) and give that file.',
  who: 'office',
};

export const FOLDER_WITHOUT_LISTS: MessageEntry<{ path: string }> = {
  code: 'file/folder-without-lists',
  severity: 'conflict',
  title: 'A folder holds no lists',
  message: ({ path }) => `The folder ${path} holds no list.`,
  expected: 'files that end in .csv, .tsv or .txt (catalogue, library and job facts are not lists)',
  hint: 'Give the folder that holds the lists; folders below it are not read.',
  who: 'office',
};

export const NO_ROWS: MessageEntry<{ path: string }> = {
  code: 'file/no-rows',
  severity: 'conflict',
  title: 'A file has a heading and no rows',
  message: ({ path }) => `${path} has a heading and no rows.`,
  expected: 'at least one row under the heading',
  hint: 'Export the list again.',
  who: 'office',
};

export const ENCODING_GUESSED: MessageEntry<object> = {
  code: 'file/encoding-guessed',
  severity: 'confirm',
  title: 'A file is not UTF-8; it was read as windows-1252',
  message: () =>
    'The file is not UTF-8; it was read as windows-1252 from this line on what could be an accent or a degree sign.',
  expected: 'UTF-8',
  hint: 'Look at the names with accents; save the list as UTF-8, or state the encoding in the column map.',
  who: 'office',
};

export const UNSEEN_REMOVED: MessageEntry<{ count: number; found: string }> = {
  code: 'file/unseen-marks',
  severity: 'confirm',
  title: 'Marks that turn text around, or have no width, were taken out',
  message: ({ count }) =>
    `${count} marks that can't be seen were taken out of the file, the first on this line.`,
  found: ({ found }) => found,
  expected: 'text without marks that turn it around',
  hint: 'Compare the tags and names of that line with the source.',
  who: 'office',
};

export const CONTROL_CHARACTERS: MessageEntry<{ count: number; found: string }> = {
  code: 'file/control-characters',
  severity: 'conflict',
  title: 'A file holds NULs or other control characters',
  message: ({ count }) =>
    `The file holds ${count} control characters, the first on this line; figures and words that hold one are not read.`,
  found: ({ found }) => found,
  expected: 'text without control characters',
  hint: 'Export the list again; the file is damaged.',
  who: 'office',
};

export const QUOTE_OPEN: MessageEntry<{ found: string; lines: number }> = {
  code: 'file/quote-open',
  severity: 'conflict',
  title: 'A quotation mark is opened and not closed, so its line is not read',
  message: ({ lines }) =>
    lines === 1
      ? 'A quotation mark on this line is not closed; the line is not read, the lines after it are.'
      : `A quotation mark on this line is not closed; ${lines} lines from here on are not read.`,
  found: ({ found }) => found,
  expected: 'a closing quotation mark, and two for one inside a cell',
  hint: 'Correct the line, or export the list again.',
  who: 'office',
};

export const QUOTE_STRAY: MessageEntry<{ count: number }> = {
  code: 'file/quote-stray',
  severity: 'confirm',
  title: 'A quotation mark stands inside a cell without quotation marks around it',
  message: ({ count }) =>
    count === 1
      ? 'A quotation mark inside a cell was read as typed.'
      : `Quotation marks inside cells were read as typed on ${count} lines.`,
  expected: 'a cell with a quotation mark in it between quotation marks',
  hint: 'Look whether the cells of that line stand under their headings.',
  who: 'office',
};

export const ROWS_LEFT_OUT: MessageEntry<{ lines: readonly number[]; found: string }> = {
  code: 'file/rows-left-out',
  severity: 'confirm',
  title: 'Lines were taken for totals or notes and left out',
  message: ({ lines }) =>
    `${lines.length === 1 ? 'Line' : 'Lines'} ${lines.slice(0, 8).join(', ')}${lines.length > 8 ? ` and ${lines.length - 8} more` : ''} ${lines.length === 1 ? 'was' : 'were'} taken for totals or notes and left out.`,
  found: ({ found }) => found,
  expected: 'one row for each equipment',
  hint: 'If one of them is equipment, give it a tag and a kind.',
  who: 'office',
};

export const JSON_NOT_VALID: MessageEntry<{ path: string; found: string }> = {
  code: 'json/not-valid',
  severity: 'conflict',
  title: 'A settings file or column map is no valid JSON',
  message: ({ path }) => `${path} is not valid JSON: it can't be read from this line on.`,
  found: ({ found }) => found,
  expected: 'valid JSON',
  hint: 'Look for a comma, a quotation mark or a bracket that is missing or one too many.',
  who: 'office',
};

export const JSON_KEY_TWICE: MessageEntry<{ path: string; key: string }> = {
  code: 'json/key-twice',
  severity: 'conflict',
  title: 'A settings file or column map states a key twice',
  message: ({ path, key }) => `${path} states ${key} twice; the file is not used.`,
  found: ({ key }) => key,
  expected: 'each key once',
  hint: 'Leave the one that is true.',
  who: 'office',
};

export const JSON_KEY_WRONG: MessageEntry<{ path: string; key: string; found: string; because: string }> = {
  code: 'json/key-wrong',
  severity: 'conflict',
  title: 'A key of a settings file or column map is wrong',
  message: ({ path, key, because }) => `${path}: ${key === '' ? 'the file' : key} can't be used: ${because}.`,
  found: ({ found }) => found,
  expected: 'what the JSON schema of the file says',
  hint: 'Correct the key; the schema lists the keys and their values.',
  who: 'office',
};
