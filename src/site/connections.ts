import type { Connection } from '../model/list.js';
import type { PlacedNote } from '../model/message.js';
import { about } from '../text/message-kit.js';
import { SITE_MESSAGES } from '../text/messages/site.js';
import { byNaturalOrder } from '../text/natural-order.js';
import type { Member, Roll } from './equipment.js';

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
  readonly notes: readonly PlacedNote[];
}

/**
 * Resolves `connects_to` of every member: groups go pairwise, a target of one takes all, circles are refused.
 * @param roll the members and groups of the job
 */
export function resolveConnections(roll: Roll): Connections {
  const targets = new Map<string, Target>();
  const blank = new Set<string>();
  const notes: PlacedNote[] = [];
  for (const [group, members] of roll.groups) {
    const first = members[0];
    if (!first) continue;
    const connection = first.row.facts.connects_to?.value;
    if (!connection) {
      if (!first.row.unreadable.has('connects_to')) for (const m of members) blank.add(m.tag);
      continue;
    }
    const named = lookUp(roll, connection);
    if (named === 'left-out') continue;
    if (named === undefined) {
      notes.push(
        about(SITE_MESSAGES.connectionToNothing, { tag: group, to: connection.whole }, group, 'connects_to'),
      );
      continue;
    }
    const { found, inputs } = named;
    if (found.some((m) => m.group === group)) {
      notes.push(about(SITE_MESSAGES.connectionToItself, { tag: group }, group, 'connects_to'));
      continue;
    }
    const pairwise = found.length > 1 && found.length === members.length;
    if (found.length > 1 && !pairwise) {
      const p = { tag: group, count: members.length, to: connection.whole, toCount: found.length };
      notes.push(about(SITE_MESSAGES.groupUnclear, p, group, 'connects_to'));
      continue;
    }
    members.forEach((member, i) => {
      const target = pairwise ? found[i] : found[0];
      if (target) targets.set(member.tag, { member: target, inputs });
    });
  }
  dropCircles(targets, notes);
  return { targets, blank, notes };
}

function lookUp(
  roll: Roll,
  connection: Connection,
): { found: readonly Member[]; inputs: readonly number[] } | 'left-out' | undefined {
  for (const [tag, inputs] of [
    [connection.whole, []],
    [connection.tag, connection.inputs],
  ] as const) {
    const group = roll.groups.get(tag);
    if (group && group.length > 0) return { found: group, inputs };
    const member = roll.members.get(tag);
    if (member) return { found: [member], inputs };
    if (roll.leftOut.has(tag)) return 'left-out';
  }
  return undefined;
}

/** Each member has at most one target, so a circle is found by walking until a member comes again. */
function dropCircles(targets: Map<string, Target>, notes: PlacedNote[]): void {
  const done = new Set<string>();
  for (const start of [...targets.keys()].sort(byNaturalOrder)) {
    const path: string[] = [];
    const at = new Map<string, number>();
    let tag: string | undefined = start;
    while (tag !== undefined && !done.has(tag) && !at.has(tag)) {
      at.set(tag, path.length);
      path.push(tag);
      tag = targets.get(tag)?.member.tag;
    }
    const from = tag === undefined ? undefined : at.get(tag);
    if (from !== undefined) reportCircle(path.slice(from), targets, notes);
    for (const passed of path) done.add(passed);
  }
}

function reportCircle(circle: readonly string[], targets: Map<string, Target>, notes: PlacedNote[]): void {
  const ordered = [...circle].sort(byNaturalOrder);
  const first = ordered[0] ?? '';
  const members = ordered.map((tag) => {
    const target = targets.get(tag);
    return target ? `${tag} to ${target.member.tag}` : tag;
  });
  notes.push(about(SITE_MESSAGES.circle, { members: members.join(', ') }, first, 'connects_to'));
  for (const tag of circle) targets.delete(tag);
}
