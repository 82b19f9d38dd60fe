import {
  NO_HEADING,
  COLUMN_WITHOUT_HEADING,
  HEADING_UNKNOWN,
  HEADING_AGAIN,
  HEADING_NEAR,
  QUOTE_IN_HEADING,
  HEADINGS_MANY_UNKNOWN,
  HEADINGS_SAME_FIELD,
  HEADING_UNIT,
  HEADING_TWO_FIELDS,
  MAP_HEADING_TWICE,
  TAG_HEADING_MISSING,
} from '../../model/messages/list-heading.js';
import { says } from '../message-kit.js';

/** What an office settles the headings of a source by, once for all its lists. */
const MAP = 'a column map ("shuntbook columns LIST --write columns.json" begins one)';

/** Words of the messages of model/messages/list-heading.ts. */
export const LIST_HEADING_WORDS = [
  says(NO_HEADING, {
    title: 'No line of the file is a heading that is understood',
    message: ({ path }) => `${path} has no heading line that is understood.`,
    found: ({ first }) => first,
    expected: 'a line of headings such as job, tag, kind, connects_to',
    hint: ({ mapped, list }) =>
      mapped
        ? `Let "shuntbook columns ${list} --write columns.json" begin a column map, say in it what each heading means, and run again with --columns columns.json. If the heading is another line, name it by --heading-line; if there is none, add one.`
        : 'Add a heading line with the names of the columns as README.md has them.',
  }),
  says(COLUMN_WITHOUT_HEADING, {
    title: 'A column has cells and no heading',
    message: ({ column }) => `Column ${column} has no heading; its cells are not read.`,
    expected: 'a heading over every column',
    hint: 'Give the column a heading if its cells matter.',
  }),
  says(HEADING_UNKNOWN, {
    title: 'A heading is not known',
    message: ({ heading }) => `The heading "${heading}" is not known; its cells are not read.`,
    found: ({ heading }) => heading,
    expected: ({ mapped }) =>
      mapped
        ? 'a field of the equipment list, or a term that is known for it'
        : 'a column that this file may have',
    hint: ({ near, mapped }) => {
      if (!mapped)
        return near === ''
          ? 'Rename it, or leave it as it is if its cells don’t matter.'
          : `The nearest column is ${near}; write ${near} if that is meant.`;
      return near === ''
        ? `Say in ${MAP} which field it is, or null to leave it out.`
        : `If ${near} is meant, say so in ${MAP}; else say what it is there, or null to leave it out.`;
    },
  }),
  says(HEADING_AGAIN, {
    title: 'Another heading stands among the rows',
    message: () =>
      'Another heading stands among the rows, for other columns or units; neither it nor what is under it is read.',
    found: ({ found }) => found,
    expected: 'one heading for the whole file',
    hint: 'Put what is under it into a file of its own.',
  }),
  says(QUOTE_IN_HEADING, {
    title: 'A quotation mark stands inside a heading',
    message: () =>
      'A quotation mark inside the heading line may have moved headings: the cells may stand under the wrong ones.',
    found: ({ found }) => found,
    expected: 'headings between quotation marks, or without any',
    hint: 'Correct the heading line, or export the list again.',
  }),
  says(HEADING_NEAR, {
    title: 'A heading looks like a field misspelt, or may mean one',
    message: ({ heading, field }) =>
      `Is the heading "${heading}" meant to be ${field}? Its cells are not read until that is settled.`,
    found: ({ heading }) => heading,
    expected: ({ field }) => field,
    hint: ({ field, mapped }) =>
      mapped
        ? `Say in ${MAP} whether it is ${field}, another field, or null to leave it out.`
        : `Write ${field} if that is meant; else rename the column.`,
  }),
  says(HEADINGS_MANY_UNKNOWN, {
    title: 'Many more headings are not known',
    message: ({ count, first }) =>
      `${count} more headings are not known, from "${first}" on; their cells are not read.`,
    found: ({ first }) => first,
    expected: ({ mapped }) => (mapped ? 'fields of the equipment list' : 'columns that this file may have'),
    hint: ({ mapped }) =>
      mapped ? `Say in ${MAP} what they mean.` : 'Rename those that matter; the others may stay as they are.',
  }),
  says(HEADINGS_SAME_FIELD, {
    title: 'Two headings mean one field',
    message: ({ field, headings }) => `${headings.join(' and ')} both mean ${field}; neither is read.`,
    found: ({ headings }) => headings.join('; '),
    expected: ({ field }) => `one heading for ${field}`,
    hint: 'Say in a column map which of them it is, and null for the other.',
  }),
  says(HEADING_UNIT, {
    title: 'The unit of a heading does not fit its field',
    message: ({ field, heading, unit }) =>
      `The unit "${unit}" of the heading "${heading}" is no unit of ${field}; its cells are not read.`,
    found: ({ unit }) => unit,
    expected: ({ field }) => `a unit of ${field}`,
    hint: 'Correct the unit, or state it in a column map.',
  }),
  says(HEADING_TWO_FIELDS, {
    title: 'One heading means two fields',
    message: ({ heading, fields }) => `The heading "${heading}" means ${fields}; its cells are not read.`,
    found: ({ heading }) => heading,
    expected: 'one field under each heading',
    hint: 'Export the two in columns of their own, or say in a column map which one it is.',
  }),
  says(MAP_HEADING_TWICE, {
    title: 'The column map names one heading twice',
    message: ({ path, headings }) =>
      `${path} says of ${headings.map((h) => `"${h}"`).join(' and ')} what they mean, and they are one heading.`,
    found: ({ headings }) => headings.join('; '),
    expected: 'one entry for each heading; case and blanks do not count',
    hint: 'Leave one of them; the second heading of a text is written with #2 after it.',
  }),
  says(TAG_HEADING_MISSING, {
    title: 'A list has no column of tags',
    message: () => 'The list has no column of tags; its rows are called by their lines (row-2, row-3).',
    expected: 'a column with a tag for each equipment',
    hint: 'Add tags, so that connections and labels can name the equipment.',
  }),
];
