import type { Field } from '../../model/list.js';
import type { Table } from '../table/table.js';
import type { JobDraft } from './job-drafts.js';
import type { RowColumns } from './list-rows.js';

/** A list as a table, with its rows' jobs. */
export interface OpenList {
  readonly table: Table<Field>;
  readonly columns: RowColumns;
  readonly jobs: readonly JobDraft[];
}
