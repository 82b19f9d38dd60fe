import type { Place } from '../../model/fact.js';
import type { Holds } from '../../model/item-causes.js';
import type { Note, OpenItem } from '../../model/open-item.js';
import { itemAt, note } from '../../model/message.js';
import {
  HEADING_NEAR,
  HEADING_UNIT,
  HEADING_UNKNOWN,
  HEADINGS_MANY_UNKNOWN,
  HEADINGS_SAME_FIELD,
  HEADING_TWO_FIELDS,
} from '../../model/messages/list-heading.js';
import { visible } from '../../words/visible.js';
import { unitOf, type Dimension, type Unit } from '../cell/units.js';
import { saysNothing } from '../cell/yes-no.js';
import type { HeadingPlace } from './find-heading.js';
import { holdsOf } from './holds.js';
import { nearFields, type Found, type Near } from './near-headings.js';
import { joinedFields, readHeading, type HeadingIndex, type HeadingReading } from './headings.js';

/** A column whose heading was understood. */
export interface Column<F extends string> {
  readonly field: F;
  /** As the file has it. */
  readonly heading: string;
  readonly index: number;
  readonly unit: Unit | null;
  readonly dimension: Dimension | null;
}

/** How one heading was understood, with three of its cells. */
export interface ColumnReading {
  readonly heading: string;
  readonly index: number;
  readonly field: string | null;
  readonly how: HeadingReading<string>['how'] | 'refused';
  readonly unit: string | null;
  /** The field that a heading that wasn't understood comes nearest to. */
  readonly nearest: string | null;
  readonly samples: readonly string[];
}

/** More unknown headings than this are one item: the file isn't one of headings and rows as we know them. */
const MOST_UNKNOWN = 30;
/** So many unknown headings are compared with the fields. */
const MOST_COMPARED = 200;

export interface ChosenColumns<F extends string> {
  readonly columns: readonly Column<F>[];
  /** Fields whose headings can't be used, each with the item that says why. */
  readonly refused: ReadonlyMap<F, OpenItem>;
  readonly readings: readonly Omit<ColumnReading, 'samples'>[];
  /** Index of the record of units under the heading; -1: none. */
  readonly unitsRow: number;
  readonly grave: readonly OpenItem[];
  readonly slight: readonly OpenItem[];
}

/** The column of a field, or why no heading can be it. */
function columnFor<F extends string>(
  field: F,
  claimants: readonly Found<F>[],
  dimension: Dimension | null,
  units: readonly (Unit | null)[] | null,
): Column<F> | Note {
  const [one] = claimants;
  if (one === undefined || claimants.length > 1) {
    const headings = claimants.map((c) => `${visible(c.heading)} (column ${c.index + 1})`);
    return note(HEADINGS_SAME_FIELD, { field, headings });
  }
  const { heading, index, reading } = one;
  const under = dimension === null ? null : (units?.[index] ?? null);
  if (reading.fault !== null)
    return note(HEADING_UNIT, { field, heading: visible(heading), unit: visible(reading.faultText) });
  const differs =
    under !== null &&
    (under.dimension !== dimension || (reading.unit !== null && reading.unit.symbol !== under.symbol));
  if (differs) return note(HEADING_UNIT, { field, heading: visible(heading), unit: under.symbol });
  return { field, heading, index, unit: reading.unit ?? under, dimension };
}

/**
 * The units of a line under the heading, by column: every understood column that takes a unit has one or is blank, one at least has one,
 * and every other holds nothing that could be a tag or a figure. Null where it is no such line.
 */
function unitsLine<F extends string>(
  record: readonly string[] | undefined,
  found: readonly Found<F>[],
  index: HeadingIndex<F>,
): (Unit | null)[] | null {
  if (record === undefined) return null;
  const fieldAt = new Map(found.map((f) => [f.index, f.reading.field]));
  let units = 0;
  const line: (Unit | null)[] = [];
  for (const [i, cell] of record.entries()) {
    const text = cell.trim();
    const field = fieldAt.get(i) ?? null;
    const unit = unitOf(text);
    line.push(unit);
    if (saysNothing(text.replace(/^[([](.*)[)\]]$/, '$1'))) continue;
    if (field === null ? /\d/.test(text) : unit === null || index.vocabulary.dimension(field) === null)
      return null;
    if (field !== null) units += 1;
  }
  return units > 0 ? line : null;
}

/**
 * Decides which column is which field.
 * @param file as messages name it
 * @param place the heading
 * @param index what headings may mean
 * @param records all records of the file
 * @param firstRow index of the first record under the heading that says something; -1: none
 */
