import { FIELD_NAMES } from '../../model/fields.js';
import { ANSWER_MESSAGES, GIVEN_FACT_MESSAGES } from '../../model/messages/answers.js';
import { ACCEPT } from '../../model/questions.js';
import { says } from '../message-kit.js';
import { placeText } from '../origin.js';

/** `lowest_temp of the job`, `voc_stc of ARR-1`. */
const factOf = ({ tag, field }: { readonly tag: string; readonly field: string }): string =>
  `${field === '' ? 'what was asked' : field} of ${tag === '' ? 'the job' : tag}`;

const shown = (cell: string): string => (cell === '' ? 'blank' : `"${cell}"`);

/** Words of the messages of model/messages/answers.ts. */
export const ANSWER_WORDS = [
  says(ANSWER_MESSAGES.noColumns, {
    title: 'A file of answers lacks columns',
    message: ({ path, lacks }) => `${path} can’t be read as answers: it has no column ${lacks.join(', ')}.`,
    expected: 'the columns of questions.csv: job, tag, field, code, found, answer, by, date',
    hint: 'Fill in the column answer of questions.csv, and keep its other columns as they are.',
  }),
  says(ANSWER_MESSAGES.unknownJob, {
    title: 'An answer names a job that is on no list',
    message: ({ job }) => `${job === '' ? 'No job' : `The job ${job}`} is on no list: its answer isn’t used.`,
    found: ({ job }) => job,
    expected: 'a job of the lists',
    hint: 'Write the id as the list has it, or take the line out if the job is gone.',
  }),
  says(ANSWER_MESSAGES.rowGone, {
    title: 'The row that an answer is about is gone',
    message: ({ tag, field, answer }) =>
      `The answer "${answer}" is for ${factOf({ tag, field })}, and no row of the job has that tag any more: it isn’t used.`,
    found: ({ tag }) => tag,
    expected: 'the tag of a row of the job',
    hint: 'Write the tag that the row has now, or take the answer out.',
  }),
  says(ANSWER_MESSAGES.cellChanged, {
    title: 'A cell has changed since it was asked about',
    message: (p) =>
      `The answer "${p.answer}" for ${factOf(p)} was given when the cell was ${shown(p.asked)}; now it is ${shown(p.cell)} (${placeText(p.cellPlace)}): the cell is used, not the answer.`,
    found: ({ cell }) => cell,
    expected: ({ asked }) => (asked === '' ? 'a blank cell' : asked),
    hint: 'Take the answer out if the list is right now; else write into found what the cell says now.',
  }),
  says(ANSWER_MESSAGES.notTaken, {
    title: 'A question that an answer can’t settle',
    message: ({ field, answer }) =>
      `The answer "${answer}" isn’t used: ${field === '' ? 'the line names no field' : FIELD_NAMES.some((known) => known === field) ? `${field} can be stated on the list alone` : `${field} is no field of a list`}.`,
    found: ({ answer }) => answer,
    expected: 'a field of the list, with the tag of its row where it isn’t of the job',
    hint: 'Correct the list, and take the answer out.',
  }),
  says(ANSWER_MESSAGES.needsValue, {
    title: 'What is missing or contradictory was accepted',
    message: ({ code }) =>
      `"${ACCEPT}" settles what is to be confirmed; ${code === '' ? 'the line doesn’t say what that is' : `${code} isn’t`}: the answer isn’t used.`,
    found: () => ACCEPT,
    expected: 'what the column expected says',
    hint: 'Answer with a value, or correct the list.',
  }),
  says(ANSWER_MESSAGES.acceptedOther, {
    title: 'What was accepted reads otherwise now',
    message: ({ tags, asked }) =>
      `What was accepted${tags.length === 0 ? '' : ` of ${tags.join(', ')}`} reads otherwise now, so it counts as open. It read: ${asked === '' ? 'nothing' : asked}`,
    found: ({ code }) => code,
    expected: 'the question as it is asked now',
    hint: 'Read the question in the new questions.csv, and answer that; take this answer out.',
  }),
  says(ANSWER_MESSAGES.differ, {
    title: 'Two answers to one question differ',
    message: (p) =>
      `${factOf(p)} is answered "${p.first}" in ${placeText(p.firstPlace)} and "${p.second}" here; the first is used until that is settled.`,
    found: ({ second }) => second,
    expected: ({ first }) => first,
    hint: 'Leave the one that is true.',
  }),
  says(ANSWER_MESSAGES.unsigned, {
    title: 'Answers that don’t say who gave them, or when',
    message: ({ count }) =>
      `${count === 1 ? '1 answer doesn’t' : `${count} answers don’t`} say who gave ${count === 1 ? 'it' : 'them'}, or when; papers can’t either.`,
    expected: 'a name in by, and a day as YYYY-MM-DD in date',
    hint: 'Fill in by and date.',
  }),
  says(GIVEN_FACT_MESSAGES.noColumns, {
    title: 'A file of equipment facts lacks columns',
    message: ({ path, lacks }) =>
      `${path} can’t be read as equipment facts or as a cable schedule: it has no column ${lacks.join(', ')}.`,
    expected: 'job, tag and fields of a row; or job, from, to and length',
    hint: 'Name the columns so, or say in the column map which heading is which.',
  }),
  says(GIVEN_FACT_MESSAGES.unknownJob, {
    title: 'Equipment facts or a cable of a job that is on no list',
    message: ({ job }) => `${job === '' ? 'No job' : `The job ${job}`} is on no list: the line isn’t used.`,
    found: ({ job }) => job,
    expected: 'a job of the lists',
    hint: 'Write the id as the list has it, or take the line out.',
  }),
  says(GIVEN_FACT_MESSAGES.rowGone, {
    title: 'Equipment facts of a tag that is on no row',
    message: ({ tag }) =>
      `${tag === '' ? 'The line names no tag' : `${tag} is on no row of the job`}: its facts aren’t used.`,
    found: ({ tag }) => tag,
    expected: 'the tag of a row of the job',
    hint: 'Write the tag as the list has it, or take the line out.',
  }),
  says(GIVEN_FACT_MESSAGES.differ, {
    title: 'Two lines of equipment facts differ',
    message: (p) =>
      `${factOf(p)} is "${p.first}" in ${placeText(p.firstPlace)} and "${p.second}" here; the first is used until that is settled.`,
    found: ({ second }) => second,
    expected: ({ first }) => first,
    hint: 'Leave the one that is true.',
  }),
  says(GIVEN_FACT_MESSAGES.overridden, {
    title: 'The list states a fact otherwise than the equipment facts',
    message: (p) =>
      `The ${p.field} of ${p.tag} is "${p.list}" on the list and "${p.given}" in the equipment facts (${placeText(p.givenPlace)}); the list’s is used.`,
    found: ({ list }) => list,
    expected: ({ given }) => given,
    hint: 'Correct the list or the equipment facts.',
  }),
  says(GIVEN_FACT_MESSAGES.noConnection, {
    title: 'A cable of a schedule joins rows that aren’t joined on the list',
    message: ({ from, to, length }) =>
      `The cable from ${from} to ${to} (${length}) isn’t used: neither of them connects to the other on the list.`,
    found: ({ from, to }) => `${from} to ${to}`,
    expected: 'two rows of which one names the other in connects_to',
    hint: 'Write connects_to on one of the two rows, or correct the tags of the cable.',
  }),
  says(GIVEN_FACT_MESSAGES.cablesShort, {
    title: 'A cable schedule has some cables of a row, not all',
    message: ({ tag, lacks }) =>
      `The cable schedule has no length from ${tag} to ${lacks.join(', ')}: without all of them none of the row is used.`,
    expected: 'the length to each row that connects_to names',
    hint: 'Add the cables that are missing.',
  }),
];
