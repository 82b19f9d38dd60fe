import {
  FACT_HEADINGS,
  READING_HEADINGS,
  RECORD_HEADINGS,
  type FactHeading,
  type ReadingHeading,
  type RecordHeading,
} from '../model/site-form-headings.js';
import { ROWS_FIELD, rowsCarried } from './carried-rows.js';
import { ALL_FIELDS, fieldsOf, type FieldOf } from './field-names.js';
import type { SiteForms } from './rows.js';

/** A row of a form as it came back, and the field of each cell that was filled in there. */
export interface ValueRow<H extends string> {
  /** As the row of the table of the same name has them. */
  readonly cells: Readonly<Record<H, string>>;
  /** Name of the field by heading; none of a cell that the plan knows. */
  readonly fields: Readonly<Partial<Record<H, string>>>;
}

/** What came back of a job in a form: the same rows as in the three tables. */
export interface ValueRows {
  readonly job: string;
  readonly plan: string;
  readonly record: readonly ValueRow<RecordHeading>[];
  readonly readings: readonly ValueRow<ReadingHeading>[];
  readonly facts: readonly ValueRow<FactHeading>[];
}

/** A row on its way back: the same, of any table. */
interface Filled {
  readonly cells: Record<string, string>;
  readonly fields: Record<string, string>;
}

const filled = (row: Readonly<Record<string, string | number>>): Filled => ({
  cells: Object.fromEntries(Object.entries(row).map(([heading, cell]) => [heading, String(cell)])),
  fields: {},
});

/** The row with every heading of its table. */
function rowOf<H extends string>(headings: readonly H[], { cells, fields }: Filled): ValueRow<H> {
  const named = headings.map((heading) => [heading, cells[heading] ?? ''] as const);
  return {
    cells: Object.fromEntries(named) as Record<H, string>,
    fields: fields as Partial<Record<H, string>>,
  };
}

/**
 * The rows of a form that came back.
 * @param values of its fields by name, as someone typed or chose them; what the form didn't ask for is passed over
 * @returns undefined where the form carries no rows of ours: it isn't one, or what filled it in lost them
 */
export function rowsOfValues(values: ReadonlyMap<string, string>): ValueRows | undefined {
  const given = rowsCarried(values.get(ROWS_FIELD) ?? '');
  if (!given) return undefined;
  const fields = namesOf(given);
  if (!fields) return undefined;
  const rows = {
    record: given.record.map(filled),
    readings: given.readings.map(filled),
    facts: given.facts.map(filled),
  };
  for (const [name, { of, row, heading }] of fields) {
    const to = rows[of][row];
    if (!to) continue;
    to.fields[heading] = name;
    const value = (values.get(name) ?? '').trim();
    // The place stays that of the plan, until another is written.
    if (value !== '' || heading !== 'place') to.cells[heading] = value;
  }
  spread(rows, values);
  return {
    job: given.job,
    plan: given.plan,
    record: rows.record.map((row) => rowOf(RECORD_HEADINGS, row)),
    readings: rows.readings.map((row) => rowOf(READING_HEADINGS, row)),
    facts: rows.facts.map((row) => rowOf(FACT_HEADINGS, row)),
  };
}

/** The fields of rows that whoever sent the form may have written; undefined where two of them would be one. */
function namesOf(given: SiteForms): ReadonlyMap<string, FieldOf> | undefined {
  try {
    return fieldsOf(given);
  } catch {
    return undefined;
  }
}

/** Puts what counts everywhere, and who did the work and when, where something was written and its own is blank. */
function spread(
  { record, readings }: { readonly record: readonly Filled[]; readonly readings: readonly Filled[] },
  values: ReadonlyMap<string, string>,
): void {
  const take = (to: Filled, heading: string, value: string, field: string): void => {
    if (to.cells[heading] !== '' || value === '') return;
    to.cells[heading] = value;
    to.fields[heading] = field;
  };
  const byTag = new Map<string, Filled>();
  for (const row of record) {
    byTag.set(row.cells['protector'] ?? '', row);
    if (!isWritten(row)) continue;
    for (const { name, heading } of ALL_FIELDS) take(row, heading, (values.get(name) ?? '').trim(), name);
  }
  for (const row of readings) {
    if (row.cells['found'] === '' && row.cells['why_not'] === '') continue;
    const housing = byTag.get(row.cells['protector'] ?? '');
    for (const heading of ['date', 'name'] as const) {
      const field = housing?.fields[heading];
      if (field !== undefined) take(row, heading, housing?.cells[heading] ?? '', field);
      take(row, heading, (values.get(`all.${heading}`) ?? '').trim(), `all.${heading}`);
    }
  }
}

/** True where someone wrote into one of the row's fields. */
function isWritten({ cells, fields }: Filled): boolean {
  return Object.keys(fields).some((heading) => heading !== 'place' && cells[heading] !== '');
}
