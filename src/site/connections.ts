import type { Connection, ListRow } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import type { Kind } from '../model/words.js';
import { about } from '../model/message.js';
import { ROW_MESSAGES } from '../model/messages/rows.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { dropCircles } from './circles.js';
import { groupSize, type Member, type Roll } from './equipment.js';
import type { Target } from './target.js';

/** The targets of each member that has some. */
export interface Connections {
  readonly targets: ReadonlyMap<string, readonly Target[]>;
  /** Members whose `connects_to` is blank; those with an error aren't among them. */
  readonly blank: ReadonlySet<string>;
  /** Members that a connection with an error names, or may mean: what feeds them isn't known, and an item says so. */
  readonly inDoubt: ReadonlySet<string>;
  readonly notes: readonly PlacedNote[];
}

/** What is joined to each of a group that it names: a battery to its inverters, a panel to the outputs that feed it. */
const JOINS_A_GROUP: ReadonlySet<Kind> = new Set<Kind>(['battery', 'dc-panel', 'panel']);
/** What is joined to each of the batteries that it names. */
const JOINS_BATTERIES: ReadonlySet<Kind> = new Set<Kind>(['inverter-charger', 'charge-controller']);

/** What is found and refused while connections are resolved. */
interface Resolving {
  readonly roll: Roll;
  readonly targets: Map<string, Target[]>;
  readonly notes: PlacedNote[];
  readonly inDoubt: Set<string>;
}

/**
 * Resolves `connects_to` of every member: each of several rows that it names, groups pairwise, a target of one takes all;
 * circles are refused.
 * @param roll the members and groups of the job
 */
export function resolveConnections(roll: Roll): Connections {
  const resolving: Resolving = { roll, targets: new Map(), notes: [], inDoubt: new Set() };
  const { targets, notes, inDoubt } = resolving;
  const blank = new Set<string>();
  for (const row of roll.leftOutRows) {
    for (const connection of connectionsOf(roll, row)) {
      const named = lookUp(roll, connection);
      if (named && named !== 'left-out') doubt(resolving, named.found);
    }
  }
  for (const [group, members] of roll.groups) {
    const [first] = members;
    if (!first) continue;
    if (!first.row.facts.connects_to) {
      if (first.row.unreadable.has('connects_to')) doubt(resolving, members);
      else for (const m of members) blank.add(m.tag);
      continue;
    }
    resolveRow(resolving, group, members);
  }
  dropCircles(targets, notes, inDoubt);
  return { targets, blank, inDoubt, notes };
}

function doubt({ inDoubt }: Resolving, members: readonly Member[]): void {
  for (const member of members) inDoubt.add(member.tag);
}

/** What a row names: the whole cell where that is a tag, else each part of it. */
function connectionsOf(roll: Roll, { facts }: ListRow): readonly Connection[] {
  const connection = facts.connects_to?.value;
  if (!connection) return [];
  return connection.each.length > 1 && lookUp(roll, connection) ? [connection] : connection.each;
}

function resolveRow(resolving: Resolving, group: string, members: readonly Member[]): void {
  const [first] = members;
  if (!first) return;
  const connections = connectionsOf(resolving.roll, first.row);
  const lengths = first.row.facts.run_length?.value ?? [];
  const twice = namedTwice(connections);
  if (twice !== undefined) {
    const p = { tag: group, to: twice };
    resolving.notes.push(about(SITE_MESSAGES.connectionTwice, p, group, 'connects_to'));
  }
  for (const [index, connection] of connections.entries()) {
    const named = namedBy(resolving, group, members, connection);
    if (!named) continue;
    const { found, size } = named;
    const fanOut = members.length === 1 && size > 1;
    const count = connections.length === 1 && fanOut ? size : connections.length;
    if (index === 0 && lengths.length > 1 && lengths.length !== count) {
      const p = { tag: group, lengths: lengths.length, targets: count };
      resolving.notes.push(about(ROW_MESSAGES.lengthsCount, p, group, 'run_length'));
    }
    const lengthAt = (i: number): number | undefined =>
      lengths.length === 1 ? lengths[0] : lengths.length === count ? lengths[i] : undefined;
    join(resolving, members, { found, size, inputs: named.inputs }, (i) =>
      lengthAt(connections.length === 1 ? i : index),
    );
  }
}

