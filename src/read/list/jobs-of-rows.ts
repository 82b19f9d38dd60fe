import type { Field, Sheet } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { JOB_FROM_ABOVE, JOB_JOINED, JOB_MISSING, JOB_OR_NOTE } from '../../model/messages/list.js';
import { visible } from '../../words/visible.js';
import type { FactColumn } from '../table/fact-columns.js';
import { draftOf, type JobDraft, type JobDrafts } from './job-drafts.js';
import type { Table } from '../table/table.js';

/** A row that doesn't state its job, and the one that it was taken for. */
interface Blank {
  readonly draft: JobDraft;
  readonly line: number;
  /** There is no job above it either. */
  readonly orphan: boolean;
}

/**
 * The job of every row. A blank job cell belongs to the job above it: where the list writes each job once that is its manner (one item to
 * confirm), where it repeats ids it is a fact that is missing.
 * @param table the list
 * @param column of the job; null: the whole list is one job
 * @param fallback the job of a list without a job column, and of rows above the first job
 * @param sheet of the list
 * @param drafts all jobs; those of the list are added
 */
export function jobsOfRows(
  table: Table<Field>,
  column: FactColumn<Field> | null,
  fallback: string,
  sheet: Sheet,
  drafts: JobDrafts,
): readonly JobDraft[] {
  const { rows, lines, file } = table;
  if (column === null) {
    const draft = draftOf(drafts, fallback, sheet, lines[0] ?? table.headingLine);
    return rows.map(() => draft);
  }
  const jobs: JobDraft[] = [];
  const blanks: Blank[] = [];
  let above: JobDraft | null = null;
  let repeats = false;
  const sure = table.shifted.size === 0 ? null : surelyNamed(table, column.index);
  for (const [r, row] of rows.entries()) {
    const typed = row[column.index] ?? '';
    // Of a row whose cells have moved, a job that no other row names is none.
    let text = sure === null || sure.has(typed) ? typed : (above?.job ?? [...sure][0] ?? typed);
    const begins = jobThatBegins(rows, column.index, r);
    if (begins !== null) {
      const line = lines[r] ?? 0;
      const neighbour = draftOf(drafts, begins, sheet, line);
      const said = note(JOB_JOINED, { text: visible(typed), job: visible(begins) });
      neighbour.items.push(itemAt(said, { file, line, column: column.heading }));
      text = begins;
    }
    if (above !== null && text === above.job) {
      repeats = true;
      jobs.push(above);
      continue;
    }
    const line = lines[r] ?? 0;
    const cell = column.read(text);
    if (cell.is === 'value' && typeof cell.value === 'string') {
      const draft: JobDraft = draftOf(drafts, cell.value, sheet, line);
      repeats ||= draft === above;
      above = draft;
      jobs.push(draft);
      continue;
    }
    const draft: JobDraft = above ?? draftOf(drafts, fallback, sheet, line);
    if (cell.is !== 'wrong') blanks.push({ draft, line, orphan: above === null });
    else if (cell.note !== null) draft.items.push(itemAt(cell.note, { file, line, column: column.heading }));
    jobs.push(draft);
  }
  sayBlanks(blanks, repeats, file, column.heading);
  for (const { line, text, column: at, row } of table.asides) {
    if (at !== column.index || column.read(rows[row]?.[at] ?? '').is !== 'blank') continue;
    jobs[row]?.items.push(itemAt(note(JOB_OR_NOTE, { text }), { file, line, column: column.heading }));
  }
  return jobs;
}

/** What rows whose cells stand under their headings have in the job's column. */
function surelyNamed({ rows, shifted }: Table<Field>, index: number): ReadonlySet<string> {
  const named = rows.flatMap((row, r) => (shifted.has(r) ? [] : [row[index] ?? '']));
  return new Set(named.filter((text) => text.trim() !== ''));
}

/**
 * The job that the cell of a row begins with, and goes on behind, where that is the job of the rows around it and the cell's own is on this
 * row only: what separates it from the next cell is missing, more likely than that one row is a job by itself.
 */
function jobThatBegins(rows: Table<Field>['rows'], index: number, at: number): string | null {
  const text = rows[at]?.[index] ?? '';
  if (text === '' || text === rows[at - 1]?.[index]) return null;
  const typed = text.trim();
  const around = [at - 2, at - 1, at + 1, at + 2].map((r) => (rows[r]?.[index] ?? '').trim());
  const begins = around.find((job) => job !== '' && job !== typed && typed.startsWith(job));
  if (begins === undefined || around.includes(typed)) return null;
  return around.filter((job) => job === begins).length > 1 ? begins : null;
}

/** Rows above the first job are said once; rows under a job once where that is the list's manner, else each. */
function sayBlanks(blanks: readonly Blank[], repeats: boolean, file: string, column: string): void {
  const missing = ({ draft, line }: Blank): void => {
    draft.items.push(itemAt(note(JOB_MISSING, { job: visible(draft.job) }), { file, line, column }));
  };
  const orphan = blanks.find((b) => b.orphan);
  if (orphan !== undefined) missing(orphan);
  const under = blanks.filter((b) => !b.orphan);
  const [first] = under;
  if (repeats) under.forEach(missing);
  else if (first !== undefined) {
    first.draft.items.push(
      itemAt(note(JOB_FROM_ABOVE, { count: under.length }), { file, line: first.line, column }),
    );
  }
}
