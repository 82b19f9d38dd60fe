import { holds, stackedSystems } from '../model/ac-parts.js';
import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment, SitePort, SiteRun } from '../model/site.js';
import type { AcSystem, Kind } from '../model/words.js';
import { about } from '../model/message.js';
import { NETWORK_MESSAGES } from '../model/messages/network.js';
import { FACT_MESSAGES } from '../model/messages/rate.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { reason } from '../model/reason.js';
import { lineOf } from './row-line.js';
import { systemField } from './system-field.js';

/** What has the system of what feeds it where it states none. */
const TAKES_ITS_FEED: ReadonlySet<Kind> = new Set<Kind>(['panel', 'load', 'transfer-switch', 'disconnect']);

/** What can be stacked: sources that run in step, each on conductors of its own. */
const STACKABLE: ReadonlySet<Kind> = new Set<Kind>(['inverter-charger', 'ac-battery']);

/**
 * Gives panels and loads the system of what feeds them where they state none, and compares what feeds with what is fed.
 * @param equipments in natural order, with ports and runs; `system`, `systemBy` and `clashes` of their ports are filled
 * @param byTag the same
 * @param runs of the site
 * @returns what one can't take from the other, and what to confirm
 */
export function agreeOnSystems(
  equipments: readonly SiteEquipment[],
  byTag: ReadonlyMap<string, SiteEquipment>,
  runs: readonly SiteRun[],
): readonly PlacedNote[] {
  const seen = new Set<SitePort>();
  for (const equipment of equipments) {
    if (!TAKES_ITS_FEED.has(equipment.kind)) continue;
    for (const port of equipment.ports) takeFromFeed(port, seen);
  }
  const notes: PlacedNote[] = [...unsaidStacks(equipments)];
  const stacks = new Map<SitePort, boolean>();
  for (const run of runs) {
    if (run.carries === 'ac') compare(run, byTag, stacks, notes);
  }
  return notes;
}

/**
 * Walks up to the first port that has a system, and gives it to all on the way: a chain may be as long as its list.
 * @param seen ports that were asked before; what several feed is asked once more for each of them
 */
function takeFromFeed(port: SitePort, seen: Set<SitePort>): void {
  const passed: SitePort[] = [];
  let at: SitePort | undefined = port;
  while (at && at.system === undefined && at.cls === 'feeder' && !seen.has(at)) {
    seen.add(at);
    passed.push(at);
    const feeders: readonly SitePort[] = at.feeders;
    if (feeders.length > 1) for (const one of feeders) takeFromFeed(one, seen);
    at = feeders.length === 1 ? feeders[0] : undefined;
  }
  let system = at?.system;
  for (const one of passed.reverse()) {
    system ??= together(one);
    if (system === undefined) continue;
    one.system = system;
    one.systemBy = 'feed';
  }
}

/**
 * The system that several feeders give: the one that holds all of theirs, else that of a service, else of the first, with which the
 * others are compared. Equal sources that could make a larger one don't say which.
 */
function together(port: SitePort): AcSystem | undefined {
  if (isUnsaidStack(port)) return undefined;
  const known = port.feeders.filter((f) => f.system !== undefined);
  known.sort((a, b) => byNaturalOrder(a.equipment.tag, b.equipment.tag));
  const holdsAll = (one: SitePort): boolean =>
    known.every((f) => one.system !== undefined && f.system !== undefined && holds(one.system, f.system));
  const chosen = known.find(holdsAll) ?? known.find((f) => f.equipment.kind === 'service') ?? known[0];
  return chosen?.system;
}

/** True where equal sources alone feed a port that states no system, and could make one or another together. */
function isUnsaidStack({ feeders, system, systemBy }: SitePort): boolean {
  if (systemBy === 'stated' || (system !== undefined && systemBy === undefined)) return false;
  const [of, ...others] = new Set(feeders.map((f) => f.system));
  const isOfSources = feeders.every((f) => STACKABLE.has(f.equipment.kind));
  return (
    of !== undefined && others.length === 0 && isOfSources && stackedSystems(of, feeders.length).length > 0
  );
}

/** Panels and loads on stacked sources that don't state what these make. */
function unsaidStacks(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const { tag, row, ports } of equipments) {
    if (row.unreadable.has('ac_in')) continue;
    for (const port of ports) {
      if (port.cls !== 'feeder' || !isUnsaidStack(port)) continue;
      notes.push(about(FACT_MESSAGES.ac_in, { tag, why: STACKED }, tag, 'ac_in'));
    }
  }
  return notes;
}

const STACKED = reason('needed/conductor-voltage');

