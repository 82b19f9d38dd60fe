import type { Who } from '../../model/words.js';
import type { MessageEntry } from '../message-kit.js';

/** Messages about the rows, cells and jobs of equipment lists. */

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

export const JOB_OR_NOTE: MessageEntry<{ text: string }> = {
  code: 'row/job-or-note',
  severity: 'conflict',
  title: 'A line may be the job of the rows under it, or a note',
  message: () =>
    'The line stands alone in the job column, and the rows under it name no job: it was taken for a note, and the rows for the job above.',
  found: ({ text }) => text,
  expected: 'the id of a job in each row, or in the first row of its equipment',
  hint: 'Write the id of their job in the rows under it; take the line out, or put it into another column, if it is a note.',
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

export const LANGUAGE_UNKNOWN: MessageEntry<CellAt & { readonly languages: string }> = {
  code: 'cell/language-unknown',
  severity: 'confirm',
  title: "A language that the owner's sheet is not written in",
  message: () =>
    "The owner's sheet can't be written in the language of the job; it is written in that of the settings.",
  found: ({ text }) => text,
  expected: ({ languages }) => languages,
  hint: 'State one of these languages, or have the sheet translated.',
  who: ({ who }) => who,
};

export const UNIT_UNSURE: MessageEntry<CellAt & { readonly units: string }> = {
  code: 'cell/unit-unsure',
  severity: 'confirm',
  title: 'A figure without a unit that is far too small for its field',
  message: ({ field, text, units }) =>
    `The ${field} is ${text} without a unit, and is read in the first of ${units}: is that so?`,
  found: ({ text }) => text,
  expected: ({ expected }) => expected,
  hint: ({ units }) => `Write the unit in the cell or in the heading: ${units}.`,
  who: ({ who }) => who,
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
