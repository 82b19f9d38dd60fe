import type { MessageEntry } from '../message-kit.js';
import type { Who } from '../../model/words.js';

/** Messages about files that can't be read at all. */
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

export const NO_HEADING: MessageEntry<{ path: string; first: string }> = {
  code: 'heading/none',
  severity: 'conflict',
  title: 'No line of the file is a heading that is understood',
  message: ({ path }) => `${path} has no heading line that is understood.`,
  found: ({ first }) => first,
  expected: 'a line of headings such as job, tag, kind, connects_to',
  hint: 'Add a heading line, or say in a column map which heading means what.',
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

/** Messages about one cell. */
interface CellAt {
  readonly field: string;
  readonly text: string;
  readonly expected: string;
  readonly who: Who;
}

export const CELL_WRONG: MessageEntry<CellAt & { readonly because: string; readonly hint: string }> = {
  code: 'cell/wrong',
  severity: 'conflict',
  title: 'A cell cannot be understood',
  message: ({ field, because }) => `The ${field} can't be understood: ${because}.`,
  found: ({ text }) => text,
  expected: ({ expected }) => expected,
  hint: ({ hint }) => hint,
  who: ({ who }) => who,
};

export const KIND_MISSING: MessageEntry<{ tag: string }> = {
  code: 'row/kind-missing',
  severity: 'missing',
  title: 'A row does not say what kind of equipment it is',
  message: ({ tag }) => `${tag} has no kind, so nothing can be planned for it.`,
  expected: 'a kind, such as array, charge-controller or panel',
  hint: 'Write the kind on the list, or give the model a kind in the equipment library.',
  who: 'designer',
};

export const TAG_MISSING: MessageEntry<{ standIn: string }> = {
  code: 'row/tag-missing',
  severity: 'missing',
  title: 'A row has no tag',
  message: ({ standIn }) => `A row has no tag; it is called ${standIn} until it has one.`,
  expected: 'a tag that no other row of the job has',
  hint: 'Give the row a tag.',
  who: 'designer',
};

/** Messages about how a file is written. */
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

export const COLUMN_WITHOUT_HEADING: MessageEntry<{ column: number }> = {
  code: 'heading/blank',
  severity: 'confirm',
  title: 'A column has cells and no heading',
  message: ({ column }) => `Column ${column} has no heading; its cells are not read.`,
  expected: 'a heading over every column',
  hint: 'Give the column a heading if its cells matter.',
  who: 'office',
};

export const CELLS_SURPLUS: MessageEntry<{ cells: number; headings: number }> = {
  code: 'row/cells-surplus',
  severity: 'conflict',
  title: 'A row has more cells than there are headings',
  message: ({ cells, headings }) =>
    `The row has ${cells} cells under ${headings} headings, so its cells may stand under the wrong headings; only its tag is read.`,
  found: ({ cells }) => `${cells} cells`,
  expected: ({ headings }) => `${headings} cells`,
  hint: 'Put cells that hold the delimiter between quotation marks, or export the list again.',
  who: 'office',
};

/** Messages about headings. */
export const HEADING_UNKNOWN: MessageEntry<{ heading: string; near: string }> = {
  code: 'heading/unknown',
  severity: 'confirm',
  title: 'A heading is not known',
  message: ({ heading }) => `The heading "${heading}" is not known; its cells are not read.`,
  found: ({ heading }) => heading,
  expected: 'a field of the equipment list, or a term that is known for it',
  hint: ({ near }) =>
    near === ''
      ? 'Say in a column map which field it is, or null to leave it out.'
      : `The nearest field is ${near}; say in a column map if that is meant.`,
  who: 'office',
};

export const HEADING_NEAR: MessageEntry<{ heading: string; field: string }> = {
  code: 'heading/near',
  severity: 'conflict',
  title: 'A heading looks like a field misspelt',
  message: ({ heading, field }) =>
    `Is the heading "${heading}" meant to be ${field}? Its cells are not read until that is settled.`,
  found: ({ heading }) => heading,
  expected: ({ field }) => field,
  hint: ({ field }) =>
    `Correct the heading, or say in a column map that it is ${field}, or null to leave it out.`,
  who: 'office',
};

export const HEADINGS_MANY_UNKNOWN: MessageEntry<{ count: number; first: string }> = {
  code: 'heading/many-unknown',
  severity: 'confirm',
  title: 'Many more headings are not known',
  message: ({ count, first }) =>
    `${count} more headings are not known, from "${first}" on; their cells are not read.`,
  found: ({ first }) => first,
  expected: 'fields of the equipment list',
  hint: 'Look at them all with the columns command.',
  who: 'office',
};

export const HEADINGS_SAME_FIELD: MessageEntry<{ field: string; headings: readonly string[] }> = {
  code: 'heading/same-field',
  severity: 'conflict',
  title: 'Two headings mean one field',
  message: ({ field, headings }) => `${headings.join(' and ')} both mean ${field}; neither is read.`,
  found: ({ headings }) => headings.join('; '),
  expected: ({ field }) => `one heading for ${field}`,
  hint: 'Say in a column map which of them it is, and null for the other.',
  who: 'office',
};

export const HEADING_UNIT: MessageEntry<{ field: string; heading: string; unit: string }> = {
  code: 'heading/unit',
  severity: 'conflict',
  title: 'The unit of a heading does not fit its field',
  message: ({ field, heading, unit }) =>
    `The unit "${unit}" of the heading "${heading}" is no unit of ${field}; its cells are not read.`,
  found: ({ unit }) => unit,
  expected: ({ field }) => `a unit of ${field}`,
  hint: 'Correct the unit, or state it in a column map.',
  who: 'office',
};

export const MAP_FIELD_UNKNOWN: MessageEntry<{ heading: string; field: string }> = {
  code: 'map/field-unknown',
  severity: 'conflict',
  title: 'The column map names a field that there is none of',
  message: ({ heading, field }) =>
    `The column map says that "${heading}" is ${field}, and there is no such field.`,
  found: ({ field }) => field,
  expected: 'a field of the equipment list',
  hint: 'Correct the column map; its schema lists the fields.',
  who: 'office',
};

export const TAG_HEADING_MISSING: MessageEntry<object> = {
  code: 'heading/tag-missing',
  severity: 'missing',
  title: 'A list has no column of tags',
  message: () => 'The list has no column of tags; its rows are called by their lines (row-2, row-3).',
  expected: 'a column with a tag for each equipment',
  hint: 'Add tags, so that connections and labels can name the equipment.',
  who: 'designer',
};

/** Messages about jobs. */
export const JOB_MISSING: MessageEntry<{ job: string }> = {
  code: 'row/job-missing',
  severity: 'missing',
  title: 'A row does not say of which job it is',
  message: ({ job }) => `The row does not say of which job it is; it was taken for ${job}.`,
  expected: 'the id of a job',
  hint: 'Write the id of its job in the row.',
  who: 'office',
};

export const JOB_FROM_ABOVE: MessageEntry<{ count: number }> = {
  code: 'row/job-from-above',
  severity: 'confirm',
  title: 'The job stands on its first row only',
  message: ({ count }) =>
    `The job stands on its first row only; ${count} rows without one were taken for the job above them.`,
  expected: 'the id of a job',
  hint: 'Look whether the rows are under the right job.',
  who: 'office',
};

export const JOB_CONTRADICTS: MessageEntry<{
  field: string;
  first: string;
  firstPlace: string;
  second: string;
}> = {
  code: 'job/contradiction',
  severity: 'conflict',
  title: 'Two rows of a job state a fact of the job differently',
  message: ({ field, first, firstPlace, second }) =>
    `The job's ${field} is "${first}" in ${firstPlace} and "${second}" here; the first is used until that is settled.`,
  found: ({ second }) => second,
  expected: ({ first }) => first,
  hint: 'Leave the one that is true.',
  who: 'office',
};

export const JOB_WITHOUT_ROWS: MessageEntry<{ job: string }> = {
  code: 'job/no-rows',
  severity: 'missing',
  title: 'A job has no equipment',
  message: ({ job }) => `The job ${job} has no equipment on the list.`,
  expected: 'at least one row of equipment',
  hint: 'Add the equipment, or take the job off the list.',
  who: 'office',
};

export const CELL_CUT: MessageEntry<CellAt> = {
  code: 'cell/cut',
  severity: 'confirm',
  title: 'A cell has exactly 255 characters',
  message: ({ field }) => `The ${field} has exactly 255 characters; a spreadsheet may have cut it.`,
  found: ({ text }) => text,
  expected: ({ expected }) => expected,
  hint: 'Compare its end with the source.',
  who: ({ who }) => who,
};

/** Messages about JSON files: settings and column map. */
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

export const JSON_KEY_WRONG: MessageEntry<{ path: string; key: string; because: string }> = {
  code: 'json/key-wrong',
  severity: 'conflict',
  title: 'A key of a settings file or column map is wrong',
  message: ({ path, key, because }) => `${path}: ${key === '' ? 'the file' : key} can't be used: ${because}.`,
  found: ({ key }) => key,
  expected: 'what the JSON schema of the file says',
  hint: 'Correct the key; the schema lists the keys and their values.',
  who: 'office',
};

/** Messages about the equipment library. */
export const LIBRARY_MODEL_MISSING: MessageEntry<object> = {
  code: 'library/model-missing',
  severity: 'confirm',
  title: 'A row of the equipment library names no maker or no model',
  message: () => 'A row of the equipment library names no maker or no model; it is left out.',
  expected: 'a maker and a model',
  hint: 'Fill them in.',
  who: 'office',
};

export const LIBRARY_MODEL_TWICE: MessageEntry<{ maker: string; model: string; line: number }> = {
  code: 'library/model-twice',
  severity: 'conflict',
  title: 'A model stands in the equipment library twice',
  message: ({ maker, model, line }) =>
    `${maker} ${model} stands in the library on line ${line} already; this row is left out.`,
  found: ({ maker, model }) => `${maker} ${model}`,
  expected: 'one row for each model',
  hint: 'Leave the row that is true.',
  who: 'office',
};

export const LIBRARY_OVERRIDDEN: MessageEntry<{
  tag: string;
  field: string;
  list: string;
  library: string;
  libraryPlace: string;
}> = {
  code: 'library/overridden',
  severity: 'confirm',
  title: 'The list states a fact otherwise than the equipment library',
  message: ({ tag, field, list, library, libraryPlace }) =>
    `The ${field} of ${tag} is "${list}" on the list and "${library}" in the library (${libraryPlace}); the list's is used.`,
  found: ({ list }) => list,
  expected: ({ library }) => library,
  hint: 'Correct the list or the library.',
  who: 'office',
};

export const LIBRARY_KIND_CONTRADICTS: MessageEntry<{
  tag: string;
  list: string;
  library: string;
  libraryPlace: string;
  model: string;
}> = {
  code: 'library/kind-contradicts',
  severity: 'conflict',
  title: 'The kind on the list is not the kind of the model in the equipment library',
  message: ({ tag, list, library, libraryPlace, model }) =>
    `${tag} is of kind ${list} on the list, but its model ${model} is of kind ${library} in the library (${libraryPlace}); both can't be true.`,
  found: ({ list }) => list,
  expected: ({ library }) => library,
  hint: 'Correct the kind or the model on the list, or the library.',
  who: 'designer',
};

export const LIBRARY_NEAR: MessageEntry<{ tag: string; model: string; near: string; nearPlace: string }> = {
  code: 'library/near-miss',
  severity: 'confirm',
  title: 'A model is not in the equipment library, but one like it is',
  message: ({ tag, model, nearPlace }) =>
    `The model ${model} of ${tag} is not in the library; one like it is (${nearPlace}).`,
  found: ({ model }) => model,
  expected: ({ near }) => near,
  hint: ({ near }) => `Write ${near} if that is meant; else add the model to the library.`,
  who: 'designer',
};

/** Messages about job facts. */
export const JOB_FACTS_NO_JOB_COLUMN: MessageEntry<{ path: string }> = {
  code: 'job-facts/no-job-column',
  severity: 'conflict',
  title: 'A file of job facts has no job column',
  message: ({ path }) => `${path} has no column that says of which job its facts are.`,
  expected: 'a heading job',
  hint: 'Add a column with the id of the job.',
  who: 'office',
};

export const JOB_FACTS_NO_JOB: MessageEntry<object> = {
  code: 'job-facts/no-job',
  severity: 'confirm',
  title: 'A row of job facts names no job',
  message: () => 'A row of job facts names no job; it is left out.',
  expected: 'the id of a job',
  hint: 'Write the id of the job in the row.',
  who: 'office',
};

export const JOB_FACTS_UNKNOWN_JOB: MessageEntry<{ job: string }> = {
  code: 'job-facts/unknown-job',
  severity: 'confirm',
  title: 'Job facts are of a job that no list names',
  message: ({ job }) => `There are facts of the job ${job}, and no list names it.`,
  found: ({ job }) => job,
  expected: 'the id of a job on a list',
  hint: 'Correct the id, or give the list of that job too.',
  who: 'office',
};

/** Messages about the catalogue. */
export const PART_LEFT_OUT: MessageEntry<{ part: string; because: string; found: string; expected: string }> =
  {
    code: 'catalogue/part-left-out',
    severity: 'confirm',
    title: 'A part of the catalogue cannot be used and is left out',
    message: ({ part, because }) => `${part} is left out of the catalogue: ${because}.`,
    found: ({ found }) => found,
    expected: ({ expected }) => expected,
    hint: 'Correct the row; the part is chosen for nothing until then.',
    who: 'office',
  };

export const PART_CELL_IGNORED: MessageEntry<{
  part: string;
  field: string;
  because: string;
  found: string;
  expected: string;
}> = {
  code: 'catalogue/cell-ignored',
  severity: 'confirm',
  title: 'A cell of the catalogue that decides nothing cannot be understood',
  message: ({ part, field, because }) =>
    `The ${field} of ${part} can't be understood: ${because}; it is taken as blank.`,
  found: ({ found }) => found,
  expected: ({ expected }) => expected,
  hint: 'Correct the cell.',
  who: 'office',
};

export const PART_TWICE: MessageEntry<{ part: string; line: number }> = {
  code: 'catalogue/part-twice',
  severity: 'confirm',
  title: 'A part stands in the catalogue twice',
  message: ({ part, line }) =>
    `${part} stands in the catalogue on line ${line} already; this row is left out.`,
  found: ({ part }) => part,
  expected: 'one row for each part',
  hint: 'Leave the row that is true.',
  who: 'office',
};

export const VPR_OFF_LIST: MessageEntry<{ part: string; up: number; list: readonly number[] }> = {
  code: 'catalogue/vpr-off-list',
  severity: 'confirm',
  title: 'A voltage protection rating is none that UL 1449 knows',
  message: ({ part, up }) =>
    `The VPR of ${part} is ${up} V, which is not on the standard's list; it can't be compared with the others.`,
  found: ({ up }) => `${up} V`,
  expected: ({ list }) => `one of ${list.join(', ')} V (UL 1449, value from memory)`,
  hint: 'Look whether it is a rating of an older edition, or an Up to IEC 61643 (then up_basis is Up).',
  who: 'office',
};