function namedTwice(connections: readonly Connection[]): string | undefined {
  if (connections.length < 2) return undefined;
  const seen = new Set<string>();
  for (const { whole } of connections) {
    if (seen.has(whole)) return whole;
    seen.add(whole);
  }
  return undefined;
}

interface Named {
  readonly found: readonly Member[];
  readonly inputs: readonly number[];
  readonly size: number;
}

/** What one connection names, where its members can be told; else an item says what is wrong. */
function namedBy(
  resolving: Resolving,
  group: string,
  members: readonly Member[],
  connection: Connection,
): Named | undefined {
  const { roll, notes } = resolving;
  const named = lookUp(roll, connection);
  if (named === 'left-out') {
    doubt(resolving, members);
    return undefined;
  }
  if (named === undefined) {
    notes.push(
      about(SITE_MESSAGES.connectionToNothing, { tag: group, to: connection.whole }, group, 'connects_to'),
    );
    doubt(resolving, members);
    return undefined;
  }
  const { found, size } = named;
  if (found.some((m) => m.group === group)) {
    notes.push(about(SITE_MESSAGES.connectionToItself, { tag: group }, group, 'connects_to'));
    doubt(resolving, members);
    return undefined;
  }
  const own = groupSize(members);
  if (size > 1 && size !== own && !joinsGroup(members, found) && !isInTurn(members, found)) {
    const p = { tag: group, count: own, to: connection.whole, toCount: size };
    notes.push(about(SITE_MESSAGES.groupUnclear, p, group, 'connects_to'));
    doubt(resolving, [...members, ...found]);
    return undefined;
  }
  return named;
}

function kindOf(members: readonly Member[]): Kind | undefined {
  return members[0]?.row.facts.kind?.value;
}

/** True for one row that is joined to each of the group that it names. */
function joinsGroup(members: readonly Member[], found: readonly Member[]): boolean {
  const kind = kindOf(members);
  if (groupSize(members) !== 1 || !kind) return false;
  return JOINS_A_GROUP.has(kind) || (JOINS_BATTERIES.has(kind) && kindOf(found) === 'battery');
}

/** True for arrays that go to the converters of a group in turn, as many to each as it has inputs. */
function isInTurn(members: readonly Member[], found: readonly Member[]): boolean {
  return kindOf(members) === 'array' && groupSize(members) % groupSize(found) === 0;
}

function join(
  resolving: Resolving,
  members: readonly Member[],
  { found, inputs, size }: Named,
  lengthAt: (index: number) => number | undefined,
): void {
  const { roll } = resolving;
  const own = groupSize(members);
  const [first] = members;
  if (own === 1 && size > 1 && first) {
    for (const [i, target] of found.entries()) add(resolving, first.tag, target, inputs, lengthAt(i));
    return;
  }
  const length = lengthAt(0);
  const each = own / size;
  for (const member of members) {
    const index = size === 1 ? 1 : Math.floor((member.index - 1) / each) + 1;
    // A made tag that is typed too is left out of its group: the typed row has its number.
    const target =
      size === 1
        ? found[0]
        : (found.find((m) => m.index === index) ?? roll.members.get(`${found[0]?.group ?? ''}-${index}`));
    add(resolving, member.tag, target, inputs, length);
  }
}

function add(
  { targets, inDoubt }: Resolving,
  tag: string,
  target: Member | undefined,
  inputs: readonly number[],
  length: number | undefined,
): void {
  if (!target) {
    inDoubt.add(tag);
    return;
  }
  const one: Target = { member: target, inputs, length };
  const mine = targets.get(tag);
  if (mine) mine.push(one);
  else targets.set(tag, [one]);
}

function lookUp(roll: Roll, connection: Connection): Named | 'left-out' | undefined {
  const { whole, tag, inputs } = connection;
  return underTag(roll, whole, NO_INPUTS) ?? underTag(roll, tag, inputs);
}

const NO_INPUTS: readonly number[] = [];

function underTag(roll: Roll, tag: string, inputs: readonly number[]): Named | 'left-out' | undefined {
  const group = roll.groups.get(tag);
  if (group && group.length > 0) return { found: group, inputs, size: groupSize(group) };
  const member = roll.members.get(tag);
  if (member) return { found: [member], inputs, size: 1 };
  return roll.leftOut.has(tag) ? 'left-out' : undefined;
}
