import { holds } from '../model/ac-parts.js';
import type { Fact } from '../model/fact.js';
import type { PortGrounding, Site, SiteEquipment, SitePort } from '../model/site.js';
import type { AcSystem, SystemGrounding } from '../model/words.js';
import { joinedPorts } from './ac-bus.js';

/** Systems without a neutral that nobody grounds unless it is said: deltas, and 480 V between two lines. */
const UNGROUNDED: ReadonlySet<AcSystem> = new Set<AcSystem>(['240 delta', '480 delta', '480']);
/** What a transformer may give over two wires without a grounded point. */
const TWO_WIRE: ReadonlySet<AcSystem> = new Set<AcSystem>(['240', '208', '480']);

/** How one bus is grounded, before it is asked at one of its ports. */
type BusGrounding = Omit<PortGrounding, 'whole' | 'autotransformer'>;

/** What was found of the buses of a site: each is asked about at every port that it joins. */
export interface Groundings {
  readonly ofPort: Map<SitePort, BusGrounding>;
  readonly whole: Map<SitePort, AcSystem | undefined>;
  readonly autotransformer: Map<SitePort, SiteEquipment | undefined>;
}

/** Groundings of a site of which nothing is known yet. */
export function noGroundings(): Groundings {
  return { ofPort: new Map(), whole: new Map(), autotransformer: new Map() };
}

/**
 * How the AC system of a port is grounded, and the system that it is a part of. What is joined to one bus has one grounding: a
 * stated one before a default, of several one that isn't solid; else that of what feeds the bus, through transfer switches,
 * autotransformers and the pass-through of an inverter-charger; else the default of its system.
 * @param site the survey
 * @param port an AC port
 * @param known what was found of other ports of that site
 */
export function groundingOf(site: Site, port: SitePort, known: Groundings = noGroundings()): PortGrounding {
  const { grounding, byDefault: isByDefault, from } = busGrounding(site, port, known);
  const whole = wholeOf(port, known);
  const autotransformer = autotransformerAhead(port, known);
  return { grounding, byDefault: isByDefault, from, whole, autotransformer };
}

function busGrounding(site: Site, port: SitePort, known: Groundings): BusGrounding {
  const before = known.ofPort.get(port);
  if (before) return before;
  const bus = joinedPorts(port);
  // What leads back to this bus says nothing of it.
  const open = byDefault(site, bus, port, known);
  for (const one of bus) known.ofPort.set(one, open);
  const found = statedOn(bus) ?? fromOutside(site, bus, known) ?? open;
  for (const one of bus) known.ofPort.set(one, found);
  return found;
}

/** What rows on the bus state of its grounding: one that isn't solid before one that is. */
function statedOn(bus: ReadonlySet<SitePort>): BusGrounding | undefined {
  let found: Fact<SystemGrounding> | undefined;
  for (const port of bus) {
    const own = statedAt(port);
    if (own && (!found || (found.value === 'solid' && own.value !== 'solid'))) found = own;
  }
  return found && { grounding: found.value, byDefault: false, from: found };
}

/** What the row of a port states: of a transformer that speaks of what it feeds. */
function statedAt({ equipment, cls }: SitePort): Fact<SystemGrounding> | undefined {
  if (equipment.kind === 'transformer' && cls === 'ac-in') return undefined;
  return equipment.facts.system_grounding;
}

/** The grounding of what feeds the bus from outside of it, where that is of the same system. */
function fromOutside(site: Site, bus: ReadonlySet<SitePort>, known: Groundings): BusGrounding | undefined {
  const found: BusGrounding[] = [];
  for (const port of bus) {
    for (const source of sourcesOutside(port, bus)) found.push(busGrounding(site, source, known));
  }
  return (
    found.find((g) => g.grounding !== 'solid' && !g.byDefault) ??
    found.find((g) => g.grounding !== 'solid') ??
    found.find((g) => !g.byDefault) ??
    found[0]
  );
}

/** Ports that feed a port of a bus and aren't on it: over a transfer switch, or within the equipment itself. */
function sourcesOutside(port: SitePort, bus: ReadonlySet<SitePort>): readonly SitePort[] {
  const { equipment, cls, system } = port;
  const found = port.feeders.filter((f) => !bus.has(f) && isHeld(f.system, system));
  if (cls !== 'ac-out') return found;
  if (isAutotransformer(equipment)) return [...found, ...equipment.ports.filter((p) => p.cls === 'ac-in')];
  if (equipment.kind !== 'inverter-charger') return found;
  const passed = equipment.ports.filter(
    (p) =>
      (p.cls === 'ac-in' || p.cls === 'ac-in-2') &&
      p.unused === '' &&
      p.system === system &&
      p.feeders.length > 0,
  );
  return [...found, ...passed];
}