function compare(
  run: SiteRun,
  byTag: ReadonlyMap<string, SiteEquipment>,
  stacks: Map<SitePort, boolean>,
  notes: PlacedNote[],
): void {
  const { from, to } = run;
  for (const tag of run.through) passedStates(byTag.get(tag), run, notes);
  const up = from.system;
  const down = to.system;
  if (up === undefined || down === undefined) return;
  if (holds(up, down)) {
    unequalStack(run, notes);
    if (up === '240/120 high-leg' && down === '240') {
      const { tag } = to.equipment;
      notes.push(about(NETWORK_MESSAGES.whichLines, { tag, from: from.equipment.tag }, tag, systemField(to)));
    }
    return;
  }
  let stacked = stacks.get(to);
  if (stacked === undefined) stacks.set(to, (stacked = isStack(to)));
  if (stacked && STACKABLE.has(from.equipment.kind)) return;
  const alone = isAlone(run) && SINGLE_SOURCES.has(from.equipment.kind);
  if (alone && up === '120' && down === '120/240') {
    const p = { source: from.equipment.tag, at: to.equipment.tag };
    notes.push(about(NETWORK_MESSAGES.oneSource, p, to.equipment.tag, systemField(to)));
    return;
  }
  disagree(from, to, notes);
}

/** Sources whose 120 V may feed both halves of a panel. */
const SINGLE_SOURCES: ReadonlySet<Kind> = new Set<Kind>(['inverter-charger', 'generator', 'ac-battery']);

/** True where whatever else feeds a port stands on the other side of a transfer switch. */
function isAlone({ from, to, switches }: SiteRun): boolean {
  return to.runs.every(
    (other) =>
      other.to !== to ||
      other.from === from ||
      other.carries !== 'ac' ||
      other.switches.some((tag) => switches.includes(tag)),
  );
}

/** Sources on one port run in step, so their systems are equal: the first of another system than this one, named once. */
function unequalStack({ from, to }: SiteRun, notes: PlacedNote[]): void {
  if (!STACKABLE.has(from.equipment.kind) || to.feeders.length < 2) return;
  const first = to.feeders.find((f) => STACKABLE.has(f.equipment.kind));
  if (!first || first === from || first.system === from.system) return;
  if (first.system === undefined || to.system === undefined || !holds(first.system, to.system)) return;
  disagree(first, from, notes);
}

/** True where equal sources on a port make its system together. */
function isStack({ feeders, system }: SitePort): boolean {
  const sources = feeders.filter((f) => STACKABLE.has(f.equipment.kind));
  const each = new Set(sources.map((f) => f.system));
  const [of] = each;
  if (sources.length < 2 || each.size !== 1 || of === undefined || system === undefined) return false;
  return stackedSystems(of, sources.length).some((made) => holds(made, system));
}

/** A disconnect or transfer switch that states a system stands in a run of that system. */
function passedStates(at: SiteEquipment | undefined, { from, to }: SiteRun, notes: PlacedNote[]): void {
  const stated = at?.facts.ac_in?.value;
  if (!at || stated === undefined || stated === 'unused') return;
  const own = { tag: at.tag, system: stated, line: lineOf(at.row) };
  if (from.system !== undefined && !holds(from.system, stated)) {
    const up = { tag: from.equipment.tag, system: from.system, line: lineOf(from.equipment.row) };
    say(up, own, at.tag, 'ac_in', notes);
  }
  if (to.system !== undefined && to.systemBy === 'stated' && !holds(stated, to.system)) {
    const down = { tag: to.equipment.tag, system: to.system, line: lineOf(to.equipment.row) };
    say(own, down, at.tag, 'ac_in', notes);
  }
}

interface Named {
  readonly tag: string;
  readonly system: AcSystem;
  readonly line: ReturnType<typeof lineOf>;
}

function disagree(from: SitePort, to: SitePort, notes: PlacedNote[]): void {
  if (from.system === undefined || to.system === undefined) return;
  from.clashes.push(to);
  to.clashes.push(from);
  const up = { tag: from.equipment.tag, system: from.system, line: lineOf(from.equipment.row) };
  const down = { tag: to.equipment.tag, system: to.system, line: lineOf(to.equipment.row) };
  say(up, down, up.tag, systemField(from), notes);
  say(up, down, down.tag, systemField(to), notes);
}

function say(
  up: Named,
  down: Named,
  at: string,
  field: ReturnType<typeof systemField>,
  notes: PlacedNote[],
): void {
  const p = {
    tag: at,
    from: up.tag,
    fromSystem: up.system,
    to: down.tag,
    toSystem: down.system,
    lines: [up.line, down.line],
  };
  notes.push(about(NETWORK_MESSAGES.systemsDisagree, p, at, field));
}
