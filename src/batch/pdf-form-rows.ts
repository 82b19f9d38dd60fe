import { itemAt, note } from '../model/message.js';
import { RECORD_MESSAGES } from '../model/messages/record.js';
import type { AnyHeading, FormName, FormRow } from '../model/site-form-rows.js';
import type { LinesRead } from '../read/answers/lines-of-tables.js';
import { readForm } from '../print/read-form.js';
import { rowsOfValues, type ValueRow } from '../site-forms/value-rows.js';

function rowsOf<H extends AnyHeading>(form: FormName, file: string, rows: readonly ValueRow<H>[]): FormRow[] {
  return rows.map(({ cells, fields }) => ({
    form,
    cells: Object.fromEntries(Object.entries<string>(cells).filter(([, text]) => text !== '')),
    file,
    // A form has fields, no lines.
    line: 0,
    columns: fields,
    units: {},
    mark: 'auto',
  }));
}

/**
 * Reads a form that a crew filled in on a screen.
 * @param file as messages name it
 * @param bytes that somebody sent
 * @returns the same rows as of the three tables, each cell at its field; never throws
 */
export async function pdfFormRows(file: string, bytes: Uint8Array): Promise<LinesRead<FormRow>> {
  const read = await readForm(bytes);
  const rows = 'fault' in read ? undefined : rowsOfValues(read.values);
  if (!rows) {
    const p = { path: file, pdfFault: 'fault' in read ? read.fault : ('no-form' as const) };
    const item = itemAt(note(RECORD_MESSAGES.noPdfForm, p), { file, line: 0, column: '' });
    return { lines: [], items: [], unreadable: [item] };
  }
  const { record, readings, facts } = rows;
  return {
    lines: [
      ...rowsOf('record', file, record),
      ...rowsOf('readings', file, readings),
      ...rowsOf('facts', file, facts),
    ],
    items: [],
    unreadable: [],
  };
}
