import type { ListRow } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { lineOf } from './row-line.js';
import type { Target } from './target.js';

/**
 * Takes connections out that run in a circle, and says so: each circle of rows that name one another once.
 * @param targets what each member names; the connections of a circle are taken out
 * @param inDoubt gets the tags of a circle
 */
export function dropCircles(targets: Map<string, Target[]>, notes: PlacedNote[], inDoubt: Set<string>): void {
  for (const circle of circlesOf(targets)) {
    report(circle, targets, notes);
    const members = new Set(circle);
    for (const tag of circle) {
      inDoubt.add(tag);
      const rest = (targets.get(tag) ?? []).filter((t) => !members.has(t.member.tag));
      if (rest.length > 0) targets.set(tag, rest);
      else targets.delete(tag);
    }
  }
}

/** One member on the way: its targets, how many of them were looked at, and how far back they lead. */
interface Visit {
  readonly tag: string;
  readonly targets: readonly Target[];
  next: number;
  readonly index: number;
  low: number;
  onStack: boolean;
}

const NO_TARGETS: readonly Target[] = [];

/**
 * Groups of members that lead to one another, by Tarjan's walk, as a loop: a chain may be as long as its list.
 * Source: R. Tarjan, Depth-first search and linear graph algorithms, 1972.
 */
function circlesOf(targets: ReadonlyMap<string, readonly Target[]>): readonly (readonly string[])[] {
  const seen = new Map<string, Visit>();
  const stack: Visit[] = [];
  const found: string[][] = [];
  const enter = (tag: string): Visit => {
    const index = seen.size;
    const visit = { tag, targets: targets.get(tag) ?? NO_TARGETS, next: 0, index, low: index, onStack: true };
    seen.set(tag, visit);
    stack.push(visit);
    return visit;
  };
  const visits: Visit[] = [];
  const named = new Set<string>();
  for (const some of targets.values()) for (const { member } of some) named.add(member.tag);
  for (const start of targets.keys()) {
    // What nothing names is in no circle.
    if (!named.has(start) || seen.has(start)) continue;
    visits.push(enter(start));
    for (let at = visits.at(-1); at; at = visits.at(-1)) {
      const target = at.targets[at.next]?.member.tag;
      if (target !== undefined) {
        at.next += 1;
        const there = seen.get(target);
        if (!there) visits.push(enter(target));
        else if (there.onStack) at.low = Math.min(at.low, there.index);
        continue;
      }
      visits.pop();
      const above = visits.at(-1);
      if (above) above.low = Math.min(above.low, at.low);
      if (at.low === at.index) close(at);
    }
  }
  return found;

  /** Takes the group that begins with a member off the stack. */
  function close(first: Visit): void {
    const members: string[] = [];
    for (let one = stack.pop(); one; one = stack.pop()) {
      one.onStack = false;
      members.push(one.tag);
      if (one === first) break;
    }
    if (members.length > 1) found.push(members.reverse());
  }
}

function report(
  circle: readonly string[],
  targets: ReadonlyMap<string, readonly Target[]>,
  notes: PlacedNote[],
): void {
  const members = new Set(circle);
  // Each stands in the circle as the target of another, which knows its row.
  const rows = new Map<string, ListRow>();
  for (const tag of circle) {
    for (const { member } of targets.get(tag) ?? []) rows.set(member.tag, member.row);
  }
  const ordered = [...circle].sort(byNaturalOrder);
  const connections = ordered.flatMap((tag) => {
    const row = rows.get(tag);
    const within = (targets.get(tag) ?? []).filter((t) => members.has(t.member.tag));
    return row ? within.map((t) => ({ tag, line: lineOf(row), to: t.member.tag })) : [];
  });
  notes.push(about(SITE_MESSAGES.circle, { connections }, ordered[0] ?? '', 'connects_to'));
}
