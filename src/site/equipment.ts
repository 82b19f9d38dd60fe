import type { Fact } from '../model/fact.js';
import type { JobList, ListRow } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import type { OrDefault, SiteEquipment } from '../model/site.js';
import { OUTDOORS_BY_DEFAULT } from '../model/words.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { ROW_MESSAGES } from '../model/messages/rows.js';
import { arrayCounts } from './array-counts.js';
import { withModules } from './modules.js';
import { lineOf } from './row-line.js';
import { areStrings, arrayOfStrings } from './strings.js';

/** One row, or one of a row of several, before its place is known. */
export interface Member {
  readonly tag: string;
  readonly row: ListRow;
  /** Tag of the row; of a quantity it names the whole group. */
  readonly group: string;
  /** 1... within its group. */
  readonly index: number;
}

/** The members of a job by tag, its groups by the tag of their row, and what was wrong with the tags. */
export interface Roll {
  readonly members: ReadonlyMap<string, Member>;
  readonly groups: ReadonlyMap<string, readonly Member[]>;
  /** Tags that are left out (a row without a kind, a made tag that is typed too) or stand on a line that can't be read: naming them is no second error. */
  readonly leftOut: ReadonlySet<string>;
  /** Rows that are left out for their kind: what they name may be fed by them. */
  readonly leftOutRows: readonly ListRow[];
  readonly notes: readonly PlacedNote[];
}

const tagOf = (row: ListRow): string => row.facts.tag?.value ?? `row-${row.line}`;

/**
 * Makes the members of a job from its rows: a quantity of N is `TAG-1`..`TAG-N`, a tag that stands twice counts once.
 * @param list the rows of one job
 * @param settle puts to a row what the company settled for its kind
 */
export function callRoll(list: JobList, settle: (row: ListRow) => ListRow): Roll {
  const notes: PlacedNote[] = [];
  const typed = typedRows(list, notes);
  for (const [tag, row] of typed) {
    const settled = settle(row);
    if (settled !== row) typed.set(tag, settled);
  }
  const leftOut = new Set<string>(list.lost);
  const leftOutRows: ListRow[] = [];
  const members = new Map<string, Member>();
  const groups = new Map<string, readonly Member[]>();
  const countsArrays = arrayCounts(typed);
  for (const [tag, row] of typed) {
    if (!row.facts.kind) {
      leftOut.add(tag);
      leftOutRows.push(row);
      if (!row.unreadable.has('kind')) notes.push(about(SITE_MESSAGES.kindMissing, { tag }, tag, 'kind'));
      continue;
    }
    const quantity = row.facts.quantity?.value ?? 1;
    const isUnclear = quantity > 1 && row.facts.kind.value === 'array' && !countsArrays(tag, row);
    if (isUnclear) notes.push(about(ROW_MESSAGES.arraysOrModules, { tag, quantity }, tag, 'quantity'));
    const made = makeGroup(tag, row, isUnclear ? 1 : quantity, typed, leftOut, notes);
    for (const member of made) members.set(member.tag, member);
    groups.set(tag, made);
  }
  return { members, groups, leftOut, leftOutRows, notes };
}

/** Rows by the name of their file and their line, which is mostly as they were read. */
function inOrderOfLines(rows: readonly ListRow[]): readonly ListRow[] {
  const order = (a: ListRow, b: ListRow): number =>
    (a.sheet === b.sheet ? 0 : byNaturalOrder(a.sheet.file, b.sheet.file)) || a.line - b.line;
  let before: ListRow | undefined;
  for (const row of rows) {
    if (before && order(before, row) > 0) return [...rows].sort(order);
    before = row;
  }
  return rows;
}

/** The rows by tag, in the order of their lines; strings of one array are one row, of others with one tag the first counts. */
function typedRows(list: JobList, notes: PlacedNote[]): Map<string, ListRow> {
  const typed = new Map<string, ListRow>();
  const rows = inOrderOfLines(list.rows);
  const several = new Map<string, ListRow[]>();
  for (const row of rows) {
    const tag = tagOf(row);
    const first = typed.get(tag);
    const mine = several.get(tag);
    if (!first) typed.set(tag, row);
    else if (mine) mine.push(row);
    else several.set(tag, [first, row]);
  }
  for (const [tag, first] of typed) {
    const mine = several.get(tag);
    const areOne = mine !== undefined && areStrings(mine);
    const row = areOne ? arrayOfStrings(tag, mine, notes) : first;
    const counted = withModules(tag, row, notes);
    if (counted !== first) typed.set(tag, counted);
    if (!mine || areOne) continue;
    for (const second of mine.slice(1)) {
      const p = { tag, first: lineOf(first), second: lineOf(second) };
      notes.push(about(SITE_MESSAGES.tagTwice, p, tag, 'tag'));
    }
  }
  return typed;
}