export function chooseColumns<F extends string>(
  file: string,
  place: HeadingPlace,
  index: HeadingIndex<F>,
  records: readonly (readonly string[])[],
  firstRow: number,
): ChosenColumns<F> {
  const grave: OpenItem[] = [];
  const slight: OpenItem[] = [];
  const where = (column: string): Place => ({
    file,
    line: place.line,
    column: visible(column),
  });
  const found = findAll(place.cells, index);
  const byField = new Map<F, Found<F>[]>();
  for (const f of found) {
    if (f.reading.field !== null) byField.set(f.reading.field, [...(byField.get(f.reading.field) ?? []), f]);
  }
  const refused = new Map<F, OpenItem>();
  const columns: Column<F>[] = [];
  const units = firstRow < 0 ? null : unitsLine(records[firstRow], found, index);
  for (const [field, claimants] of byField) {
    const column = columnFor(field, claimants, index.vocabulary.dimension(field), units);
    if ('code' in column) {
      const item = itemAt(column, where(claimants[0]?.heading ?? ''));
      refused.set(field, item);
      grave.push(item);
    } else columns.push(column);
  }
  const near = nearFields(found, index, byField, records, firstRow);
  const holds = (column: number): Holds => holdsOf(records, firstRow, column);
  const joined = joinedHeadings(place.cells, found, index);
  sayUnknown({ found, near, joined, where, holds, mapped: index.vocabulary.mapped === true }, grave, slight);
  columns.sort((a, b) => a.index - b.index);
  return {
    columns,
    refused,
    unitsRow: units === null ? -1 : firstRow,
    grave,
    slight,
    readings: found.map((f) => ({
      heading: f.heading,
      index: f.index,
      field: f.reading.field,
      how: f.reading.field !== null && refused.has(f.reading.field) ? 'refused' : f.reading.how,
      unit: columns.find((c) => c.index === f.index)?.unit?.symbol ?? null,
      nearest: near.get(f.index)?.field ?? null,
    })),
  };
}

/** Headings that two fields were joined to, beside a blank one: what stood between them has moved. */
function joinedHeadings<F extends string>(
  cells: readonly string[],
  found: readonly Found<F>[],
  index: HeadingIndex<F>,
): ReadonlyMap<number, string> {
  const joined = new Map<number, string>();
  const blank = (at: number): boolean => cells[at] !== undefined && cells[at].trim() === '';
  for (const { heading, index: at, reading } of found.slice(0, MOST_COMPARED)) {
    if (reading.how !== 'unknown' || !(blank(at + 1) || blank(at - 1))) continue;
    const fields = joinedFields(index, heading);
    if (fields !== null) joined.set(at, fields);
  }
  return joined;
}

/** The headings of a file, and what is known of those that weren't understood. */
interface Unknown<F extends string> {
  readonly found: readonly Found<F>[];
  readonly near: Near<F>;
  readonly joined: ReadonlyMap<number, string>;
  readonly where: (column: string) => Place;
  readonly holds: (column: number) => Holds;
  /** True where a column map can say what a heading means. */
  readonly mapped: boolean;
}

/** Says of every heading that wasn't understood that it wasn't, once: a misspelt one is a question that must be settled. */
function sayUnknown<F extends string>(
  { found, near, joined, where, holds, mapped }: Unknown<F>,
  grave: OpenItem[],
  slight: OpenItem[],
): void {
  for (const { heading, reading, index } of found) {
    const fields = reading.fault === 'two-fields' ? reading.faultText : joined.get(index);
    if (fields === undefined) continue;
    const p = { heading: visible(heading), fields: visible(fields) };
    grave.push(itemAt(note(HEADING_TWO_FIELDS, p), where(heading)));
  }
  const unknown = found.filter(
    (f) => f.reading.how === 'unknown' && f.reading.fault === null && !joined.has(f.index),
  );
  const misspelt = unknown.filter((f) => near.get(f.index)?.misspelt === true);
  for (const f of misspelt) {
    const p = { heading: visible(f.heading), field: near.get(f.index)?.field ?? '', mapped };
    grave.push(itemAt(note(HEADING_NEAR, p), where(f.heading)));
  }
  const rest = unknown.filter((f) => !misspelt.includes(f));
  const [first] = rest;
  if (rest.length > MOST_UNKNOWN && first !== undefined) {
    const p = { count: rest.length, first: visible(first.heading), mapped };
    slight.push(itemAt(note(HEADINGS_MANY_UNKNOWN, p), where(first.heading)));
    return;
  }
  for (const f of rest) {
    const p = {
      heading: visible(f.heading),
      near: near.get(f.index)?.field ?? '',
      holds: holds(f.index),
      mapped,
    };
    slight.push(itemAt(note(HEADING_UNKNOWN, p), where(f.heading)));
  }
}

function findAll<F extends string>(cells: readonly string[], index: HeadingIndex<F>): Found<F>[] {
  const seen = new Map<string, number>();
  const found: Found<F>[] = [];
  for (const [i, cell] of cells.entries()) {
    // A heading of several lines is one name; messages and CSVs show it on one line.
    const heading = cell.trim().replace(/\s*\n\s*/g, ' ');
    const occurrence = (seen.get(heading) ?? 0) + 1;
    seen.set(heading, occurrence);
    const reading = readHeading(index, heading, occurrence);
    if (reading.how !== 'blank') found.push({ heading, index: i, reading });
  }
  return found;
}
