import type { Fact, Stated } from '../../model/fact.js';
import { FIELD_NAMES } from '../../model/fields.js';
import type { Field, ListRow, RowFacts, RowField, Sheet } from '../../model/list.js';
import { itemAt, note } from '../../model/message.js';
import { KIND_MISSING, TAG_MISSING } from '../../model/messages/list.js';
import type { Note } from '../../model/open-item.js';
import { visible } from '../../words/visible.js';
import type { CellReading } from '../cell/cell-reading.js';
import { takeAlsoStated, type RowInHand } from '../cell/kind-facts.js';
import type { FactColumn } from '../table/fact-columns.js';
import type { JobDraft } from './job-drafts.js';
import type { LibraryJoin } from './library-join.js';
import { takeAnswer, takeSupplied } from './supplied-row.js';
import type { Supply } from './supply.js';
import { isRowField } from '../table/list-vocabulary.js';

/** The columns of a list's rows, its sheet, and what is known of the list as a whole. */
export interface RowColumns {
  readonly sheet: Sheet;
  readonly file: string;
  readonly tag: FactColumn<RowField> | null;
  /** All but the tag. */
  readonly others: readonly FactColumn<RowField>[];
  /** Fields that no row of the list can state, because two headings claim them or a heading's unit is wrong. */
  readonly refused: ReadonlySet<Field>;
  /** The list has no column of tags, or two: said once for the list. */
  readonly tagSaid: boolean;
}

const ALL_BUT_TAG: ReadonlySet<Field> = new Set(FIELD_NAMES.filter((f) => isRowField(f) && f !== 'tag'));

interface Tag {
  readonly tag: string;
  readonly fact: Fact<string>;
  readonly missing: boolean;
}

function tagOf(columns: RowColumns, row: readonly string[], line: number, draft: JobDraft): Tag {
  const { tag: column, file } = columns;
  const standIn = `row-${line}`;
  const text = column === null ? '' : (row[column.index] ?? '');
  const heading = column?.heading ?? '';
  const origin = { from: 'list' as const, file, line, column: heading };
  const cell = column?.read(text);
  if (cell?.is === 'value' && typeof cell.value === 'string') {
    if (cell.note !== null) draft.items.push(itemAt(cell.note, { file, line, column: heading }, cell.value));
    return { tag: cell.value, fact: { value: cell.value, text, origin }, missing: false };
  }
  if (cell?.is === 'wrong' && cell.note !== null)
    draft.items.push(itemAt(cell.note, { file, line, column: heading }, standIn));
  else if (cell?.is !== 'wrong' && !columns.tagSaid)
    draft.items.push(itemAt(note(TAG_MISSING, { standIn }), { file, line, column: heading }, standIn));
  return { tag: standIn, fact: { value: standIn, text, origin }, missing: true };
}

/** A row whose cells may stand under the wrong headings: its tag is kept, so that what connects to it finds it. */
export function takeShiftedRow(
  columns: RowColumns,
  row: readonly string[],
  line: number,
  draft: JobDraft,
): void {
  const { fact } = tagOf({ ...columns, tagSaid: true }, row, line, draft);
  draft.rows.push({ sheet: columns.sheet, line, facts: { tag: fact }, unreadable: ALL_BUT_TAG });
}

/**
 * Reads one row into its job: every cell that says something becomes a fact with its place, or one item where it can't be understood.
 * @param columns of the list
 * @param row the record
 * @param line of the record
 * @param draft the row's job
 * @param feet a bare length is in feet
 * @param library fills in what the row doesn't state
 * @param supplied answers, which go before the row's cells, and equipment facts, which go behind them; undefined: there are none
 */
export function takeRow(
  columns: RowColumns,
  row: readonly string[],
  line: number,
  draft: JobDraft,
  feet: boolean,
  library: LibraryJoin,
  supplied?: Supply,
): void {
  const { file, sheet } = columns;
  const { tag, fact, missing } = tagOf(columns, row, line, draft);
  const supply = missing ? undefined : supplied?.ofRow(draft.job, tag);
  const at = { draft, tag, file, line, feet };
  let typed: ListRow['typed'];
  let unreadable: Set<Field> | null = null;
  if (missing) unreadable = new Set<Field>(columns.refused).add('tag');
  const facts: RowInHand = { tag: fact };
  let kind: CellReading | null = null;
  for (const { field, heading, index, read } of columns.others) {
    const text = row[index];
    if (supply === undefined && (text === undefined || text === '')) continue;
    const cell = read(text ?? '');
    const shown = { text: text ?? '', reading: cell };
    const answer = supply && takeAnswer(supply, { field, heading }, shown, at, facts);
    if (answer) {
      if (field === 'kind') kind = answer;
      continue;
    }
    if (text === undefined || cell.is === 'blank') continue;
    if (field === 'kind') kind = cell;
    if (cell.is === 'wrong') typed = { ...typed, [field]: text };
    if (cell.is === 'wrong' && cell.either !== undefined) continue;
    if (cell.note !== null) draft.items.push(itemAt(cell.note, { file, line, column: heading }, tag));
    if (cell.is === 'wrong') {
      unreadable ??= new Set<Field>(columns.refused);
      unreadable.add(field);
      continue;
    }
    const value = feet && cell.feet !== null ? cell.feet : cell.value;
    facts[field] = { value, origin: { from: 'list', file, line, column: heading }, text };
  }
  const refused: ReadonlySet<Field> = unreadable ?? columns.refused;
  if (supply !== undefined) {
    const has = new Set(columns.others.map((column) => column.field));
    kind = takeSupplied(supply, has, refused, at, facts) ?? kind;
  }
  if (kind?.is === 'value' && kind.also !== undefined) {
    const { field } = kind.also;
    const contradicts = takeAlsoStated(facts, refused, kind.also, tag);
    const column = sheet.headings[field] ?? '';
    if (contradicts !== null) draft.items.push(itemAt(contradicts, { file, line, column }, tag));
  }
  library(facts, refused, draft, { sheet, line, tag });
  const asked = refused.has('kind') ? null : kindAsked(kind, facts, tag);
  if (asked !== null) {
    unreadable ??= new Set<Field>(columns.refused);
    unreadable.add('kind');
    if (facts.kind !== undefined) typed = { ...typed, kind: facts.kind.text };
    delete facts.kind;
    draft.items.push(itemAt(asked, { file, line, column: sheet.headings.kind ?? '' }, tag));
  }
  const read: ListRow = {
    sheet,
    line,
    facts: facts as Stated<RowFacts>,
    unreadable: unreadable ?? columns.refused,
  };
  const mayBe = kind?.is === 'value' ? kind.mayBe : undefined;
  const known = typed === undefined ? read : { ...read, typed };
  draft.rows.push(mayBe === undefined ? known : { ...known, mayBe });
}

/** What is to be asked about the kind of a row: that of its model, where the library knows it, settles a word that can be several. */
function kindAsked(cell: CellReading | null, facts: RowInHand, tag: string): Note | null {
  const known = facts.kind?.value;
  if (cell?.is === 'wrong' && cell.either !== undefined)
    return cell.either.some((kind) => kind === known) ? null : cell.note;
  return known === undefined ? note(KIND_MISSING, { tag: visible(tag) }) : null;
}
