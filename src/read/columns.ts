import type { OpenItem } from '../model/message.js';
import { itemAt, note } from '../text/message-kit.js';
import {
  HEADING_NEAR,
  HEADING_UNIT,
  HEADING_UNKNOWN,
  HEADINGS_MANY_UNKNOWN,
  HEADINGS_SAME_FIELD,
  MAP_FIELD_UNKNOWN,
} from '../text/messages/list.js';
import { nearest } from '../text/closeness.js';
import { shown } from '../text/shown.js';
import { unitOf, type Dimension, type Unit } from '../text/units.js';
import { saysNothing } from '../text/words.js';
import type { HeadingPlace } from './find-heading.js';
import { headingKey, readHeading, type HeadingIndex, type HeadingReading } from './headings.js';

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

/** Items for unknown headings beyond this many are one item. */
const MOST_UNKNOWN = 12;

export interface ChosenColumns<F extends string> {
  readonly columns: readonly Column<F>[];
  readonly refused: readonly F[];
  readonly readings: readonly Omit<ColumnReading, 'samples'>[];
  /** Index of the record of units under the heading; -1: none. */
  readonly unitsRow: number;
  readonly grave: readonly OpenItem[];
  readonly slight: readonly OpenItem[];
}

interface Found<F extends string> {
  readonly heading: string;
  readonly index: number;
  readonly reading: HeadingReading<F>;
}

/** The units of a line under the heading, by column; null where the line holds anything else. */
function unitsLine(record: readonly string[] | undefined, headings: number): (Unit | null)[] | null {
  if (record === undefined || record.length > headings) return null;
  let units = 0;
  const line: (Unit | null)[] = [];
  for (const cell of record) {
    const text = cell.trim();
    const unit = /\d/.test(text.replace(/mm2|km2/i, '')) ? null : unitOf(text);
    if (unit === null && !saysNothing(text.replace(/^[([](.*)[)\]]$/, '$1'))) return null;
    if (unit !== null) units += 1;
    line.push(unit);
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
  const where = (column: string): { file: string; line: number; column: string } => ({
    file,
    line: place.line,
    column: shown(column),
  });
  const found = findAll(place.cells, index);
  const byField = new Map<F, Found<F>[]>();
  for (const f of found) {
    if (f.reading.field !== null) byField.set(f.reading.field, [...(byField.get(f.reading.field) ?? []), f]);
  }
  const refused: F[] = [];
  const columns: Column<F>[] = [];
  const units = firstRow < 0 ? null : unitsLine(records[firstRow], place.cells.length);
  for (const [field, claimants] of byField) {
    const [one, two] = claimants;
    if (one === undefined) continue;
    if (two !== undefined) {
      refused.push(field);
      grave.push(
        itemAt(
          note(HEADINGS_SAME_FIELD, {
            field,
            headings: claimants.map((c) => `${shown(c.heading)} (column ${c.index + 1})`),
          }),
          where(one.heading),
        ),
      );
      continue;
    }
    const dimension = index.vocabulary.dimension(field);
    const under = units?.[one.index] ?? null;
    const fault =
      one.reading.fault ??
      (under !== null && dimension !== null && under.dimension !== dimension ? 'unit-wrong' : null);
    if (fault !== null) {
      refused.push(field);
      const unit = one.reading.fault === null ? (under?.symbol ?? '') : one.reading.unitText;
      grave.push(
        itemAt(
          note(HEADING_UNIT, { field, heading: shown(one.heading), unit: shown(unit) }),
          where(one.heading),
        ),
      );
      continue;
    }
    columns.push({
      field,
      heading: one.heading,
      index: one.index,
      unit: one.reading.unit ?? (dimension === null ? null : under),
      dimension,
    });
  }
  const near = unknownHeadings(found, index, byField);
  const unknown = found.filter((f) => f.reading.how === 'unknown');
  for (const f of found.filter((c) => c.reading.fault === 'field-unknown')) {
    grave.push(
      itemAt(
        note(MAP_FIELD_UNKNOWN, { heading: shown(f.heading), field: shown(f.reading.unitText) }),
        where(f.heading),
      ),
    );
  }
  for (const f of unknown.slice(0, MOST_UNKNOWN)) {
    const close = near.get(f.index) ?? null;
    if (close?.misspelt === true)
      grave.push(
        itemAt(note(HEADING_NEAR, { heading: shown(f.heading), field: close.field }), where(f.heading)),
      );
    else
      slight.push(
        itemAt(
          note(HEADING_UNKNOWN, { heading: shown(f.heading), near: close?.field ?? '' }),
          where(f.heading),
        ),
      );
  }
  if (unknown.length > MOST_UNKNOWN) {
    const rest = unknown.slice(MOST_UNKNOWN);
    slight.push(
      itemAt(
        note(HEADINGS_MANY_UNKNOWN, { count: rest.length, first: shown(rest[0]?.heading ?? '') }),
        where(rest[0]?.heading ?? ''),
      ),
    );
  }
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
      how: f.reading.field !== null && refused.includes(f.reading.field) ? 'refused' : f.reading.how,
      unit: columns.find((c) => c.index === f.index)?.unit?.symbol ?? null,
      nearest: near.get(f.index)?.field ?? null,
    })),
  };
}

function findAll<F extends string>(cells: readonly string[], index: HeadingIndex<F>): Found<F>[] {
  const seen = new Map<string, number>();
  const found: Found<F>[] = [];
  for (const [i, cell] of cells.entries()) {
    const heading = cell.trim();
    const occurrence = (seen.get(heading) ?? 0) + 1;
    seen.set(heading, occurrence);
    const reading = readHeading(index, heading, occurrence);
    if (reading.how !== 'blank') found.push({ heading, index: i, reading });
  }
  return found;
}

/** The nearest field of each heading that wasn't understood; `misspelt` where nothing else on the list is that field. */
function unknownHeadings<F extends string>(
  found: readonly Found<F>[],
  index: HeadingIndex<F>,
  taken: ReadonlyMap<F, unknown>,
): Map<number, { readonly field: F; readonly misspelt: boolean }> {
  const near = new Map<number, { field: F; misspelt: boolean }>();
  const unknown = found.filter((f) => f.reading.how === 'unknown').slice(0, MOST_UNKNOWN);
  for (const f of unknown) {
    const bare = headingKey(f.heading.replace(/[([][^()[\]]*[)\]]\s*$/, ''));
    if (bare.length < 3) continue;
    const key = nearest(bare, index.byKey.keys());
    const field = key === null ? undefined : index.byKey.get(key)?.field;
    if (field !== undefined) near.set(f.index, { field, misspelt: !taken.has(field) && bare.length >= 4 });
  }
  return near;
}
