import {
  CELL_WRONG,
  KIND_MISSING,
  KIND_UNCLEAR,
  KIND_CONTRADICTS,
  TAG_MISSING,
  CELLS_SURPLUS,
  CELLS_SHORT,
  QUOTE_IN_NAME,
  FIGURES_LEFT_OUT,
  JOB_MISSING,
  JOB_JOINED,
  JOB_FROM_ABOVE,
  JOB_OR_NOTE,
  JOB_CONTRADICTS,
  JOB_WITHOUT_ROWS,
  LANGUAGE_UNKNOWN,
  UNIT_UNSURE,
  CELL_CUT,
} from '../../model/messages/list.js';
import { says } from '../message-kit.js';
import { placeText } from '../origin.js';

/** Words of the messages of model/messages/list.ts. */
export const LIST_WORDS = [
  says(CELL_WRONG, {
    title: 'A cell cannot be understood',
    message: ({ field, because }) => `The ${field} can’t be understood: ${because}.`,
    found: ({ text }) => text,
    expected: ({ expected }) => expected,
    hint: ({ hint }) => hint,
  }),
  says(KIND_MISSING, {
    title: 'A row does not say what kind of equipment it is',
    message: ({ tag }) => `${tag} has no kind, so nothing can be planned for it.`,
    expected: 'a kind, such as array, charge-controller or panel',
    hint: 'Write the kind on the list, or give the model a kind in the equipment library; what carries no current, such as a rail or freight, is of kind other.',
  }),
  says(KIND_UNCLEAR, {
    title: 'The word for the kind of a row can mean several kinds',
    message: ({ text, kinds }) =>
      `"${text}" can be ${kinds.join(' or ')}: which of them isn’t stated, so nothing can be planned for the row.`,
    found: ({ text }) => text,
    expected: ({ kinds }) => kinds.join(' or '),
    hint: 'Write which of them it is, give the model its kind in the equipment library, or say under words in the column map or the settings what the word stands for.',
  }),
  says(KIND_CONTRADICTS, {
    title: 'The word for the kind of a row says otherwise than another cell of it',
    message: ({ tag, word, field, text }) =>
      `${tag} is called "${word}", and its ${field} is "${text}": these contradict each other.`,
    found: ({ text }) => text,
    expected: ({ field }) => `a ${field} that agrees with the kind`,
    hint: 'Correct one of the two cells.',
  }),
  says(TAG_MISSING, {
    title: 'A row has no tag',
    message: ({ standIn }) => `A row has no tag; it is called ${standIn} until it has one.`,
    expected: 'a tag that no other row of the job has',
    hint: 'Give the row a tag.',
  }),
  says(CELLS_SURPLUS, {
    title: 'A row has more cells than there are headings',
    message: ({ cells, headings }) =>
      `The row has ${cells} cells under ${headings} headings, so its cells may stand under the wrong headings; only its tag is read.`,
    found: ({ cells }) => `${cells} cells`,
    expected: ({ headings }) => `${headings} cells`,
    hint: 'Put cells that hold the delimiter between quotation marks, or export the list again.',
  }),
  says(CELLS_SHORT, {
    title: 'A row has fewer cells than there are headings',
    message: ({ cells, headings }) =>
      `The row has ${cells} cells under ${headings} headings, unlike the others, so its cells may stand under the wrong headings; only its tag is read.`,
    found: ({ cells }) => `${cells} cells`,
    expected: ({ headings }) => `${headings} cells`,
    hint: 'Look which delimiter is missing, or export the list again.',
  }),
  says(QUOTE_IN_NAME, {
    title: 'A quotation mark stands inside a name or a length',
    message: () =>
      'A quotation mark stands inside a cell that has none around it, so where the cell begins and ends isn’t sure; of the row only its tag is read.',
    found: ({ found }) => found,
    expected: 'a cell between quotation marks, or without any; two for one inside a cell',
    hint: 'Correct the row, or export the list again.',
  }),
  says(FIGURES_LEFT_OUT, {
    title: 'Rows that hold figures were taken for totals or notes',
    message: ({ lines }) =>
      `${lines.length === 1 ? '1 row has' : `${lines.length} rows have`} no tag and no kind, or ${lines.length === 1 ? 'is' : 'are'} called a total, and hold${lines.length === 1 ? 's' : ''} figures: ${lines.length === 1 ? 'line' : 'lines'} ${lines.slice(0, 8).join(', ')}${lines.length > 8 ? ` and ${lines.length - 8} more` : ''}; nothing is planned for ${lines.length === 1 ? 'it' : 'them'}.`,
    found: ({ found }) => found,
    expected: 'a tag and a kind in each row of equipment',
    hint: 'If one of them is equipment, give it a tag and a kind; else confirm.',
  }),
  says(JOB_MISSING, {
    title: 'A row does not say of which job it is',
    message: ({ job }) => `The row does not say of which job it is; it was taken for ${job}.`,
    expected: 'the id of a job',
    hint: 'Write the id of its job in the row.',
  }),
  says(JOB_JOINED, {
    title: 'The cell of a job may hold another cell too',
    message: ({ text, job }) =>
      `"${text}" begins with the job of the rows around it and stands on this row only: the row was taken for one of ${job}.`,
    found: ({ text }) => text,
    expected: 'the id of a job, and what follows it under its own heading',
    hint: 'Look whether a delimiter is missing; correct the row. A job of one row: put it away from the other, or name it otherwise.',
  }),
  says(JOB_FROM_ABOVE, {
    title: 'The job stands on its first row only',
    message: ({ count }) =>
      `The job stands on its first row only; ${count} rows without one were taken for the job above them.`,
    expected: 'the id of a job',
    hint: 'Look whether the rows are under the right job.',
  }),
  says(JOB_OR_NOTE, {
    title: 'A line may be the job of the rows under it, or a note',
    message: () =>
      'The line stands alone in the job column, and the rows under it name no job: it was taken for a note, and the rows for the job above.',
    found: ({ text }) => text,
    expected: 'the id of a job in each row, or in the first row of its equipment',
    hint: 'Write the id of their job in the rows under it; take the line out, or put it into another column, if it is a note.',
  }),
  says(JOB_CONTRADICTS, {
    title: 'Two rows of a job state a fact of the job differently',
    message: ({ field, first, firstPlace, second }) =>
      `The job’s ${field} is "${first}" in ${placeText(firstPlace)} and "${second}" here; the first is used until that is settled.`,
    found: ({ second }) => second,
    expected: ({ first }) => first,
    hint: 'Leave the one that is true.',
  }),
  says(JOB_WITHOUT_ROWS, {
    title: 'A job has no equipment',
    message: ({ job }) => `The job ${job} has no equipment on the list.`,
    expected: 'at least one row of equipment',
    hint: 'Add the equipment, or take the job off the list.',
  }),
  says(LANGUAGE_UNKNOWN, {
    title: 'A language that the owner’s sheet is not written in',
    message: () =>
      'The owner’s sheet can’t be written in the language of the job; it is written in that of the settings.',
    found: ({ text }) => text,
    expected: ({ languages }) => languages,
    hint: 'State one of these languages, or have the sheet translated.',
  }),
  says(UNIT_UNSURE, {
    title: 'A figure without a unit that is far too small for its field',
    message: ({ field, text, units }) =>
      `The ${field} is ${text} without a unit, and is read in the first of ${units}: is that so?`,
    found: ({ text }) => text,
    expected: ({ expected }) => expected,
    hint: ({ units }) => `Write the unit in the cell or in the heading: ${units}.`,
  }),
  says(CELL_CUT, {
    title: 'A cell has exactly 255 characters',
    message: ({ field }) => `The ${field} has exactly 255 characters; a spreadsheet may have cut it.`,
    found: ({ text }) => text,
    expected: ({ expected }) => expected,
    hint: 'Compare its end with the source.',
  }),
];