function isAutotransformer({ kind, facts }: SiteEquipment): boolean {
  return kind === 'transformer' && facts.isolated?.value === false;
}

/** The autotransformer that feeds a port, as far up as one holds the other. */
function autotransformerAhead(port: SitePort, known: Groundings): SiteEquipment | undefined {
  const passed = new Set<SitePort>();
  let found: SiteEquipment | undefined;
  for (let at: SitePort | undefined = port; at && !passed.has(at); at = holderOf(at)) {
    if (known.autotransformer.has(at)) {
      found = known.autotransformer.get(at);
      break;
    }
    passed.add(at);
    if (at.cls === 'ac-out' && isAutotransformer(at.equipment)) {
      found = at.equipment;
      break;
    }
  }
  for (const one of passed) known.autotransformer.set(one, found);
  return found;
}

function isHeld(whole: AcSystem | undefined, part: AcSystem | undefined): boolean {
  return whole === part || (whole !== undefined && part !== undefined && holds(whole, part));
}

function byDefault(site: Site, bus: ReadonlySet<SitePort>, port: SitePort, known: Groundings): BusGrounding {
  const isIt = site.basis.value === 'iec' && site.earthing.value === 'IT';
  if (isIt) return { grounding: 'none', byDefault: false, from: undefined };
  const head = headOf(bus) ?? port;
  const settled = head.equipment.row.settled?.system_grounding;
  const isOfAnother = head.equipment.kind === 'transformer' && head.cls === 'ac-in';
  const system = head.system ?? wholeOf(port, known);
  const isDerived = head.equipment.kind === 'transformer';
  const usual = system === undefined ? 'solid' : usualGrounding(system, isDerived);
  if (settled && !isOfAnother && standsIn(settled.value, usual)) {
    return { grounding: settled.value, byDefault: true, from: settled };
  }
  return { grounding: usual, byDefault: true, from: undefined };
}

/**
 * The grounding of a system of which nobody states it.
 * @param isDerived true behind a transformer that makes a system of its own: two wires of it have no grounded point by themselves
 */
export function usualGrounding(system: AcSystem, isDerived: boolean): 'solid' | 'none' {
  return UNGROUNDED.has(system) || (isDerived && TWO_WIRE.has(system)) ? 'none' : 'solid';
}

/** Whether what the company settled stands in for the usual. That systems with a neutral are solid says nothing of one without. */
export function standsIn(settled: SystemGrounding, usual: 'solid' | 'none'): boolean {
  return !(usual === 'none' && settled === 'solid');
}

/** The port of a bus that nothing on it feeds: its system is the whole one. */
function headOf(bus: ReadonlySet<SitePort>): SitePort | undefined {
  let first: SitePort | undefined;
  for (const port of bus) {
    if (port.system === undefined || port.feeders.some((f) => bus.has(f))) continue;
    if (port.equipment.kind === 'service' || port.equipment.kind === 'transformer') return port;
    first ??= port;
  }
  return first;
}

/**
 * The system that the system of a port is a part of: that of what feeds it, as far up as one holds the other.
 * @param port an AC port; undefined where its system isn't known
 */
function wholeOf(port: SitePort, known: Groundings): AcSystem | undefined {
  const passed: SitePort[] = [];
  let at = port;
  let found: AcSystem | undefined;
  for (;;) {
    if (known.whole.has(at)) {
      found = known.whole.get(at);
      break;
    }
    passed.push(at);
    const next = holderOf(at);
    if (!next || passed.includes(next)) {
      found = at.system;
      break;
    }
    at = next;
  }
  for (const one of passed) known.whole.set(one, found);
  return found;
}

/**
 * What feeds a port and holds its system: of several the one of the most lines, since that decides what a line stands at. Of a
 * source that makes a larger system together with others, what they feed.
 */
function holderOf(port: SitePort): SitePort | undefined {
  const { system, equipment, cls } = port;
  if (system === undefined) return undefined;
  const stack = port.runs.find(({ from, to, carries, switches }) => {
    const isFed = from === port && carries === 'ac' && switches.length === 0;
    return isFed && to.system !== undefined && to.system !== system && holds(to.system, system);
  });
  if (stack) return stack.to;
  const holders = port.feeders.filter((f) => f.system !== undefined && holds(f.system, system));
  const larger = holders.find((f) => f.system !== system) ?? holders[0];
  if (larger || cls !== 'ac-out' || equipment.kind !== 'inverter-charger') return larger;
  return equipment.ports.find(
    (p) => (p.cls === 'ac-in' || p.cls === 'ac-in-2') && p.system === system && p.feeders.length > 0,
  );
}
