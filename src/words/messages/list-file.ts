import {
  FILE_NOT_THERE,
  FILE_NOT_READABLE,
  FILE_EMPTY,
  FILE_TOO_LARGE,
  FILE_TOO_MANY_ROWS,
  FILE_NOT_TEXT,
  FOLDER_WITHOUT_LISTS,
  FILES_NOT_READ,
  NO_ROWS,
  ENCODING_GUESSED,
  DECIMAL_UNSURE,
  UNSEEN_REMOVED,
  CONTROL_CHARACTERS,
  QUOTE_OPEN,
  QUOTE_STRAY,
  ROWS_LEFT_OUT,
  JSON_NOT_VALID,
  JSON_KEY_TWICE,
  JSON_KEY_WRONG,
} from '../../model/messages/list-file.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/list-file.ts. */
export const LIST_FILE_WORDS = [
  says(FILE_NOT_THERE, {
    title: 'A file that was named is not there',
    message: ({ path }) => `There is no file or folder ${path}.`,
    expected: 'a file or folder that is there',
    hint: 'Check the path.',
  }),
  says(FILE_NOT_READABLE, {
    title: 'A file could not be opened',
    message: ({ path, because }) => `${path} can’t be opened: ${because}.`,
    expected: 'a file that may be read',
    hint: 'Check the rights on the file, or save it anew.',
  }),
  says(FILE_EMPTY, {
    title: 'A file holds nothing',
    message: ({ path }) => `${path} is empty.`,
    expected: 'a heading line and at least one row',
    hint: 'Export the list again.',
  }),
  says(FILE_TOO_LARGE, {
    title: 'A file is too large to be a list',
    message: ({ path, megabytes }) => `${path} holds more than ${megabytes} MB: it isn’t read.`,
    expected: ({ megabytes }) => `a CSV text of at most ${megabytes} MB`,
    hint: 'Check that it is a list; give a large batch as several files.',
  }),
  says(FILE_NOT_TEXT, {
    title: 'A file is neither a text nor a workbook, whatever its name says',
    message: ({ path, kind }) => `${path} is ${kind}, neither a CSV text nor a workbook that can be read.`,
    found: ({ kind }) => kind,
    expected: 'a CSV text, or a workbook in .xlsx, .xlsm or .ods',
    hint: 'Save it as CSV, .xlsx or .ods and give that file.',
  }),
  says(FOLDER_WITHOUT_LISTS, {
    title: 'A folder holds no lists',
    message: ({ path }) => `The folder ${path} holds no list.`,
    expected:
      'files that end in .csv, .tsv, .txt, .xlsx, .xlsm or .ods (catalogue, library and job facts are not lists)',
    hint: 'Give the folder that holds the lists; folders below it are not read.',
  }),
  says(FILES_NOT_READ, {
    title: 'Files of a folder of lists are not read',
    message: ({ names }) =>
      `${names.length === 1 ? '1 file' : `${names.length} files`} beside the lists ${names.length === 1 ? 'isn’t' : 'aren’t'} read, by ${names.length === 1 ? 'its ending' : 'their endings'}: ${names.slice(0, 12).join(', ')}${names.length > 12 ? ` and ${names.length - 12} more` : ''}.`,
    found: ({ names }) => names.slice(0, 12).join(', '),
    expected: ({ endings }) => `lists that end in ${endings.join(', ')}`,
    hint: 'If one of them is a list, save it in one of these forms; else nothing needs doing.',
  }),
  says(NO_ROWS, {
    title: 'A file has a heading and no rows',
    message: ({ path }) => `${path} has a heading and no rows.`,
    expected: 'at least one row under the heading',
    hint: 'Export the list again.',
  }),
  says(ENCODING_GUESSED, {
    title: 'A file is not UTF-8; it was read as windows-1252',
    message: () =>
      'The file is not UTF-8; it was read as windows-1252 from this line on what could be an accent or a degree sign.',
    expected: 'UTF-8',
    hint: 'Look at the names with accents; save the list as UTF-8, or state the encoding in the column map.',
  }),
  says(DECIMAL_UNSURE, {
    title: 'Figures of a list can be read two ways, as its decimal mark is not known',
    message: ({ count }) =>
      `The decimal mark of the file isn’t known: ${count} figures of it can be read two ways, the first on this line.`,
    found: ({ found }) => found,
    expected: 'a decimal mark that is stated, or figures without marks between thousands',
    hint: 'State the mark: --decimal point or --decimal comma, or decimal under dialect in the column map.',
  }),
  says(UNSEEN_REMOVED, {
    title: 'Marks that turn text around, or have no width, were taken out',
    message: ({ count }) =>
      `${count} marks that can’t be seen were taken out of the file, the first on this line.`,
    found: ({ found }) => found,
    expected: 'text without marks that turn it around',
    hint: 'Compare the tags and names of that line with the source.',
  }),
  says(CONTROL_CHARACTERS, {
    title: 'A file holds NULs or other control characters',
    message: ({ count }) =>
      `The file holds ${count} control characters, the first on this line; figures and words that hold one are not read.`,
    found: ({ found }) => found,
    expected: 'text without control characters',
    hint: 'Export the list again; the file is damaged.',
  }),
  says(QUOTE_OPEN, {
    title: 'A quotation mark is opened and not closed, so its line is not read',
    message: ({ lines }) =>
      lines === 1
        ? 'A quotation mark on this line is not closed; the line is not read, the lines after it are.'
        : `A quotation mark on this line is not closed; ${lines} lines from here on are not read.`,
    found: ({ found }) => found,
    expected: 'a closing quotation mark, and two for one inside a cell',
    hint: 'Correct the line, or export the list again.',
  }),
  says(QUOTE_STRAY, {
    title: 'A quotation mark stands inside a cell without quotation marks around it',
    message: ({ count }) =>
      count === 1
        ? 'A quotation mark inside a cell was read as typed.'
        : `Quotation marks inside cells were read as typed on ${count} lines.`,
    expected: 'a cell with a quotation mark in it between quotation marks',
    hint: 'Look whether the cells of that line stand under their headings.',
  }),
  says(ROWS_LEFT_OUT, {
    title: 'Lines were taken for titles, totals or notes and left out',
    message: ({ lines }) =>
      `${lines.length === 1 ? '1 line was' : `${lines.length} lines were`} taken for titles, totals or notes and left out: ${lines.length === 1 ? 'line' : 'lines'} ${lines.slice(0, 8).join(', ')}${lines.length > 8 ? ` and ${lines.length - 8} more` : ''}.`,
    found: ({ found }) => found,
    expected: 'one row for each equipment',
    hint: 'If one of them is equipment, give it a tag and a kind.',
  }),
  says(JSON_NOT_VALID, {
    title: 'A settings file or column map is no valid JSON',
    message: ({ path }) => `${path} is not valid JSON: it can’t be read from this line on.`,
    found: ({ found }) => found,
    expected: 'valid JSON',
    hint: 'Look for a comma, a quotation mark or a bracket that is missing or one too many.',
  }),
  says(JSON_KEY_TWICE, {
    title: 'A settings file or column map states a key twice',
    message: ({ path, key }) => `${path} states ${key} twice; the file is not used.`,
    found: ({ key }) => key,
    expected: 'each key once',
    hint: 'Leave the one that is true.',
  }),
  says(JSON_KEY_WRONG, {
    title: 'A key of a settings file or column map is wrong',
    message: ({ path, key, because }) =>
      `${path}: ${key === '' ? 'the file' : key} can’t be used: ${because}.`,
    found: ({ found }) => found,
    expected: 'what the JSON schema of the file says',
    hint: 'Correct the key; the schema lists the keys and their values.',
  }),
  says(FILE_TOO_MANY_ROWS, {
    title: 'A file has more rows than are read',
    message: ({ path, most }) => `${path} has more than ${most} rows: it isn’t read.`,
    found: ({ most }) => `more than ${most} rows`,
    expected: ({ most }) => `at most ${most} rows`,
    hint: 'Check that it is a list; give a large batch as several files.',
  }),
];
