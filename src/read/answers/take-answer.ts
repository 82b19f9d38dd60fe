import type { Fact, Place } from '../../model/fact.js';
import type { Field } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { ANSWER_MESSAGES } from '../../model/messages/answers.js';
import { visible } from '../../words/visible.js';
import type { CellReading } from '../cell/cell-reading.js';
import type { Answer, JobAnswers, JobToSupply } from './answers-by-row.js';
import { saysSame } from './cell-text.js';
import { sameValue, valueIn } from './readers.js';

/** The cell that a question was about, as the list has it now. */
export interface CellNow extends Place {
  /** As typed; `` where the list has no such column. */
  readonly text: string;
  readonly reading: CellReading;
}

/**
 * Whether an answer goes before a cell: while that says what the question said that it says. What became of the answer is noted in it.
 * @param answer about the cell
 * @param cell as the list has it now
 * @param feet a bare length of the job is in feet
 */
export function goesBefore(answer: Answer, cell: CellNow, feet: boolean): boolean {
  const { line, reading } = answer;
  const { text, file, line: at, column } = cell;
  const isAsAsked = saysSame(line.found, text) || (line.found === '' && cell.reading.is === 'blank');
  if (isAsAsked) {
    answer.holds = true;
    return true;
  }
  if (cell.reading.is === 'value' && sameValue(valueIn(cell.reading, feet), valueIn(reading, feet)))
    answer.holds = true;
  else answer.changed ??= { cell: text, file, line: at, column };
  return false;
}

/** The fact that an answer makes. */
export function answeredFact({ line, reading }: Answer, feet: boolean): Fact<unknown> {
  const { answer, by, date, place } = line;
  return { value: valueIn(reading, feet), text: answer, origin: { from: 'answer', by, date, ...place } };
}

/** Says of each answer whose cell has changed since that it isn't used; once all rows are read. */
export function sayChanged({ ofJob, ofRows }: JobAnswers, job: JobToSupply): void {
  const say = (field: Field, { line, tag, holds, changed }: Answer): void => {
    if (holds || changed === null) return;
    const { cell, ...cellPlace } = changed;
    const p = {
      tag: visible(tag),
      field,
      answer: visible(line.answer),
      asked: visible(line.found),
      cell: visible(cell),
      cellPlace,
    };
    job.say(itemAt(note(ANSWER_MESSAGES.cellChanged, p), line.place, tag));
  };
  for (const [field, answer] of ofJob) say(field, answer);
  for (const answers of ofRows.values()) for (const [field, answer] of answers) say(field, answer);
}
