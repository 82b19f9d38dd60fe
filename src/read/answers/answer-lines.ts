import type { Place, Signed } from '../../model/fact.js';
import { itemAt, note } from '../../model/message.js';
import { ANSWER_MESSAGES } from '../../model/messages/answers.js';
import { QUESTION_COLUMNS, type QuestionColumn } from '../../model/questions.js';
import type { DecimalMark } from '../cell/numbers.js';
import { visible } from '../../words/visible.js';
import { saysNothing } from '../cell/yes-no.js';
import { ROWS_A_STEP, type InSteps } from '../file/in-steps.js';
import { headingIndex, type Vocabulary } from '../table/headings.js';
import type { Table } from '../table/table.js';
import { unguarded } from './cell-text.js';
import { linesOfTables, type LinesRead } from './lines-of-tables.js';

/** A line of a file of answers that says something in `answer`. */
export interface AnswerLine extends Signed {
  readonly job: string;
  /** A tag, or several with semicolons between; `` for a fact of the job. */
  readonly tag: string;
  readonly field: string;
  readonly code: string;
  readonly question: string;
  /** What the cell said when it was asked about. */
  readonly found: string;
  readonly answer: string;
  readonly place: Place;
  readonly mark: DecimalMark;
}

const VOCABULARY: Vocabulary<QuestionColumn> = {
  fields: QUESTION_COLUMNS,
  aliases: () => [],
  doubtful: () => [],
  dimension: () => null,
  identity: ['job', 'tag', 'field', 'code', 'answer'],
};

/** Without these nobody knows what a line answers. */
const NEEDED = ['job', 'tag', 'field', 'answer'] as const;

/**
 * Reads a file of answers: `questions.csv`, filled in, or a workbook of it.
 * @param name as messages call it
 * @param content of the file
 * @returns the lines that hold an answer, in their order; never throws
 */
export function* answerLines(name: string, content: Uint8Array | string): InSteps<LinesRead<AnswerLine>> {
  const index = headingIndex<QuestionColumn>(VOCABULARY, new Map());
  return yield* linesOfTables(name, content, index, linesOfTable);
}

function* linesOfTable(table: Table<QuestionColumn>): InSteps<LinesRead<AnswerLine>> {
  const name = table.file;
  const columns = new Map(table.columns.map((column) => [column.field, column]));
  const lacks = NEEDED.filter((column) => !columns.has(column));
  if (lacks.length > 0) {
    const said = note(ANSWER_MESSAGES.noColumns, { path: name, lacks });
    const item = itemAt(said, { file: name, line: table.headingLine, column: '' });
    return { lines: [], items: [], unreadable: [item] };
  }
  const lines: AnswerLine[] = [];
  let unsigned = 0;
  let firstUnsigned = 0;
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    if (table.shifted.has(r)) continue;
    const cell = (column: QuestionColumn): string => unguarded(row[columns.get(column)?.index ?? -1] ?? '');
    const answer = cell('answer');
    // Who doesn't know says so, and has answered nothing; `none` answers some fields.
    if (answer === '' || (saysNothing(answer) && answer.toLowerCase() !== 'none')) continue;
    const line = table.lines[r] ?? 0;
    const [by, date] = [visible(cell('by')), visible(cell('date'))];
    if (by === '' || !isDay(date)) {
      if (unsigned === 0) firstUnsigned = line;
      unsigned += 1;
    }
    lines.push({
      job: cell('job'),
      tag: cell('tag'),
      field: cell('field'),
      code: cell('code'),
      question: cell('question'),
      found: cell('found'),
      answer,
      by,
      date,
      place: { file: name, line, column: columns.get('answer')?.heading ?? '' },
      mark: table.mark,
    });
  }
  const items = [...table.grave, ...table.slight, ...table.shifted.values()];
  if (unsigned > 0) {
    const said = note(ANSWER_MESSAGES.unsigned, { count: unsigned });
    items.push(itemAt(said, { file: name, line: firstUnsigned, column: columns.get('by')?.heading ?? '' }));
  }
  return { lines, items, unreadable: [] };
}

/** Whether it is a day of the calendar as the contract writes it. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
