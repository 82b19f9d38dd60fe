import type { Field, Sheet } from '../model/list.js';
import type { OpenItem } from '../model/message.js';
import { itemAt, note } from '../text/message-kit.js';
import { JOB_FROM_ABOVE, JOB_MISSING } from '../text/messages/list.js';
import { shown } from '../text/shown.js';
import type { FactColumn } from './fact-columns.js';
import { draftOf, type JobDraft, type JobDrafts } from './job-drafts.js';
import type { Table } from './table.js';

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
  const blanks: { readonly draft: JobDraft; readonly line: number; readonly item: OpenItem | null }[] = [];
  let above: JobDraft | null = null;
  let repeats = false;
  for (const [r, row] of rows.entries()) {
    const line = lines[r] ?? 0;
    const text = row[column.index] ?? '';
    if (above !== null && text === above.job) {
      repeats = true;
      jobs.push(above);
      continue;
    }
    const cell = column.read(text);
    if (cell.is === 'value' && typeof cell.value === 'string') {
      const draft = draftOf(drafts, cell.value, sheet, line);
      if (draft === above) repeats = true;
      above = draft;
      jobs.push(draft);
      continue;
    }
    const first: boolean = above === null;
    const draft: JobDraft = above ?? draftOf(drafts, fallback, sheet, line);
    const place = { file, line, column: column.heading };
    if (cell.is === 'wrong') {
      if (cell.note !== null) draft.items.push(itemAt(cell.note, place));
    } else {
      blanks.push({
        draft,
        line,
        item: first ? itemAt(note(JOB_MISSING, { job: shown(draft.job) }), place) : null,
      });
    }
    jobs.push(draft);
  }
  let fromAbove = 0;
  for (const { draft, line, item } of blanks) {
    const missing =
      item ??
      (repeats
        ? itemAt(note(JOB_MISSING, { job: shown(draft.job) }), { file, line, column: column.heading })
        : null);
    if (missing === null) fromAbove += 1;
    else draft.items.push(missing);
  }
  const merged = blanks.find((b) => b.item === null);
  if (fromAbove > 0 && merged !== undefined) {
    merged.draft.items.push(
      itemAt(note(JOB_FROM_ABOVE, { count: fromAbove }), { file, line: merged.line, column: column.heading }),
    );
  }
  return jobs;
}
