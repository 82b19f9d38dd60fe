import type { Place } from '../../model/fact.js';
import { FIELD_NAMES } from '../../model/fields.js';
import type { Field, RowField } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { GIVEN_FACT_MESSAGES } from '../../model/messages/answers.js';
import type { OpenItem } from '../../model/open-item.js';
import type { Settings } from '../../model/settings.js';
import type { CellReading } from '../cell/cell-reading.js';
import { ROWS_A_STEP, type InSteps } from '../file/in-steps.js';
import type { ColumnMap } from '../table/column-map.js';
import type { Column } from '../table/columns.js';
import { factColumns, type FactColumn } from '../table/fact-columns.js';
import { headingIndex, type Vocabulary } from '../table/headings.js';
import { isRowField, LIST_VOCABULARY } from '../table/list-vocabulary.js';
import type { Table } from '../table/table.js';
import type { Cable, GivenFact } from './given-fact.js';
import { linesOfTables, type LinesRead } from './lines-of-tables.js';

/** A line of a file of equipment facts. */
export interface FactLine {
  readonly job: string;
  readonly tag: string;
  readonly place: Place;
  readonly facts: readonly (readonly [RowField, GivenFact])[];
  readonly cable: Cable | null;
  /** Cells that can't be understood. */
  readonly items: readonly OpenItem[];
}

/** The columns of a cable schedule, beside the fields of a row. */
const CABLE_COLUMNS = ['from', 'to', 'length'] as const;
type FactColumnName = 'job' | RowField | (typeof CABLE_COLUMNS)[number];

const VOCABULARY: Vocabulary<FactColumnName> = {
  fields: ['job', ...FIELD_NAMES.filter(isRowField), ...CABLE_COLUMNS],
  aliases: (field) => (isCableColumn(field) ? [] : LIST_VOCABULARY.aliases(field)),
  doubtful: () => [],
  dimension: (field) => (isCableColumn(field) ? lengthOf(field) : LIST_VOCABULARY.dimension(field)),
  identity: ['tag', 'from', 'to'],
};

function isCableColumn(field: FactColumnName): field is (typeof CABLE_COLUMNS)[number] {
  return CABLE_COLUMNS.some((name) => name === field);
}

function lengthOf(field: (typeof CABLE_COLUMNS)[number]): ReturnType<typeof LIST_VOCABULARY.dimension> {
  return field === 'length' ? LIST_VOCABULARY.dimension('run_length') : null;
}

/** What a file of equipment facts is read with. */
export interface FactOptions {
  readonly settings: Settings;
  readonly columns?: ColumnMap | undefined;
  /** The job of a file without a job column. */
  readonly jobOfAll: string;
}

/**
 * Reads a file of equipment facts (`job`, `tag`, then fields of a row) or a cable schedule (`job`, `from`, `to`, `length`); of a
 * workbook each sheet is one or the other.
 * @param name as messages call it
 * @param content of the file
 * @param options what it is read with
 * @returns its lines, in their order; never throws
 */
export function* factLines(
  name: string,
  content: Uint8Array | string,
  options: FactOptions,
): InSteps<LinesRead<FactLine>> {
  const map = new Map(Object.entries(options.columns?.columns ?? {}));
  const index = headingIndex<FactColumnName>(VOCABULARY, map);
  return yield* linesOfTables(name, content, index, (table, job) =>
    linesOfTable(table, { ...options, jobOfAll: job ?? options.jobOfAll }),
  );
}

function* linesOfTable(table: Table<FactColumnName>, options: FactOptions): InSteps<LinesRead<FactLine>> {
  const name = table.file;
  const columns = columnsOf(table, options);
  const lacks = lackingIn(columns);
  if (lacks.length > 0) {
    const said = note(GIVEN_FACT_MESSAGES.noColumns, { path: name, lacks });
    const item = itemAt(said, { file: name, line: table.headingLine, column: '' });
    return { lines: [], items: [], unreadable: [item] };
  }
  const lines: FactLine[] = [];
  for (const [r, row] of table.rows.entries()) {
    if (r % ROWS_A_STEP === 0) yield;
    if (!table.shifted.has(r)) lines.push(lineOf(columns, row, name, table.lines[r] ?? 0, options.jobOfAll));
  }
  return { lines, items: [...table.grave, ...table.slight, ...table.shifted.values()], unreadable: [] };
}

