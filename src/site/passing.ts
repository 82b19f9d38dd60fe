import { LIMITS } from '../model/limits.js';
import type { PlacedNote } from '../model/open-item.js';
import type { RunLeg, SiteEquipment } from '../model/site.js';
import type { Kind } from '../model/words.js';
import { about } from '../model/message.js';
import { NETWORK_MESSAGES } from '../model/messages/network.js';
import { byNaturalOrder } from '../model/natural-order.js';
import type { Connections } from './connections.js';

/** Two equipments that are joined, disconnects passed through. */
export interface Joint {
  /** The one that names the other, at its end of the way. */
  readonly row: SiteEquipment;
  readonly other: SiteEquipment;
  /** DC inputs of `other` that are named. */
  readonly inputs: readonly number[];
  /** From `row` to `other`. */
  readonly legs: readonly RunLeg[];
  readonly through: readonly SiteEquipment[];
  /** True where a disconnect joins more than two: a pair of them that makes no sense is none. */
  readonly oneOfSeveral: boolean;
}

/** A way from a disconnect to equipment that is none. */
interface End {
  readonly end: SiteEquipment;
  readonly inputs: readonly number[];
  /** From the disconnect outwards. */
  readonly legs: readonly RunLeg[];
  readonly through: readonly SiteEquipment[];
}

interface Step {
  readonly to: SiteEquipment;
  readonly inputs: readonly number[];
  readonly leg: RunLeg;
}

/** What names what, both ways. */
interface Graph {
  readonly out: ReadonlyMap<SiteEquipment, readonly Step[]>;
  readonly into: ReadonlyMap<SiteEquipment, readonly Step[]>;
}

/** What feeds first: of several at one disconnect the first of these feeds the others. */
const FEEDING_ORDER: readonly Kind[] = [
  'service',
  'generator',
  'wind-turbine',
  'hydro-turbine',
  'array',
  'combiner',
  'battery',
  'transformer',
  'transfer-switch',
  'ac-battery',
  'inverter-charger',
  'charge-controller',
  'panel',
  'dc-panel',
];
const SOURCES: ReadonlySet<Kind> = new Set(FEEDING_ORDER.slice(0, 7));

/**
 * Joins what connects through disconnects: each path between two equipments is a joint of its own, its cables in order.
 * @param equipments by tag, in natural order
 * @param connections the resolved targets
 * @returns the joints, row by row; what stands in no run; undefined where there are more paths than a job may have
 */
export function jointsOf(
  equipments: ReadonlyMap<string, SiteEquipment>,
  connections: Connections,
): { joints: readonly Joint[]; notes: readonly PlacedNote[]; dropped: ReadonlySet<string> } | undefined {
  const graph = graphOf(equipments, connections);
  const joints: Joint[] = [];
  const notes: PlacedNote[] = [];
  const dropped = new Set<string>();
  let budget: number = LIMITS.jobConnections;
  for (const row of equipments.values()) {
    if (isPassed(row)) continue;
    for (const step of graph.out.get(row) ?? []) {
      if (!isPassed(step.to) || row.kind === 'control-circuit') {
        joints.push({
          row,
          other: step.to,
          inputs: step.inputs,
          legs: [step.leg],
          through: [],
          oneOfSeveral: false,
        });
        continue;
      }
      const ends = endsFrom(step.to, graph.out, budget);
      if (!ends) return undefined;
      budget -= ends.length;
      const several = ends.length > 1 || (graph.into.get(step.to)?.length ?? 0) > 1;
      for (const { end, inputs, legs, through } of ends) {
        if (end === row) continue;
        joints.push({
          row,
          other: end,
          inputs,
          legs: [step.leg, ...legs],
          through: [step.to, ...through],
          oneOfSeveral: several,
        });
      }
    }
  }
  for (const at of equipments.values()) {
    if (!isPassed(at)) continue;
    const out = graph.out.get(at) ?? [];
    // A control circuit that names a disconnect ends there.
    const into = (graph.into.get(at) ?? []).filter((s) => s.to.kind !== 'control-circuit');
    if (out.length > 0 && into.length > 0) continue;
    const ends = endsFrom(at, out.length > 0 ? graph.out : graph.into, budget);
    if (!ends) return undefined;
    budget -= ends.length ** 2;
    if (budget < 0) return undefined;
    if (ends.length < 2) {
      const [only] = ends;
      const lacks = !only ? 'both' : SOURCES.has(only.end.kind) ? 'load' : 'supply';
      if (!connections.inDoubt.has(at.tag)) {
        notes.push(
          about(
            NETWORK_MESSAGES.passUnconnected,
            { tag: at.tag, kind: at.kind, lacks },
            at.tag,
            'connects_to',
          ),
        );
      }
      for (const { end } of ends) dropped.add(end.tag);
      continue;
    }
    const met = pairsAt(at, ends);
    if (met) joints.push(...met);
    else {
      const tags = ends.map((e) => e.end.tag).sort(byNaturalOrder);
      notes.push(about(NETWORK_MESSAGES.passUnclear, { tag: at.tag, ends: tags }, at.tag, 'connects_to'));
      for (const tag of tags) dropped.add(tag);
    }
  }
  return { joints, notes, dropped };
}