/** The members that one row stands for. */
function makeGroup(
  tag: string,
  row: ListRow,
  quantity: number,
  typed: ReadonlyMap<string, ListRow>,
  leftOut: Set<string>,
  notes: PlacedNote[],
): readonly Member[] {
  if (quantity === 1) return [{ tag, row, group: tag, index: 1 }];
  const made: Member[] = [];
  for (let index = 1; index <= quantity; index += 1) {
    const madeTag = `${tag}-${index}`;
    const other = typed.get(madeTag);
    if (!other) {
      made.push({ tag: madeTag, row, group: tag, index });
      continue;
    }
    leftOut.add(madeTag);
    const p = { tag: madeTag, group: tag, typed: lineOf(other), made: lineOf(row) };
    notes.push(about(SITE_MESSAGES.madeTagTyped, p, tag, 'quantity'));
  }
  return made;
}

/** How many members the row of a group asks for; one may be missing, since its made tag is typed too. */
export function groupSize(members: readonly Member[]): number {
  const first = members[0];
  if (!first || first.tag === first.group) return members.length;
  return first.row.facts.quantity?.value ?? 1;
}

/** The building of a place: up to ` / `, the whole where there is none. */
export function buildingOfPlace(place: string): string {
  const cut = place.indexOf(' / ');
  return (cut < 0 ? place : place.slice(0, cut)).trim();
}

/** True where two names of buildings or places mean one: case and blanks don't count. */
export function samePlaceName(a: string, b: string): boolean {
  return a === b || fold(a) === fold(b);
}

/** The most folded names that are kept: a batch repeats few, a hostile list many. */
const MOST_FOLDED = 1000;
const folded = new Map<string, string>();

function fold(name: string): string {
  const before = folded.get(name);
  if (before !== undefined) return before;
  if (folded.size >= MOST_FOLDED) folded.clear();
  const made = name.trim().replace(/\s+/g, ' ').toLowerCase();
  folded.set(name, made);
  return made;
}

interface Whereabouts {
  place: string;
  placeOf: string;
  building: string;
  buildingByDefault: boolean;
}

/**
 * Settles where each member is: an empty place is that of the row it connects to.
 * @param members in any order
 * @param targetOf the member that one connects to, undefined where none
 * @returns equipments without ports, in natural order of tags
 */
export function placeEquipments(
  members: Iterable<Member>,
  targetOf: (tag: string) => Member | undefined,
): SiteEquipment[] {
  const known = new Map<string, Whereabouts>();
  const find = (member: Member, seen: number): Whereabouts => {
    const before = known.get(member.tag);
    if (before) return before;
    const facts = member.row.facts;
    const ownPlace = facts.place?.value ?? '';
    const target = ownPlace === '' && seen < 1000 ? behindDisconnects(member, targetOf) : undefined;
    const base = target ? find(target, seen + 1) : undefined;
    const stated = facts.building?.value;
    const found: Whereabouts = {
      place: ownPlace !== '' ? ownPlace : (base?.place ?? ''),
      placeOf: ownPlace !== '' ? '' : (base?.placeOf ?? member.tag),
      building: stated ?? (ownPlace !== '' ? buildingOfPlace(ownPlace) : (base?.building ?? '')),
      buildingByDefault: stated === undefined && (ownPlace !== '' ? true : (base?.buildingByDefault ?? true)),
    };
    // What states its place is found as fast anew.
    if (ownPlace === '') known.set(member.tag, found);
    return found;
  };
  const equipments: SiteEquipment[] = [];
  for (const member of members) {
    const facts = member.row.facts;
    const kind = facts.kind?.value;
    if (!kind) continue;
    const where = find(member, 0);
    equipments.push({
      tag: member.tag,
      kind,
      row: member.row,
      facts,
      place: where.place,
      placeOf: where.placeOf,
      building: where.building,
      buildingByDefault: where.buildingByDefault,
      outdoors: yesOrNo(facts.outdoors, OUTDOORS_BY_DEFAULT.has(kind)),
      worthProtecting: yesOrNo(facts.worth_protecting, true),
      ports: [],
    });
  }
  return equipments.sort((a, b) => byNaturalOrder(a.tag, b.tag));
}

/** What a member connects to first, disconnects passed through; the last of these where nothing is behind it. */
function behindDisconnects(
  member: Member,
  targetOf: (tag: string) => Member | undefined,
): Member | undefined {
  let at = targetOf(member.tag);
  // Connections run in no circle: those that do are taken out before.
  while (at?.row.facts.kind?.value === 'disconnect') {
    const next = targetOf(at.tag);
    if (!next) break;
    at = next;
  }
  return at;
}

const STATED = { yes: { value: true, byDefault: false }, no: { value: false, byDefault: false } };
const UNSTATED = { yes: { value: true, byDefault: true }, no: { value: false, byDefault: true } };

/** The same of yes and no, one object each: every row has two. */
function yesOrNo(fact: Fact<boolean> | undefined, byDefault: boolean): OrDefault<boolean> {
  const of = fact ? STATED : UNSTATED;
  return (fact?.value ?? byDefault) ? of.yes : of.no;
}

/** A stated value, or the default that stands in for it. */
export function orDefault<T>(fact: Fact<T> | undefined, byDefault: T): OrDefault<T> {
  return fact ? { value: fact.value, byDefault: false } : { value: byDefault, byDefault: true };
}
