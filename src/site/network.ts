import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import type { Kind } from '../model/words.js';
import { about } from '../model/message.js';
import { NETWORK_MESSAGES } from '../model/messages/network.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { joinedPorts } from './ac-bus.js';
import { portsOnBus } from './battery-bus.js';
import type { Connections } from './connections.js';
import { standsIn, usualGrounding } from './grounding.js';
import type { Link } from './links.js';

/**
 * What contradicts itself between what feeds and what is fed, and what nobody says of it: transfer equipment, transformers, nominal
 * voltages of a DC bus, rows of kind `other` that stand in a run.
 * @param equipments in natural order, with ports, runs and systems
 * @param links the directed connections
 * @param connections what each row names
 * @param inDoubt equipment that a connection with an error names
 */
export function checkNetwork(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
  connections: Connections,
  inDoubt: ReadonlySet<string>,
): readonly PlacedNote[] {
  return [
    ...unconnectedSwitches(equipments, links, inDoubt),
    ...serviceEquipment(equipments),
    ...transformers(equipments),
    ...transferEquipment(equipments),
    ...nominals(equipments),
    ...othersInTheWay(equipments, connections),
  ];
}

function unconnectedSwitches(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
  inDoubt: ReadonlySet<string>,
): PlacedNote[] {
  const switches = equipments.filter((e) => e.kind === 'transfer-switch' && !inDoubt.has(e.tag));
  if (switches.length === 0) return [];
  const fed = new Set(links.filter((l) => l.downEnd === 'pass').map((l) => l.down));
  const feeding = new Set(links.filter((l) => l.upEnd === 'pass').map((l) => l.up));
  return switches.flatMap((at) => {
    const isFed = fed.has(at);
    const feeds = feeding.has(at);
    // What a connection with an error names may be joined to it in another way: that is said already.
    if ((isFed && feeds) || links.some((l) => isAtDoubt(l, at, inDoubt))) return [];
    const lacks = isFed ? 'load' : feeds ? 'supply' : 'both';
    const p = { tag: at.tag, kind: at.kind, lacks } as const;
    return [about(NETWORK_MESSAGES.passUnconnected, p, at.tag, 'connects_to')];
  });
}

function isAtDoubt({ up, down }: Link, at: SiteEquipment, inDoubt: ReadonlySet<string>): boolean {
  return (up === at && inDoubt.has(down.tag)) || (down === at && inDoubt.has(up.tag));
}

/** A disconnect between a service and its first panel may be the service equipment. */
function serviceEquipment(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const disconnects = new Set<string>();
  for (const { kind, tag } of equipments) if (kind === 'disconnect') disconnects.add(tag);
  if (disconnects.size === 0) return notes;
  for (const service of equipments) {
    if (service.kind !== 'service') continue;
    for (const { to, through: passed } of service.ports.flatMap((p) => p.runs)) {
      const through = passed.filter((tag) => disconnects.has(tag));
      if (to.equipment.kind !== 'panel' || through.length === 0) continue;
      const p = { service: service.tag, panel: to.equipment.tag, through };
      notes.push(about(NETWORK_MESSAGES.serviceEquipment, p, through[0] ?? service.tag, ''));
    }
  }
  return notes;
}

function transformers(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const { tag, kind, facts, row, ports } of equipments) {
    if (kind !== 'transformer') continue;
    for (const [port, field] of [
      ['ac-in', 'ac_in'],
      ['ac-out', 'ac_out'],
    ] as const) {
      const stated = facts[field] !== undefined && facts[field].value !== 'unused';
      if (stated || row.unreadable.has(field)) continue;
      notes.push(about(NETWORK_MESSAGES.transformerSystem, { tag, port }, tag, field));
    }
    if (!facts.isolated && !row.unreadable.has('isolated')) {
      notes.push(about(NETWORK_MESSAGES.separatelyDerived, { tag }, tag, 'isolated'));
    }
    const out = ports.find((p) => p.cls === 'ac-out');
    const isDerived = facts.isolated?.value !== false;
    if (!isDerived || !out?.system || facts.system_grounding || row.unreadable.has('system_grounding'))
      continue;
    const grounding = usualGrounding(out.system, true);
    const settled = row.settled?.system_grounding?.value;
    if (settled !== undefined && standsIn(settled, grounding)) continue;
    notes.push(about(NETWORK_MESSAGES.transformerGrounding, { tag, grounding }, tag, 'system_grounding'));
  }
  return notes;
}

const SUPPLIES: ReadonlySet<Kind> = new Set<Kind>(['service', 'inverter-charger', 'generator']);

/** The ports that a port is joined to, through transformers too: what one side of it is fed by energises the other. */
function joinedThroughTransformers(port: SitePort): ReadonlySet<SitePort> {
  const found = new Set<SitePort>();
  const open: SitePort[] = [port];
  for (let at = open.pop(); at; at = open.pop()) {
    if (found.has(at)) continue;
    for (const one of joinedPorts(at)) {
      found.add(one);
      if (one.equipment.kind === 'transformer')
        open.push(...one.equipment.ports.filter((p) => !found.has(p)));
    }
  }
  return found;
}

