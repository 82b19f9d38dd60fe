import type { Field, JobField } from '../../model/list.js';
import type { OpenItem } from '../../model/open-item.js';
import { itemAt, note } from '../../model/message.js';
import {
  JOB_FACTS_NO_JOB,
  JOB_FACTS_NO_JOB_COLUMN,
  JOB_FACTS_UNKNOWN_JOB,
} from '../../model/messages/company-files.js';
import { visible } from '../../words/visible.js';
import { ROWS_A_STEP, type InSteps } from '../file/in-steps.js';
import { factColumns, type FactColumn } from '../table/fact-columns.js';
import { headingIndex } from '../table/headings.js';
import { takeJobFacts, type JobDrafts } from './job-drafts.js';
import { isJobField, JOB_FACTS_VOCABULARY } from '../table/list-vocabulary.js';
import type { ListOptions, NamedContent } from './list-options.js';
import type { Table } from '../table/table.js';
import { readingTables } from '../table/tables.js';

/** What came of a file of job facts besides the facts. */
export interface JobFactsTaken {
  readonly items: readonly OpenItem[];
  readonly unreadable: readonly OpenItem[];
}

/**
 * Takes a CSV or workbook of job facts into the jobs of the lists; a fact that a list states otherwise is a conflict that names both lines.
 * @param file the CSV or workbook
 * @param drafts the jobs of the lists
 * @param options settings and column map
 */
export function* takeJobFactsFile(
  file: NamedContent,
  drafts: JobDrafts,
  options: ListOptions,
): InSteps<JobFactsTaken> {
  const map = new Map(Object.entries(options.columns?.columns ?? {}));
  const index = headingIndex<Field>(JOB_FACTS_VOCABULARY, map);
  const read = yield* readingTables<Field>(file.name, file.content, index);
  const items: OpenItem[] = [...read.items];
  const unreadable: OpenItem[] = [...read.unreadable];
  for (const table of read.tables) {
    const taken = yield* takeJobFactsTable(table, drafts, options);
    items.push(...taken.items);
    unreadable.push(...taken.unreadable);
  }
  return { items, unreadable };
}

function* takeJobFactsTable(
  table: Table<Field>,
  drafts: JobDrafts,
  options: ListOptions,
): InSteps<JobFactsTaken> {
  const { file } = table;
  const readers = factColumns(table.columns, table.mark, options.settings, options.columns);
  const job = readers.find((c) => c.field === 'job');
  if (job === undefined) {
    return {
      items: [],
      unreadable: [
        itemAt(note(JOB_FACTS_NO_JOB_COLUMN, { path: file }), {
          file,
          line: table.headingLine,
          column: '',
        }),
      ],
    };
  }
  const items: OpenItem[] = [...table.slight];
  const columns = readers.filter((c): c is FactColumn<JobField> => isJobField(c.field));
  for (const draft of drafts.values()) {
    draft.items.push(...table.grave);
    for (const field of table.refused.keys()) draft.unreadable.add(field);
  }
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    const line = table.lines[r] ?? 0;
    const place = { file, line, column: job.heading };
    const cell = job.read(row[job.index] ?? '');
    const draft = cell.is === 'value' && typeof cell.value === 'string' ? drafts.get(cell.value) : undefined;
    if (cell.is !== 'value')
      items.push(
        itemAt(cell.is === 'wrong' && cell.note !== null ? cell.note : note(JOB_FACTS_NO_JOB, {}), place),
      );
    else if (draft === undefined)
      items.push(itemAt(note(JOB_FACTS_UNKNOWN_JOB, { job: visible(row[job.index] ?? '') }), place));
    else {
      const shifted = table.shifted.get(r);
      if (shifted === undefined) takeJobFacts(draft, columns, row, 'job-facts', file, line);
      else draft.items.push(shifted);
    }
  }
  return { items, unreadable: [] };
}
