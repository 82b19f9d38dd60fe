import type { Connection, ListRow } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { groupSize, lineOf, type Member, type Roll } from './equipment.js';

/** What one member connects to. */
export interface Target {
  readonly member: Member;
  /** DC inputs that are named; empty: none named. */
  readonly inputs: readonly number[];
}

/** The target of each member that has one. */
export interface Connections {
  readonly targets: ReadonlyMap<string, Target>;
  /** Members whose `connects_to` is blank; those with an error aren't among them. */
  readonly blank: ReadonlySet<string>;
  /** Members that a connection with an error names, or may mean: what feeds them isn't known, and an item says so. */
  readonly inDoubt: ReadonlySet<string>;
  readonly notes: readonly PlacedNote[];
}

/**
 * Resolves `connects_to` of every member: groups go pairwise, a target of one takes all, circles are refused.
 * @param roll the members and groups of the job
 */
export function resolveConnections(roll: Roll): Connections {
  const targets = new Map<string, Target>();
  const blank = new Set<string>();
  const inDoubt = new Set<string>();
  const notes: PlacedNote[] = [];
  const doubt = (members: readonly Member[]): void => {
    for (const member of members) inDoubt.add(member.tag);
  };
  for (const row of roll.leftOutRows) {
    const named = row.facts.connects_to && lookUp(roll, row.facts.connects_to.value);
    if (named && named !== 'left-out') doubt(named.found);
  }
  for (const [group, members] of roll.groups) {
    const first = members[0];
    if (!first) continue;
    const connection = first.row.facts.connects_to?.value;
    if (!connection) {
      if (first.row.unreadable.has('connects_to')) doubt(members);
      else for (const m of members) blank.add(m.tag);
      continue;
    }
    const named = lookUp(roll, connection);
    if (named === 'left-out') {
      doubt(members);
      continue;
    }
    if (named === undefined) {
      notes.push(
        about(SITE_MESSAGES.connectionToNothing, { tag: group, to: connection.whole }, group, 'connects_to'),
      );
      doubt(members);
      continue;
    }
    const { found, inputs, size } = named;
    if (found.some((m) => m.group === group)) {
      notes.push(about(SITE_MESSAGES.connectionToItself, { tag: group }, group, 'connects_to'));
      doubt(members);
      continue;
    }
    const own = groupSize(members);
    const pairwise = size > 1 && size === own;
    if (size > 1 && !pairwise) {
      const p = { tag: group, count: own, to: connection.whole, toCount: size };
      notes.push(about(SITE_MESSAGES.groupUnclear, p, group, 'connects_to'));
      doubt([...members, ...found]);
      continue;
    }
    for (const member of members) {
      // A made tag that is typed too is left out of its group: the typed row has its number.
      const target = pairwise
        ? (found.find((m) => m.index === member.index) ??
          roll.members.get(`${found[0]?.group ?? ''}-${member.index}`))
        : found[0];
      if (target) targets.set(member.tag, { member: target, inputs });
      else doubt([member]);
    }
  }
  dropCircles(targets, notes, inDoubt);
  return { targets, blank, inDoubt, notes };
}

function lookUp(
  roll: Roll,
  connection: Connection,
): { found: readonly Member[]; inputs: readonly number[]; size: number } | 'left-out' | undefined {
  for (const [tag, inputs] of [
    [connection.whole, []],
    [connection.tag, connection.inputs],
  ] as const) {
    const group = roll.groups.get(tag);
    if (group && group.length > 0) return { found: group, inputs, size: groupSize(group) };
    const member = roll.members.get(tag);
    if (member) return { found: [member], inputs, size: 1 };
    if (roll.leftOut.has(tag)) return 'left-out';
  }
  return undefined;
}

/** Each member has at most one target, so a walk from target to target that meets itself has found a circle. */
function dropCircles(targets: Map<string, Target>, notes: PlacedNote[], inDoubt: Set<string>): void {
  const walkOf = new Map<string, string>();
  for (const start of [...targets.keys()]) {
    let tag: string | undefined = start;
    while (tag !== undefined && !walkOf.has(tag)) {
      walkOf.set(tag, start);
      tag = targets.get(tag)?.member.tag;
    }
    if (tag === undefined || walkOf.get(tag) !== start) continue;
    const circle = circleFrom(tag, targets);
    reportCircle(circle, targets, notes);
    for (const one of circle) inDoubt.add(one);
  }
}

function circleFrom(first: string, targets: ReadonlyMap<string, Target>): readonly string[] {
  const circle: string[] = [];
  let tag: string | undefined = first;
  while (tag !== undefined && (circle.length === 0 || tag !== first)) {
    circle.push(tag);
    tag = targets.get(tag)?.member.tag;
  }
  return circle;
}

function reportCircle(circle: readonly string[], targets: Map<string, Target>, notes: PlacedNote[]): void {
  // Each stands in the circle as the target of another, which knows its row.
  const rows = new Map<string, ListRow>();
  for (const tag of circle) {
    const target = targets.get(tag)?.member;
    if (target) rows.set(target.tag, target.row);
  }
  const ordered = [...circle].sort(byNaturalOrder);
  const first = ordered[0] ?? '';
  const connections = ordered.flatMap((tag) => {
    const row = rows.get(tag);
    const to = targets.get(tag)?.member.tag;
    return row && to !== undefined ? [{ tag, line: lineOf(row), to }] : [];
  });
  notes.push(about(SITE_MESSAGES.circle, { connections }, first, 'connects_to'));
  for (const tag of circle) targets.delete(tag);
}