/**
 * A generator on what a service, an inverter-charger or another generator also feeds, without a transfer switch between. An
 * inverter's second AC in is a port of its own, and so another bus.
 */
function transferEquipment(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  for (const { tag, kind, ports, facts } of equipments) {
    const output = ports.find((p) => p.cls === 'output');
    if (kind !== 'generator' || !output) continue;
    const others = new Map<string, SiteEquipment>();
    for (const port of joinedThroughTransformers(output)) {
      const other = port.equipment;
      if (other.tag === tag || !SUPPLIES.has(other.kind)) continue;
      if (feeds(port)) others.set(other.tag, other);
    }
    if (others.size === 0) continue;
    const p = { tag, others: [...others.keys()].sort(byNaturalOrder) };
    const isMeant =
      facts.parallel?.value === true || [...others.values()].every((o) => o.facts.parallel?.value === true);
    const message = isMeant ? NETWORK_MESSAGES.inParallel : NETWORK_MESSAGES.transferMissing;
    notes.push(about(message, p, tag, isMeant ? 'parallel' : 'connects_to'));
  }
  return notes;
}

/** True for a port by which its equipment feeds what it is joined to. */
function feeds({ cls, runs, equipment }: SitePort): boolean {
  if (cls === 'service' || cls === 'output') return true;
  return cls === 'ac-out' && runs.some((run) => run.from.equipment === equipment && run.carries === 'ac');
}

/** Nominal voltages of one class: what the trade calls 12 V is 12.8 V with another chemistry (common practice, no source). */
const CLASSES: readonly (readonly number[])[] = [
  [12, 12.8],
  [24, 25.6],
  [36, 38.4],
  [48, 51.2],
];

/** V of the class of a nominal voltage; a voltage of no class is one of its own. */
export function nominalClass(volts: number): number {
  return CLASSES.find((members) => members.includes(volts))?.[0] ?? volts;
}

function nominals(equipments: readonly SiteEquipment[]): PlacedNote[] {
  const notes: PlacedNote[] = [];
  const told = new Set<SitePort>();
  for (const { ports } of equipments) {
    for (const port of ports) {
      if ((port.cls !== 'battery' && port.cls !== 'dc-bus') || told.has(port)) continue;
      const bus = portsOnBus(port);
      for (const one of bus) told.add(one);
      const rows = [...new Set([...bus].map((p) => p.equipment))].flatMap(({ tag, facts }) =>
        facts.battery_voltage ? [{ tag, volts: facts.battery_voltage.value }] : [],
      );
      if (new Set(rows.map((r) => nominalClass(r.volts))).size < 2) continue;
      rows.sort((a, b) => byNaturalOrder(a.tag, b.tag));
      const odd = rows.find((r) => nominalClass(r.volts) !== nominalClass(rows[0]?.volts ?? r.volts));
      notes.push(
        about(NETWORK_MESSAGES.dcNominals, { rows }, odd?.tag ?? rows[0]?.tag ?? '', 'battery_voltage'),
      );
    }
  }
  return notes;
}

const NAMES_IN_VAIN: ReadonlySet<Kind> = new Set<Kind>([
  'array',
  'combiner',
  'wind-turbine',
  'hydro-turbine',
  'generator',
  'battery',
  'load',
  'dc-load',
  'diversion-load',
  'ac-module-branch',
  'ac-battery',
]);

/** Rows of kind `other` on both sides of which something hangs, or that a source or a load names. */
function othersInTheWay(equipments: readonly SiteEquipment[], { targets }: Connections): PlacedNote[] {
  const others = new Map(equipments.filter((e) => e.kind === 'other').map((e) => [e.tag, e]));
  if (others.size === 0) return [];
  const kinds = new Map(equipments.map((e) => [e.tag, e.kind]));
  const isPower = (tag: string): boolean => {
    const kind = kinds.get(tag);
    return kind !== undefined && kind !== 'control-circuit' && kind !== 'signal-line';
  };
  const namers = new Map<string, string[]>();
  for (const [tag, named] of targets) {
    for (const { member } of named) {
      if (!others.has(member.tag) || !isPower(tag)) continue;
      const mine = namers.get(member.tag);
      if (mine) mine.push(tag);
      else namers.set(member.tag, [tag]);
    }
  }
  return [...others.keys()].flatMap((tag) => {
    const by = namers.get(tag) ?? [];
    const named = (targets.get(tag) ?? []).map((t) => t.member.tag).filter(isPower);
    const isInTheWay =
      (by.length > 0 && named.length > 0) ||
      by.length > 1 ||
      by.some((one) => NAMES_IN_VAIN.has(kinds.get(one) ?? 'other'));
    if (!isInTheWay) return [];
    const ends = [...new Set([...by, ...named])].sort(byNaturalOrder);
    return [about(NETWORK_MESSAGES.otherInTheWay, { tag, ends }, tag, 'kind')];
  });
}
