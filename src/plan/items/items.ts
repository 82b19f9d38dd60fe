import type { OpenItem, PlacedNote } from '../../model/open-item.js';
import type { ListRow, Sheet } from '../../model/list.js';
import type { Site } from '../../model/site.js';
import { inOrder } from '../../model/item-order.js';
import { itemAt } from '../../model/message.js';

/**
 * Puts file, line and column to notes: those of the fact where it is stated, else of the row and its heading.
 *
 * One fault is one item: a cell that couldn't be read has its item already; a missing fact is asked for once, whoever asks;
 * and where a cell is missing or contradictory, what would have to be confirmed about it can wait.
 * @param notes in any order; the same one twice counts once
 * @returns in the order of `inOrder`
 */
export function placeItems(site: Site, notes: readonly PlacedNote[]): OpenItem[] {
  const rows = rowsByTag(site, new Set(notes.map((one) => one.tag)));
  const grave = new Set<string>();
  for (const { severity, tag, field } of notes) {
    if (severity !== 'confirm' && field !== '') grave.add(cellOf(rows.get(tag), field));
  }
  const isFirst = firstOfAlike();
  const items: OpenItem[] = [...site.list.items];
  for (const note of notes) {
    const { code, tag, field } = note;
    const row = rows.get(tag);
    const isFact = code.startsWith('fact/');
    const isMild = note.severity === 'confirm' && code !== 'default/used';
    if (field !== '') {
      const unreadable: ReadonlySet<string> = row?.unreadable ?? site.list.unreadable;
      if ((isFact || isMild) && unreadable.has(field)) continue;
      if (isMild && grave.size > 0 && grave.has(cellOf(row, field))) continue;
      if (isMild && field === 'connects_to' && site.inDoubt.has(tag)) continue;
    }
    if (!isFirst(note, isFact)) continue;
    items.push(itemAt(note, placeOf(site, row, field), tag, field));
  }
  return inOrder(items);
}

/**
 * @returns a function that is true for a note of which no other of the same code, tag and field had the same values, or of a fact
 *   had any. Values are compared as text, and only where there are two: few notes have one beside them.
 */
function firstOfAlike(): (note: PlacedNote, isFact: boolean) => boolean {
  const firsts = new Map<string, PlacedNote>();
  const texts = new Map<string, Set<string>>();
  return (note, isFact) => {
    const at = `${note.code}|${note.tag}|${note.field}`;
    const first = firsts.get(at);
    if (!first) {
      firsts.set(at, note);
      return true;
    }
    if (isFact) return false;
    let before = texts.get(at);
    if (!before) texts.set(at, (before = new Set([JSON.stringify(first.values)])));
    const text = JSON.stringify(note.values);
    if (before.has(text)) return false;
    before.add(text);
    return true;
  };
}

/** The rows of some tags: few of a long list have a note. */
function rowsByTag(site: Site, tags: ReadonlySet<string>): ReadonlyMap<string, ListRow> {
  const rows = new Map<string, ListRow>();
  for (const { tag, row } of site.equipments) if (tags.has(tag)) rows.set(tag, row);
  // Rows without equipment: titles of nothing, or of a quantity.
  for (const row of site.list.rows) {
    const tag = row.facts.tag?.value ?? `row-${row.line}`;
    if (tags.has(tag) && !rows.has(tag)) rows.set(tag, row);
  }
  return rows;
}

/** The cell that a note is about; rows of one quantity share it. */
function cellOf(row: ListRow | undefined, field: string): string {
  return row ? `${row.sheet.file}|${row.line}|${field}` : `|${field}`;
}

function placeOf(
  site: Site,
  row: ListRow | undefined,
  field: string,
): { file: string; line: number; column: string } {
  const facts: Readonly<Record<string, { origin: object } | undefined>> = row ? row.facts : site.list.facts;
  const origin = Object.hasOwn(facts, field) ? facts[field]?.origin : undefined;
  if (origin && 'line' in origin && 'file' in origin && 'column' in origin) {
    return { file: String(origin.file), line: Number(origin.line), column: String(origin.column) };
  }
  const sheet = row?.sheet ?? site.list.sheet;
  return { file: sheet.file, line: row?.line ?? site.list.line, column: headingOf(sheet, field) };
}

function headingOf(sheet: Sheet, field: string): string {
  const headings: Readonly<Record<string, string | undefined>> = sheet.headings;
  return Object.hasOwn(headings, field) ? (headings[field] ?? '') : '';
}
