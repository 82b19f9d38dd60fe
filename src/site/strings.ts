import type { Fact } from '../model/fact.js';
import type { ListRow, RowFacts, RowField } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import { about } from '../model/message.js';
import { ROW_MESSAGES } from '../model/messages/rows.js';
import { lineOf } from './row-line.js';

/** Facts in which the strings of one array may differ: the index, and what is added up or taken from the longest. */
const MAY_DIFFER: ReadonlySet<RowField> = new Set<RowField>([
  'string',
  'strings_in_parallel',
  'run_length',
  'description',
  'serial',
  'quantity',
]);

/** True for rows of one tag that each state the index of a string. */
export function areStrings(rows: readonly ListRow[]): boolean {
  return rows.length > 1 && rows.every((row) => row.facts.string !== undefined);
}

/**
 * Makes one array of rows of one tag, each of which states a string.
 * @param tag the tag of the rows
 * @param rows at least two, in the order of their lines
 * @param notes gets what contradicts itself
 * @returns the first row, its strings added up, its run the longest; undefined where the rows contradict each other
 */
export function arrayOfStrings(tag: string, rows: readonly ListRow[], notes: PlacedNote[]): ListRow {
  const [first] = rows;
  if (!first) throw new Error('no rows');
  const seen = new Map<string, ListRow>();
  for (const row of rows) {
    const index = row.facts.string?.value ?? '';
    const before = seen.get(index);
    if (before) {
      const p = { tag, string: index, first: lineOf(before), second: lineOf(row) };
      notes.push(about(ROW_MESSAGES.stringTwice, p, tag, 'string'));
    } else seen.set(index, row);
  }
  const differing = differingField(rows);
  if (differing) {
    const { field, row } = differing;
    const p = { tag, field, first: lineOf(first), second: lineOf(row) };
    notes.push(about(ROW_MESSAGES.stringsDiffer, p, tag, field));
  }
  // The run of a string whose length isn't stated may be the longest.
  const facts = Object.fromEntries(Object.entries(first.facts).filter(([field]) => field !== 'run_length'));
  return { ...first, facts: { ...facts, ...addedUp(tag, rows, notes) }, unreadable: unreadableOf(rows) };
}

/** The first fact that two of the rows state otherwise; what one of them is silent about counts too. */
function differingField(rows: readonly ListRow[]): { field: RowField; row: ListRow } | undefined {
  const [first, ...others] = rows;
  if (!first) return undefined;
  for (const row of others) {
    const fields = new Set([...Object.keys(first.facts), ...Object.keys(row.facts)] as RowField[]);
    for (const field of fields) {
      if (MAY_DIFFER.has(field)) continue;
      if (JSON.stringify(first.facts[field]?.value) !== JSON.stringify(row.facts[field]?.value)) {
        return { field, row };
      }
    }
  }
  return undefined;
}

function unreadableOf(rows: readonly ListRow[]): ListRow['unreadable'] {
  return new Set(rows.flatMap((row) => [...row.unreadable]));
}

function addedUp(tag: string, rows: readonly ListRow[], notes: PlacedNote[]): Partial<ListRow['facts']> {
  const strings = rows.reduce((sum, row) => sum + (row.facts.strings_in_parallel?.value ?? 1), 0);
  const origin = rows[0]?.facts.string?.origin ?? { from: 'default', field: 'strings_in_parallel' };
  const made: { strings_in_parallel: Fact<number>; run_length?: Fact<RowFacts['run_length']> } = {
    strings_in_parallel: { value: strings, origin, text: `${rows.length}` },
  };
  const lengths = rows.map((row) => row.facts.run_length);
  if (lengths.every((fact) => fact !== undefined)) {
    const longest = lengths.reduce((a, b) => (Math.max(...b.value) > Math.max(...a.value) ? b : a));
    const shortest = Math.min(...lengths.flatMap((fact) => fact.value));
    made.run_length = longest;
    if (shortest < Math.max(...longest.value)) {
      notes.push(about(ROW_MESSAGES.stringsLongest, { tag }, tag, 'run_length'));
    }
    return made;
  }
  return made;
}
