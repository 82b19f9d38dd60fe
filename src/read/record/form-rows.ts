import { itemAt, note } from '../../model/message.js';
import { RECORD_MESSAGES } from '../../model/messages/record.js';
import type { OpenItem } from '../../model/open-item.js';
import { FACT_HEADINGS, READING_HEADINGS, RECORD_HEADINGS } from '../../model/site-form-headings.js';
import {
  DEVIATION_HEADINGS,
  type AnyHeading,
  type FormName,
  type FormRow,
} from '../../model/site-form-rows.js';
import { visible } from '../../words/visible.js';
import { unguarded } from '../answers/cell-text.js';
import { linesOfTables, type LinesRead } from '../answers/lines-of-tables.js';
import { ROWS_A_STEP, type InSteps } from '../file/in-steps.js';
import { headingIndex, type Vocabulary } from '../table/headings.js';
import type { Table } from '../table/table.js';

const HEADINGS: readonly AnyHeading[] = [
  ...new Set<AnyHeading>([...RECORD_HEADINGS, ...READING_HEADINGS, ...FACT_HEADINGS, ...DEVIATION_HEADINGS]),
];

const VOCABULARY: Vocabulary<AnyHeading> = {
  fields: HEADINGS,
  aliases: () => [],
  doubtful: () => [],
  dimension: (field) => (field === 'lead_length' ? 'length' : null),
  identity: ['protector', 'assumption', 'tag', 'outcome', 'serial', 'found', 'check'],
};

/** Which form a table is, by the headings that it alone has; the first that fits. */
const TOLD_BY: readonly (readonly [FormName, readonly AnyHeading[]])[] = [
  ['facts', ['assumption', 'found']],
  ['deviations', ['check', 'by']],
  ['readings', ['protector', 'kind', 'state', 'found']],
  ['record', ['protector', 'outcome']],
];

/**
 * Reads a file that a crew filled in: `site-record.csv`, `site-readings.csv`, `site-facts.csv`, `deviations.csv`, or a workbook with sheets of
 * them; which one each table is its headings say, in whatever order they stand.
 * @param name as messages call it
 * @param content of the file
 * @returns its rows, those too of which nothing was filled in; never throws
 */
export function* formRows(name: string, content: Uint8Array | string): InSteps<LinesRead<FormRow>> {
  const index = headingIndex<AnyHeading>(VOCABULARY, new Map());
  return yield* linesOfTables(name, content, index, rowsOfTable);
}

function* rowsOfTable(table: Table<AnyHeading>): InSteps<LinesRead<FormRow>> {
  const { file } = table;
  const there = new Set(table.columns.map(({ field }) => field));
  const form = TOLD_BY.find(([, headings]) => headings.every((heading) => there.has(heading)))?.[0];
  const lacks: AnyHeading[] = ['job'].filter(
    (heading): heading is 'job' => !there.has(heading as AnyHeading),
  );
  if (form === undefined || lacks.length > 0) {
    const said = note(RECORD_MESSAGES.noForm, {
      path: file,
      headings: table.columns.map(({ heading }) => visible(heading)),
    });
    const item: OpenItem = itemAt(said, { file, line: table.headingLine, column: '' });
    return { lines: [], items: [], unreadable: [item] };
  }
  const columns: Partial<Record<AnyHeading, string>> = {};
  const units: Partial<Record<AnyHeading, string>> = {};
  for (const { field, heading, unit } of table.columns) {
    if (heading !== field) columns[field] = visible(heading);
    if (unit !== null) units[field] = unit.symbol;
  }
  const lines: FormRow[] = [];
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    if (table.shifted.has(r)) continue;
    const cells: Partial<Record<AnyHeading, string>> = {};
    for (const { field, index } of table.columns) {
      const text = unguarded(row[index] ?? '');
      if (text !== '') cells[field] = text;
    }
    lines.push({ form, cells, file, line: table.lines[r] ?? 0, columns, units, mark: table.mark });
  }
  return { lines, items: [...table.grave, ...table.slight, ...table.shifted.values()], unreadable: [] };
}
