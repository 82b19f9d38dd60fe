import { say } from '../reasons/say.js';
import { visible } from '../visible.js';
import {
  LIBRARY_MODEL_MISSING,
  LIBRARY_MODEL_TWICE,
  LIBRARY_OVERRIDDEN,
  LIBRARY_KIND_CONTRADICTS,
  LIBRARY_NEAR,
  JOB_FACTS_NO_JOB_COLUMN,
  JOB_FACTS_NO_JOB,
  JOB_FACTS_UNKNOWN_JOB,
  PART_LEFT_OUT,
  PART_CELL_IGNORED,
  PART_TWICE,
  VPR_OFF_LIST,
  WIRE_RANGE_NOT_READ,
  PART_FITS_NOTHING,
  COMPANY_NOT_STATED,
} from '../../model/messages/company-files.js';
import { says } from '../message-kit.js';
import { placeText } from '../origin.js';

/** A line of the same table, or of another sheet of its workbook. */
const lineOf = (line: number, sheet: string): string =>
  sheet === '' ? `on line ${line}` : `on line ${line} of ${sheet}`;

const COMPANY_FIELDS = {
  phone: { name: 'phone number', where: 'owner’s sheets and labels leave a blank for it' },
  licence: { name: 'licence', where: 'permit sheets leave it out' },
} as const;

/** Words of the messages of model/messages/company-files.ts. */
export const COMPANY_FILES_WORDS = [
  says(COMPANY_NOT_STATED, {
    title: 'The settings don’t state the company’s phone number or licence',
    message: (p) =>
      `The company’s ${COMPANY_FIELDS[p.field].name} isn’t stated: ${COMPANY_FIELDS[p.field].where}.`,
    expected: 'the phone number that owners call, and the licence line of permits',
    hint: 'Write it into settings.json: company.phone, company.licence.',
  }),
  says(LIBRARY_MODEL_MISSING, {
    title: 'A row of the equipment library names no maker or no model',
    message: () => 'A row of the equipment library names no maker or no model; it is left out.',
    expected: 'a maker and a model',
    hint: 'Fill them in.',
  }),
  says(LIBRARY_MODEL_TWICE, {
    title: 'A model stands in the equipment library twice',
    message: ({ maker, model, line, sheet }) =>
      `${maker} ${model} stands in the library ${lineOf(line, sheet)} already; this row is left out.`,
    found: ({ maker, model }) => `${maker} ${model}`,
    expected: 'one row for each model',
    hint: 'Leave the row that is true.',
  }),
  says(LIBRARY_OVERRIDDEN, {
    title: 'The list states a fact otherwise than the equipment library',
    message: ({ tag, field, list, library, libraryPlace }) =>
      `The ${field} of ${tag} is "${list}" on the list and "${library}" in the library (${placeText(libraryPlace)}); the list’s is used.`,
    found: ({ list }) => list,
    expected: ({ library }) => library,
    hint: 'Correct the list or the library.',
  }),
  says(LIBRARY_KIND_CONTRADICTS, {
    title: 'The kind on the list is not the kind of the model in the equipment library',
    message: ({ tag, list, library, libraryPlace, model }) =>
      `${tag} is of kind ${list} on the list, but its model ${model} is of kind ${library} in the library (${placeText(libraryPlace)}); both can’t be true.`,
    found: ({ list }) => list,
    expected: ({ library }) => library,
    hint: 'Correct the kind or the model on the list, or the library.',
  }),
  says(LIBRARY_NEAR, {
    title: 'A model is not in the equipment library, but one like it is',
    message: ({ tag, model, nearPlace }) =>
      `The model ${model} of ${tag} is not in the library; one like it is (${placeText(nearPlace)}).`,
    found: ({ model }) => model,
    expected: ({ near }) => near,
    hint: ({ near }) => `Write ${near} if that is meant; else add the model to the library.`,
  }),
  says(JOB_FACTS_NO_JOB_COLUMN, {
    title: 'A file of job facts has no job column',
    message: ({ path }) => `${path} has no column that says of which job its facts are.`,
    expected: 'a heading job',
    hint: 'Add a column with the id of the job.',
  }),
  says(JOB_FACTS_NO_JOB, {
    title: 'A row of job facts names no job',
    message: () => 'A row of job facts names no job; it is left out.',
    expected: 'the id of a job',
    hint: 'Write the id of the job in the row.',
  }),
  says(JOB_FACTS_UNKNOWN_JOB, {
    title: 'Job facts are of a job that no list names',
    message: ({ job }) => `There are facts of the job ${job}, and no list names it.`,
    found: ({ job }) => job,
    expected: 'the id of a job on a list',
    hint: 'Correct the id, or give the list of that job too.',
  }),
  says(PART_LEFT_OUT, {
    title: 'A part of the catalogue cannot be used and is left out',
    message: ({ part, because }) => `${part} is left out of the catalogue: ${because}.`,
    found: ({ found }) => found,
    expected: ({ expected }) => expected,
    hint: 'Correct the row; the part is chosen for nothing until then.',
  }),
  says(PART_CELL_IGNORED, {
    title: 'A cell of the catalogue that decides nothing cannot be understood',
    message: ({ part, field, because }) =>
      `The ${field} of ${part} can’t be understood: ${because}; it is taken as blank.`,
    found: ({ found }) => found,
    expected: ({ expected }) => expected,
    hint: 'Correct the cell.',
  }),
  says(WIRE_RANGE_NOT_READ, {
    title: 'The wire range of a part cannot be read as sizes',
    message: ({ part }) =>
      `The wire_range of ${part} can’t be read as sizes: it is printed as it stands, and no lead is held against it.`,
    found: ({ found }) => found,
    expected: ({ expected }) => expected,
    hint: 'Write the smallest and the largest wire with their unit and the metal.',
  }),
  says(PART_TWICE, {
    title: 'A part stands in the catalogue twice',
    message: ({ part, line, sheet }) =>
      `${part} stands in the catalogue ${lineOf(line, sheet)} already; this row is left out.`,
    found: ({ part }) => part,
    expected: 'one row for each part',
    hint: 'Leave the row that is true.',
  }),
  says(VPR_OFF_LIST, {
    title: 'A voltage protection rating is none that UL 1449 knows',
    message: ({ part, up }) =>
      `The VPR of ${part} is ${up} V, which is not on the standard’s list; it can’t be compared with the others.`,
    found: ({ up }) => `${up} V`,
    expected: ({ list }) => `one of ${list.join(', ')} V (UL 1449, value from memory)`,
    hint: 'Look whether it is a rating of an older edition, or an Up to IEC 61643 (then up_basis is Up).',
  }),
  says(PART_FITS_NOTHING, {
    title: 'A part of the catalogue fits none of the usual circuits',
    message: ({ part, because }) =>
      `${visible(part)} fits none of the AC systems and usual DC circuits, so it is chosen hardly anywhere. The nearest: ${because === null ? '' : say(because)}.`,
    found: ({ because }) => (because === null ? '' : say(because)),
    expected: 'a part that some circuit can take',
    hint: 'Look whether a cell of its row is blank or wrong.',
  }),
];
