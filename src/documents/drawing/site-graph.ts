import type { Plan, PlannedEquipment, PlannedProtector, PlannedRun } from '../../model/plan.js';
import { drawnLength } from '../../words/lengths.js';
import { equipmentOf } from '../parts/site-index.js';

/** The west side takes what feeds the equipment, the east side what it feeds. */
export type Side = 'west' | 'east';

/** One port as it is drawn on one side of its equipment. */
export interface PortRow {
  /** Unique on the site. */
  readonly key: string;
  readonly tag: string;
  readonly port: string;
  readonly side: Side;
  /** Lengths of the runs that are labelled here. */
  readonly labels: string[];
  /** Protectors drawn on this row's line. */
  readonly taps: PlannedProtector[];
  /** Protectors that this row shares with a row of the other side. */
  readonly shared: PlannedProtector[];
  /** True where the line comes from outside the list: the utility. */
  outside: boolean;
}

/** One equipment with its rows. */
export interface Unit {
  readonly equipment: PlannedEquipment;
  readonly rows: readonly PortRow[];
  /** Protectors under its box, fed from a row of each side. */
  readonly shared: readonly PlannedProtector[];
}

/** A drawn line between two rows, by their keys. */
export interface Line {
  readonly from: string;
  readonly to: string;
}

/** The site as its drawing shows it. */
export interface SiteGraph {
  readonly units: readonly Unit[];
  readonly lines: readonly Line[];
  readonly rowOf: ReadonlyMap<string, PortRow>;
}

type End = { readonly equipment: string; readonly port: string };

const keyOf = (end: End, side: Side): string => `${side} ${end.port} ${end.equipment}`;

/**
 * The run as it is drawn, from left to right. A charge controller is drawn ahead of its battery, where its energy goes,
 * whichever of them the list names as the source.
 */
function asDrawn(run: PlannedRun, kinds: ReadonlyMap<string, string>): PlannedRun {
  const backwards =
    kinds.get(run.from.equipment) === 'battery' && kinds.get(run.to.equipment) === 'charge-controller';
  return backwards ? { ...run, from: run.to, to: run.from, through: [...run.through].reverse() } : run;
}

/** Ends of the run with the transfer switches between them. */
function stations(run: PlannedRun): End[] {
  return [run.from, ...run.through.map((equipment) => ({ equipment, port: '' })), run.to];
}

type Rows = Map<string, PortRow>;

function findRow(rows: Rows, end: End, side: Side): PortRow | undefined {
  return rows.get(keyOf(end, side));
}

function rowAt(rows: Rows, end: End, side: Side): PortRow {
  const known = findRow(rows, end, side);
  if (known !== undefined) return known;
  const key = keyOf(end, side);
  const made: PortRow = {
    key,
    tag: end.equipment,
    port: end.port,
    side,
    labels: [],
    taps: [],
    shared: [],
    outside: false,
  };
  rows.set(key, made);
  return made;
}

function lengthText(run: PlannedRun, plan: Plan): string {
  return run.length === null ? 'length not stated' : drawnLength(run.length, plan.basis);
}

/** Where a run's length is written: at the end that has no other run, first at the end of the row that owns it. */
function labelRuns(plan: Plan, runs: readonly PlannedRun[], rows: Rows): void {
  const counts = new Map<PortRow, number>();
  const ends = runs.map((run) => ({
    run,
    from: rowAt(rows, run.from, 'east'),
    to: rowAt(rows, run.to, 'west'),
  }));
  for (const { from, to } of ends) {
    counts.set(from, (counts.get(from) ?? 0) + 1);
    counts.set(to, (counts.get(to) ?? 0) + 1);
  }
  for (const { run, from, to } of ends) {
    const order = run.row === run.from.equipment ? [from, to] : [to, from];
    const alone = order.find((row) => counts.get(row) === 1);
    const text = lengthText(run, plan);
    if (alone !== undefined) alone.labels.push(text);
    else to.labels.push(`from ${run.from.equipment}: ${text}`);
  }
}

/** The side of a port that no run touches. */
function restingSide(port: string): Side {
  return port === 'output' || port === 'ac-out' ? 'east' : 'west';
}

/** A service's protector stands behind its main breaker, on the side of what it feeds, unless it is ahead of it. */
function standsBehindMain(plan: Plan, { equipment, port }: End): boolean {
  if (port !== 'service') return false;
  const facts = equipmentOf(plan, equipment)?.facts ?? [];
  return !facts.some((f) => f.field === 'ahead_of_disconnect' && f.value === true);
}

function placeProtector(plan: Plan, protector: PlannedProtector, rows: Rows): void {
  const [first, second] = protector.ports;
  if (first === undefined) return;
  const found = standsBehindMain(plan, first)
    ? rowAt(rows, first, 'east')
    : (findRow(rows, first, 'west') ??
      findRow(rows, first, 'east') ??
      rowAt(rows, first, restingSide(first.port)));
  if (second === undefined || second.equipment !== first.equipment) {
    found.taps.push(protector);
    return;
  }
  const other = found.side === 'west' ? 'east' : 'west';
  const partner =
    findRow(rows, second, other) ??
    (findRow(rows, second, found.side) === undefined ? rowAt(rows, second, other) : undefined);
  if (partner === undefined) {
    found.taps.push(protector);
    return;
  }
  found.shared.push(protector);
  partner.shared.push(protector);
}

/**
 * What the placement drawing shows: equipments, ports with a run or a protector, runs and protectors, each protector once.
 * Ports that have neither are told in the table of ports without a protector.
 */
export function siteGraph(plan: Plan): SiteGraph {
  const rows: Rows = new Map();
  const lines = new Map<string, Line>();
  for (const equipment of plan.site.equipments) {
    if (equipment.kind !== 'service') continue;
    const row = rowAt(rows, { equipment: equipment.tag, port: 'service' }, 'west');
    row.outside = true;
    row.labels.push('utility');
  }
  const kinds = new Map(plan.site.equipments.map((e) => [e.tag, e.kind]));
  const runs = plan.site.runs.map((run) => asDrawn(run, kinds));
  for (const run of runs) {
    const chain = stations(run);
    chain.slice(1).forEach((to, index) => {
      const from = chain[index];
      if (from === undefined || from.equipment === to.equipment) return;
      const line = { from: rowAt(rows, from, 'east').key, to: rowAt(rows, to, 'west').key };
      lines.set(`${line.from}\n${line.to}`, line);
    });
  }
  labelRuns(plan, runs, rows);
  for (const protector of plan.protectors) placeProtector(plan, protector, rows);

  const rowsOf = new Map<string, PortRow[]>();
  for (const row of rows.values()) {
    const own = rowsOf.get(row.tag);
    if (own === undefined) rowsOf.set(row.tag, [row]);
    else own.push(row);
  }
  const units = plan.site.equipments.map((equipment) => {
    const rank = (row: PortRow): number =>
      equipment.ports.indexOf(row.port) + (row.shared.length > 0 ? 1000 : 0);
    const own = (rowsOf.get(equipment.tag) ?? []).sort((a, b) => rank(a) - rank(b));
    return { equipment, rows: own, shared: [...new Set(own.flatMap((r) => r.shared))] };
  });
  return { units, lines: [...lines.values()], rowOf: rows };
}
