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

/** One member on the way, and how many of its targets were looked at. */
interface Visit {
  readonly tag: string;
  next: number;
}

/**
 * Groups of members that lead to one another, by Tarjan's walk, as a loop: a chain may be as long as its list.
 * Source: R. Tarjan, Depth-first search and linear graph algorithms, 1972.
 */
function circlesOf(targets: ReadonlyMap<string, readonly Target[]>): readonly (readonly string[])[] {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const onStack = new Set<string>();
  const found: string[][] = [];
  const enter = (tag: string): Visit => {
    index.set(tag, index.size);
    low.set(tag, index.get(tag) ?? 0);
    stack.push(tag);
    onStack.add(tag);
    return { tag, next: 0 };
  };
  const lower = (tag: string, to: number): void => {
    low.set(tag, Math.min(low.get(tag) ?? to, to));
  };
  for (const start of targets.keys()) {
    if (index.has(start)) continue;
    const visits: Visit[] = [enter(start)];
    for (let at = visits.at(-1); at; at = visits.at(-1)) {
      const target = targets.get(at.tag)?.[at.next]?.member.tag;
      if (target !== undefined) {
        at.next += 1;
        if (!index.has(target)) visits.push(enter(target));
        else if (onStack.has(target)) lower(at.tag, index.get(target) ?? 0);
        continue;
      }
      visits.pop();
      const above = visits.at(-1);
      if (above) lower(above.tag, low.get(at.tag) ?? 0);
      if (low.get(at.tag) !== index.get(at.tag)) continue;
      const members = stack.splice(stack.lastIndexOf(at.tag));
      for (const one of members) onStack.delete(one);
      if (members.length > 1) found.push(members);
    }
  }
  return found;
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