/** The columns of such a file, each with its reader; null: it has none. */
interface Columns {
  readonly job: FactColumn<Field> | null;
  readonly tag: FactColumn<Field> | null;
  readonly from: FactColumn<Field> | null;
  readonly to: FactColumn<Field> | null;
  readonly length: FactColumn<Field> | null;
  readonly others: readonly FactColumn<RowField>[];
}

function columnsOf(
  { columns, mark }: Table<FactColumnName>,
  { settings, columns: map }: FactOptions,
): Columns {
  const readerOf = <F extends Field>(
    column: Column<FactColumnName> | undefined,
    field: F,
  ): FactColumn<F> | null => {
    if (column === undefined) return null;
    const { heading, index, unit, dimension } = column;
    return factColumns([{ field, heading, index, unit, dimension }], mark, settings, map)[0] ?? null;
  };
  const named = (name: FactColumnName): Column<FactColumnName> | undefined =>
    columns.find(({ field }) => field === name);
  const [from, to] = [readerOf(named('from'), 'tag'), readerOf(named('to'), 'tag')];
  const isSchedule = from !== null && to !== null;
  const length = readerOf(named('length'), 'run_length');
  const others = columns.flatMap((column) => {
    const { field } = column;
    if (isCableColumn(field) || field === 'job' || field === 'tag') return [];
    return readerOf(column, field) ?? [];
  });
  return {
    job: readerOf(named('job'), 'job'),
    tag: readerOf(named('tag'), 'tag'),
    from: isSchedule ? from : null,
    to: isSchedule ? to : null,
    length: length ?? (isSchedule ? (others.find(({ field }) => field === 'run_length') ?? null) : null),
    others: isSchedule
      ? []
      : [...others, ...(length === null ? [] : [{ ...length, field: 'run_length' as const }])],
  };
}

/** The columns without which such a file says nothing. */
function lackingIn({ tag, from, to, length, others }: Columns): string[] {
  if (from !== null || to !== null) return length === null ? ['length'] : [];
  if (tag === null) return ['tag'];
  return others.length === 0 ? ['of a fact'] : [];
}

function lineOf(
  columns: Columns,
  row: readonly string[],
  file: string,
  line: number,
  jobOfAll: string,
): FactLine {
  const items: OpenItem[] = [];
  const nameIn = (column: FactColumn<Field> | null): string => {
    const reading = column?.read(row[column.index] ?? '');
    return reading?.is === 'value' && typeof reading.value === 'string' ? reading.value : '';
  };
  const factIn = (column: FactColumn<Field>): GivenFact | null => {
    const text = row[column.index] ?? '';
    const reading: CellReading = column.read(text);
    if (reading.is === 'blank') return null;
    const origin = { file, line, column: column.heading };
    if (reading.note !== null) items.push(itemAt(reading.note, origin, tag));
    return reading.is === 'wrong' ? null : { text, reading, origin };
  };
  const tag = nameIn(columns.tag);
  const facts = columns.others.flatMap((column): [RowField, GivenFact][] => {
    const fact = factIn(column);
    return fact === null ? [] : [[column.field, fact]];
  });
  const [from, to] = [nameIn(columns.from), nameIn(columns.to)];
  const length = from !== '' && to !== '' && columns.length !== null ? factIn(columns.length) : null;
  return {
    job: columns.job === null ? jobOfAll : nameIn(columns.job),
    tag,
    place: { file, line, column: '' },
    facts,
    cable: length === null ? null : { from, to, length },
    items,
  };
}
