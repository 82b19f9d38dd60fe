import type { ReachWord, RowLinks } from './cell.js';
import { cellShape, FONT, LINE } from './cell.js';
import { layoutSheet } from './layout.js';
import type { Layout, PlacedCell } from './layout.js';
import type { Line, PortRow, SiteGraph, Unit } from './site-graph.js';

/** Room for a drawing on a sheet, in points. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** One sheet: strips below each other, and by how much the whole is scaled onto the room. */
export interface DrawnSheet {
  readonly strips: readonly Layout[];
  /** Unscaled. */
  readonly width: number;
  readonly height: number;
}

/** Between two strips of a sheet. */
export const STRIP_GAP = 16;

/** Text is never smaller than this. */
const LEAST_TEXT = 10;
const LEAST_SCALE = LEAST_TEXT / FONT;
/** A small site isn't blown up further than this. */
const MOST_SCALE = 1.15;
const FRAME = { across: 22, down: 2 * LINE + 20 };

/** Equipments that are laid out at once; common practice, no source. */
const MOST_AT_ONCE = 40;

/** The scale that puts a drawing of this size onto the room. */
export function scaleFor(size: Room, room: Room): number {
  return Math.min(room.width / size.width, room.height / size.height, MOST_SCALE);
}

/** True where a drawing of this size goes onto the room with all text at 10 pt or more. */
export function fits(size: Room, room: Room): boolean {
  return scaleFor(size, room) >= LEAST_SCALE;
}

/** The rows at the other ends of a row's lines. */
function partners(graph: SiteGraph): ReadonlyMap<string, readonly PortRow[]> {
  const found = new Map<string, PortRow[]>();
  const add = (from: string, to: string): void => {
    const row = graph.rowOf.get(to);
    if (row === undefined) return;
    const known = found.get(from);
    if (known === undefined) found.set(from, [row]);
    else known.push(row);
  };
  for (const line of graph.lines) {
    add(line.from, line.to);
    add(line.to, line.from);
  }
  return found;
}

/** Cuts an equipment with more ports than a sheet can hold into parts that fit. */
function partsOf(unit: Unit, links: RowLinks, reach: ReachWord, room: Room): Unit[] {
  const most = room.height / LEAST_SCALE - FRAME.down;
  if (unit.rows.length < 2 || cellShape(unit, links, reach).height <= most) return [unit];
  const sides = (['west', 'east'] as const).map((side) =>
    unit.rows.filter((r) => r.side === side && r.shared.length === 0),
  );
  const last = unit.rows.filter((r) => r.shared.length > 0);
  const half = sides.map(
    (rows) => [rows.slice(0, Math.ceil(rows.length / 2)), rows.slice(Math.ceil(rows.length / 2))] as const,
  );
  const first = half.flatMap(([a]) => a);
  const second = [...half.flatMap(([, b]) => b), ...last];
  if (first.length === 0 || second.length === 0) return [unit];
  return [
    ...partsOf({ ...unit, rows: first, shared: [] }, links, reach, room),
    ...partsOf({ ...unit, rows: second }, links, reach, room),
  ];
}

function linksOf(others: ReadonlyMap<string, readonly PortRow[]>, units: readonly Unit[]): RowLinks {
  const here = new Set(units.flatMap((u) => u.rows.map((r) => r.key)));
  return {
    drawn: (row) => (others.get(row.key) ?? []).some((o) => here.has(o.key)),
    elsewhere: (row) => (others.get(row.key) ?? []).filter((o) => !here.has(o.key)),
  };
}

/** Sorts the cells along the axis on which the layout is too large, and takes from its start as many as may fit. */
function firstThatMayFit(layout: Layout, room: Room): Unit[] {
  const across = layout.width / room.width > layout.height / room.height;
  const middle = (c: PlacedCell): number => (across ? c.x + c.cell.width / 2 : c.y + c.cell.height / 2);
  const end = (c: PlacedCell): number => (across ? c.x + c.cell.width : c.y + c.cell.height);
  const sorted = [...layout.cells].sort((a, b) => middle(a) - middle(b));
  const limit = (across ? room.width : room.height) / LEAST_SCALE;
  const start = Math.min(...sorted.map((c) => (across ? c.x : c.y)));
  let count = 0;
  for (const cell of sorted) {
    if (end(cell) - start > limit && count > 0) break;
    count += 1;
  }
  const most = Math.max(1, Math.min(count, sorted.length - 1));
  return sorted.slice(0, most).map((c) => c.cell.unit);
}

