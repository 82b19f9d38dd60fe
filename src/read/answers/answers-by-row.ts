import type { Place } from '../../model/fact.js';
import { FIELD_NAMES } from '../../model/fields.js';
import type { Accepted, Field, JobField, RowField } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { ANSWER_MESSAGES } from '../../model/messages/answers.js';
import type { OpenItem } from '../../model/open-item.js';
import { ACCEPT } from '../../model/questions.js';
import { severityOf } from '../../words/messages/told.js';
import { visible } from '../../words/visible.js';
import type { CellReading } from '../cell/cell-reading.js';
import { isJobField, isRowField } from '../table/list-vocabulary.js';
import type { AnswerLine } from './answer-lines.js';
import type { AnswerReader } from './readers.js';

/** A job as far as answers and facts need to know it. */
export interface JobToSupply {
  /** The tags that its rows have. */
  readonly tags: ReadonlySet<string>;
  /** Takes an item about an answer of the job. */
  readonly say: (item: OpenItem) => void;
}

/** An answer about one fact, and what became of it. */
export interface Answer {
  readonly line: AnswerLine;
  /** The row's tag; `` for a fact of the job. */
  readonly tag: string;
  readonly reading: CellReading & { readonly is: 'value' };
  /** True once it is used, or the list says the same by now. */
  holds: boolean;
  /** What the cell says that isn't any more what was asked about. */
  changed: (Place & { readonly cell: string }) | null;
}

/** The answers of one job. */
export interface JobAnswers {
  readonly ofJob: ReadonlyMap<JobField, Answer>;
  readonly ofRows: ReadonlyMap<string, ReadonlyMap<RowField, Answer>>;
  readonly accepted: readonly Accepted[];
}

interface Gathering {
  readonly ofJob: Map<JobField, Answer>;
  readonly ofRows: Map<string, Map<RowField, Answer>>;
  readonly accepted: Accepted[];
}

/**
 * Sorts answers by what they are about. One that can't be taken becomes an item of its job that says why.
 * @param lines of all files, in their order
 * @param jobs by id
 * @param read reads an answer as a cell of its field
 * @returns by job; the items of answers whose job is on no list
 */
export function answersByJob(
  lines: readonly AnswerLine[],
  jobs: ReadonlyMap<string, JobToSupply>,
  read: AnswerReader,
): { readonly byJob: ReadonlyMap<string, JobAnswers>; readonly items: readonly OpenItem[] } {
  const byJob = new Map<string, Gathering>();
  const items: OpenItem[] = [];
  for (const line of lines) {
    const job = jobs.get(line.job);
    if (job === undefined) {
      items.push(itemAt(note(ANSWER_MESSAGES.unknownJob, { job: visible(line.job) }), line.place));
      continue;
    }
    let mine = byJob.get(line.job);
    if (mine === undefined)
      byJob.set(line.job, (mine = { ofJob: new Map(), ofRows: new Map(), accepted: [] }));
    if (line.answer.toLowerCase() === ACCEPT) takeAcceptance(line, job, mine);
    else takeAnswer(line, job, mine, read);
  }
  return { byJob, items };
}

/** The tags that a line names: a tag may hold a semicolon itself. */
function tagsOf({ tag }: AnswerLine, { tags }: JobToSupply): readonly string[] {
  if (tag === '') return [];
  if (tags.has(tag)) return [tag];
  const parts = tag.split(';').map((part) => part.trim());
  return parts.filter((part) => part !== '');
}

/** Says which of the tags no row has, and gives the others. */
function thereOf(line: AnswerLine, job: JobToSupply): readonly string[] {
  return tagsOf(line, job).filter((tag) => {
    if (job.tags.has(tag)) return true;
    const p = { tag: visible(tag), field: visible(line.field), answer: visible(line.answer) };
    job.say(itemAt(note(ANSWER_MESSAGES.rowGone, p), line.place, tag, line.field));
    return false;
  });
}

function takeAcceptance(line: AnswerLine, job: JobToSupply, mine: Gathering): void {
  const { code, question, field, by, date, place, tag } = line;
  if (severityOf(code) !== 'confirm') {
    job.say(itemAt(note(ANSWER_MESSAGES.needsValue, { code: visible(code) }), place, tag));
    return;
  }
  if (thereOf(line, job).length === 0 && tag !== '') return;
  mine.accepted.push({
    tags: tagsOf(line, job),
    field,
    code,
    question,
    by,
    date,
    file: place.file,
    line: place.line,
  });
}

function takeAnswer(line: AnswerLine, job: JobToSupply, mine: Gathering, read: AnswerReader): void {
  const field = FIELD_NAMES.find((name) => name === line.field);
  const isOfRow = field !== undefined && isRowField(field) && field !== 'tag' && line.tag !== '';
  const isOfJob = field !== undefined && isJobField(field);
  if (!isOfRow && !isOfJob) {
    const p = { field: visible(line.field), answer: visible(line.answer) };
    job.say(itemAt(note(ANSWER_MESSAGES.notTaken, p), line.place, line.tag));
    return;
  }
  const reading = read(field, line.answer, line.mark);
  if (reading.is === 'blank') return;
  if (reading.note !== null) job.say(itemAt(reading.note, line.place, line.tag));
  if (reading.is === 'wrong') return;
  if (isOfJob) put(mine.ofJob, field, { line, tag: '', reading, holds: false, changed: null }, job);
  else if (isRowField(field)) {
    for (const tag of thereOf(line, job)) {
      let ofRow = mine.ofRows.get(tag);
      if (ofRow === undefined) mine.ofRows.set(tag, (ofRow = new Map<RowField, Answer>()));
      put(ofRow, field, { line, tag, reading, holds: false, changed: null }, job);
    }
  }
}

/** Keeps the first answer to a question; another that differs is a conflict that names both. */
function put<F extends Field>(answers: Map<F, Answer>, field: F, answer: Answer, job: JobToSupply): void {
  const first = answers.get(field);
  if (first === undefined) {
    answers.set(field, answer);
    return;
  }
  const says = ({ reading }: Answer): string => JSON.stringify([reading.value, reading.feet]);
  if (says(first) === says(answer)) return;
  const p = {
    tag: visible(answer.tag),
    field,
    first: visible(first.line.answer),
    firstPlace: { ...first.line.place, column: '' },
    second: visible(answer.line.answer),
  };
  job.say(itemAt(note(ANSWER_MESSAGES.differ, p), answer.line.place, answer.tag));
}