/** True for what passes a connection through and has no protector of its own; a transfer switch is passed when runs are made. */
export function isPassed({ kind }: SiteEquipment): boolean {
  return kind === 'disconnect';
}

function graphOf(equipments: ReadonlyMap<string, SiteEquipment>, { targets }: Connections): Graph {
  const out = new Map<SiteEquipment, Step[]>();
  const into = new Map<SiteEquipment, Step[]>();
  const put = (to: Map<SiteEquipment, Step[]>, key: SiteEquipment, step: Step): void => {
    const mine = to.get(key);
    if (mine) mine.push(step);
    else to.set(key, [step]);
  };
  for (const row of equipments.values()) {
    for (const { member, inputs, length } of targets.get(row.tag) ?? []) {
      const other = equipments.get(member.tag);
      if (!other) continue;
      const leg: RunLeg = { row, length };
      put(out, row, { to: other, inputs, leg });
      if (isPassed(other)) put(into, other, { to: row, inputs: [], leg });
    }
  }
  return { out, into };
}

/** The ends of all ways from a disconnect along `steps`; undefined where there are more than `most`. */
function endsFrom(
  start: SiteEquipment,
  steps: ReadonlyMap<SiteEquipment, readonly Step[]>,
  most: number,
): readonly End[] | undefined {
  const found: End[] = [];
  const open: Omit<End, 'inputs'>[] = [{ end: start, legs: [], through: [] }];
  let taken = 0;
  for (let at = open.shift(); at; at = open.shift()) {
    taken += at.legs.length;
    if (taken > most) return undefined;
    for (const { to, inputs, leg } of steps.get(at.end) ?? []) {
      if (to.kind === 'control-circuit') continue;
      const legs = [...at.legs, leg];
      if (isPassed(to)) open.push({ end: to, legs, through: [...at.through, to] });
      else found.push({ end: to, inputs, legs, through: at.through });
    }
  }
  return found;
}

/** The pairs of several that meet at a disconnect: what feeds first with each of the others; undefined: it can't be told. */
function pairsAt(at: SiteEquipment, ends: readonly End[]): readonly Joint[] | undefined {
  const rank = ({ end }: End): number => {
    const place = FEEDING_ORDER.indexOf(end.kind);
    return place < 0 ? FEEDING_ORDER.length : place;
  };
  const sources = ends.filter((e) => SOURCES.has(e.end.kind));
  const least = Math.min(...ends.map(rank));
  const feeding = sources.length > 0 ? sources : ends.filter((e) => rank(e) === least);
  const fed = ends.filter((e) => !feeding.includes(e));
  if (fed.length === 0) return undefined;
  const oneOfSeveral = ends.length > 2;
  return feeding.flatMap((from) =>
    fed.map((to) => ({
      row: from.end,
      other: to.end,
      inputs: to.inputs,
      legs: [...[...from.legs].reverse(), ...to.legs],
      through: [...[...from.through].reverse(), at, ...to.through],
      oneOfSeveral,
    })),
  );
}
