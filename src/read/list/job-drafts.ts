import { lineOf, type Fact, type Stated } from '../../model/fact.js';
import type { Accepted, Field, JobFacts, JobField, JobList, ListRow, Sheet } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import { itemAt, note } from '../../model/message.js';
import { JOB_CONTRADICTS, JOB_WITHOUT_ROWS } from '../../model/messages/list.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { visible } from '../../words/visible.js';
import type { FactColumn } from '../table/fact-columns.js';

/** A job while its rows come in. */
export interface JobDraft {
  readonly job: string;
  readonly facts: { [F in JobField]?: Fact<unknown> };
  readonly unreadable: Set<Field>;
  readonly rows: ListRow[];
  readonly items: OpenItem[];
  readonly lost: string[];
  /** Wrong cells of job facts that are said already, by field and text: a job's fact is often repeated on each of its rows. */
  readonly said: Set<string>;
  /** Cells of job facts that couldn't be understood, as typed. */
  readonly typed: { [F in Field]?: string };
  readonly accepted: Accepted[];
  readonly sheet: Sheet;
  readonly line: number;
}

/** All jobs of a batch by id, compared exactly. */
export type JobDrafts = Map<string, JobDraft>;

/** The draft of a job, begun where it is first named. */
export function draftOf(drafts: JobDrafts, job: string, sheet: Sheet, line: number): JobDraft {
  const known = drafts.get(job);
  if (known !== undefined) return known;
  const draft: JobDraft = {
    job,
    facts: {},
    unreadable: new Set(),
    rows: [],
    items: [],
    lost: [],
    said: new Set(),
    typed: {},
    accepted: [],
    sheet,
    line,
  };
  drafts.set(job, draft);
  return draft;
}

function sameValue(a: unknown, b: unknown): boolean {
  return (
    a === b ||
    (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)))
  );
}

/**
 * Takes the job facts of one row into its job: the first statement holds, another that differs is a conflict that names both lines.
 * @param draft the job
 * @param columns of job facts
 * @param row the record
 * @param from `list` or `job-facts`
 * @param file as messages name it
 * @param line of the record
 */
export function takeJobFacts(
  draft: JobDraft,
  columns: readonly FactColumn<JobField>[],
  row: readonly string[],
  from: 'list' | 'job-facts',
  file: string,
  line: number,
): void {
  for (const { field, heading, index, read } of columns) {
    const text = row[index];
    if (text === undefined || text === '') continue;
    const before = draft.facts[field];
    // Another file may mean something else by the same text: its heading's unit, its decimal mark.
    if (before?.text === text && 'file' in before.origin && before.origin.file === file) continue;
    const cell = read(text);
    if (cell.is === 'blank') continue;
    const key = `${field}\n${text}\n${file}`;
    if (cell.note !== null && !draft.said.has(key)) {
      draft.items.push(itemAt(cell.note, { file, line, column: heading }));
      draft.said.add(key);
    }
    if (cell.is === 'wrong') {
      draft.unreadable.add(field);
      draft.typed[field] ??= text;
      continue;
    }
    if (before === undefined) {
      draft.facts[field] = { value: cell.value, text, origin: { from, file, line, column: heading } };
    } else if (!sameValue(before.value, cell.value) && !draft.said.has(key)) {
      draft.said.add(key);
      const p = {
        field,
        first: visible(before.text),
        firstPlace: lineOf(before.origin),
        second: visible(text),
      };
      draft.items.push(itemAt(note(JOB_CONTRADICTS, p), { file, line, column: heading }));
    }
  }
}

/** The jobs as read, in natural order of their ids. */
export function finishJobs(drafts: JobDrafts): JobList[] {
  return [...drafts.values()]
    .sort((a, b) => byNaturalOrder(a.job, b.job))
    .map(({ job, facts, unreadable, rows, items, lost, typed, accepted, sheet, line }) => {
      if (rows.length === 0) {
        items.push(
          itemAt(note(JOB_WITHOUT_ROWS, { job: visible(job) }), {
            file: sheet.file,
            line,
            column: sheet.headings.job ?? '',
          }),
        );
      }
      const read = { job, facts: facts as Stated<JobFacts>, unreadable, rows, sheet, line, items, lost };
      const hasMore = accepted.length > 0 || Object.keys(typed).length > 0;
      return hasMore ? { ...read, typed, accepted } : read;
    });
}