/** Leaves for a later sheet what has runs, but none to anything on this one. */
function withoutStrays(
  taken: readonly Unit[],
  others: ReadonlyMap<string, readonly PortRow[]>,
): readonly Unit[] {
  const here = new Set(taken.flatMap((u) => u.rows.map((r) => r.key)));
  const joined = taken.filter((u) => {
    const ends = u.rows.flatMap((r) => others.get(r.key) ?? []);
    return ends.length === 0 || ends.some((o) => here.has(o.key));
  });
  return joined.length === 0 ? taken : joined;
}

/** Puts strips below each other on as few sheets as hold them, in their order. */
function stacked(strips: readonly Layout[], room: Room): DrawnSheet[] {
  const sheets: DrawnSheet[] = [];
  for (const strip of strips) {
    const last = sheets.at(-1);
    const both = last && {
      strips: [...last.strips, strip],
      width: Math.max(last.width, strip.width),
      height: last.height + STRIP_GAP + strip.height,
    };
    if (both && fits(both, room)) sheets[sheets.length - 1] = both;
    else sheets.push({ strips: [strip], width: strip.width, height: strip.height });
  }
  return sheets;
}

/** The lines of which both ends are among some units, in the graph's order. */
function linesAmong(graph: SiteGraph): (units: readonly Unit[]) => Line[] {
  const leaving = new Map<string, number[]>();
  for (const [index, { from }] of graph.lines.entries()) {
    const known = leaving.get(from);
    if (known === undefined) leaving.set(from, [index]);
    else known.push(index);
  }
  return (units) => {
    const rows = units.flatMap((u) => u.rows.map((r) => r.key));
    const here = new Set(rows);
    return rows
      .flatMap((key) => leaving.get(key) ?? [])
      .sort((a, b) => a - b)
      .flatMap((index) => graph.lines[index] ?? [])
      .filter((line) => here.has(line.to));
  };
}

/**
 * What is laid out at once: all, or where that is very much the first of it and what is joined to that, nearest first. A sheet
 * holds far less, and to lay out a whole site for each of its sheets would cost its square.
 */
function nearby(rest: ReadonlySet<Unit>, joined: (unit: Unit) => readonly Unit[]): readonly Unit[] {
  if (rest.size <= MOST_AT_ONCE) return [...rest];
  const found = new Set<Unit>();
  for (const start of rest) {
    const queue = [start];
    // It grows while it is walked.
    for (const unit of queue) {
      if (found.size === MOST_AT_ONCE) return [...found];
      if (found.has(unit)) continue;
      found.add(unit);
      queue.push(...joined(unit).filter((other) => rest.has(other)));
    }
  }
  return [...found];
}

/**
 * Lays the site out on as many sheets as it takes to keep all text at 10 pt or more.
 * @param graph the site
 * @param reach how a protector's reach is worded
 * @param room of one sheet, in points
 */
export async function layoutSheets(graph: SiteGraph, reach: ReachWord, room: Room): Promise<DrawnSheet[]> {
  const others = partners(graph);
  const linesOf = linesAmong(graph);
  const lay = async (units: readonly Unit[]): Promise<Layout> => {
    const links = linksOf(others, units);
    return layoutSheet(
      units.map((u) => cellShape(u, links, reach)),
      linesOf(units),
    );
  };
  const whole: RowLinks = { drawn: () => true, elsewhere: () => [] };
  const rest = new Set(graph.units.flatMap((u) => partsOf(u, whole, reach, room)));
  const owners = new Map([...rest].flatMap((unit) => unit.rows.map((row) => [row.key, unit] as const)));
  const joined = (unit: Unit): Unit[] =>
    unit.rows.flatMap((row) => (others.get(row.key) ?? []).flatMap((o) => owners.get(o.key) ?? []));
  const strips: Layout[] = [];
  while (rest.size > 0) {
    let taken: readonly Unit[] = nearby(rest, joined);
    let strip = await lay(taken);
    while (!fits(strip, room) && taken.length > 1) {
      taken = withoutStrays(firstThatMayFit(strip, room), others);
      strip = await lay(taken);
    }
    strips.push(strip);
    for (const unit of taken) rest.delete(unit);
  }
  return stacked(strips, room);
}
