import { message } from '../message.js';

/** Messages about how a file is written, and why it can't be read. */

export const FILE_NOT_THERE = message<{ path: string }>('file/not-there', 'conflict', 'office');

export const FILE_NOT_READABLE = message<{ path: string; because: string }>(
  'file/not-readable',
  'conflict',
  'office',
);

export const FILE_EMPTY = message<{ path: string }>('file/empty', 'conflict', 'office');

export const FILE_TOO_LARGE = message<{ path: string; megabytes: number }>(
  'file/too-large',
  'conflict',
  'office',
);

export const FILE_NOT_TEXT = message<{ path: string; kind: string }>('file/not-text', 'conflict', 'office');

export const FOLDER_WITHOUT_LISTS = message<{ path: string }>(
  'file/folder-without-lists',
  'conflict',
  'office',
);

/** Files of a folder that are no lists by their endings; the endings of those that are. */
export const FILES_NOT_READ = message<{ names: readonly string[]; endings: readonly string[] }>(
  'file/not-a-list',
  'confirm',
  'office',
);

export const NO_ROWS = message<{ path: string }>('file/no-rows', 'conflict', 'office');

export const ENCODING_GUESSED = message<object>('file/encoding-guessed', 'confirm', 'office');

export const DECIMAL_UNSURE = message<{ count: number; found: string }>(
  'file/decimal-unsure',
  'conflict',
  'office',
);

export const UNSEEN_REMOVED = message<{ count: number; found: string }>(
  'file/unseen-marks',
  'confirm',
  'office',
);

export const CONTROL_CHARACTERS = message<{ count: number; found: string }>(
  'file/control-characters',
  'conflict',
  'office',
);

export const QUOTE_OPEN = message<{ found: string; lines: number }>('file/quote-open', 'conflict', 'office');

export const QUOTE_STRAY = message<{ count: number }>('file/quote-stray', 'confirm', 'office');

export const ROWS_LEFT_OUT = message<{ lines: readonly number[]; found: string }>(
  'file/rows-left-out',
  'confirm',
  'office',
);

export const JSON_NOT_VALID = message<{ path: string; found: string }>(
  'json/not-valid',
  'conflict',
  'office',
);

export const JSON_KEY_TWICE = message<{ path: string; key: string }>('json/key-twice', 'conflict', 'office');

export const JSON_KEY_WRONG = message<{ path: string; key: string; found: string; because: string }>(
  'json/key-wrong',
  'conflict',
  'office',
);

export const FILE_TOO_MANY_ROWS = message<{ path: string; most: number }>(
  'file/too-many-rows',
  'conflict',
  'office',
);
