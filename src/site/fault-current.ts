import type { Fact } from '../model/fact.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import type { AcSystem } from '../model/words.js';
import { batteriesOn } from './battery-bus.js';

/** One figure that a fault current is made of. */
export interface FaultSource {
  readonly tag: string;
  /** A. */
  readonly fact: Fact<number>;
  /** Of a transformer whose row states no figure: what the bound is made of. */
  readonly by?: TransformerFacts;
}

/** What a transformer states of itself. */
export interface TransformerFacts {
  readonly kva: Fact<number>;
  readonly impedance: Fact<number>;
  /** Of its secondary. */
  readonly system: AcSystem;
}

/** The most that a transformer can drive into a fault, A. */
export type TransformerBound = (facts: TransformerFacts) => number;

/** Available fault current at a port, A: its own, or an upper bound from upstream. */
export interface FaultCurrent {
  /** The stated facts that it is made of. */
  readonly from: readonly FaultSource[];
  readonly value: number;
  /** True where it is the row's own figure. */
  readonly own: boolean;
  /** Feeders whose figure isn't known. */
  readonly unknown: readonly string[];
}

/**
 * The fault current at an AC port or a battery bus. An AC port without its own figure takes that of the port upstream as
 * the upper bound; an inverter's AC out takes its AC in. The batteries of a bus feed a fault together: their currents add,
 * and what a converter on that bus states is that of its AC side.
 * @returns undefined where nobody states one
 */
export function faultCurrentAt(port: SitePort, bound: TransformerBound): FaultCurrent | undefined {
  return port.cls === 'battery' || port.cls === 'dc-bus' ? onBus(port) : find(port, new Set(), bound);
}

function onBus(port: SitePort): FaultCurrent | undefined {
  const from: FaultCurrent['from'][number][] = [];
  const unknown: string[] = [];
  let value = 0;
  for (const battery of batteriesOn(port)) {
    const fact = battery.facts.fault_current;
    if (!fact) {
      unknown.push(battery.tag);
      continue;
    }
    from.push({ tag: battery.tag, fact });
    value += fact.value;
  }
  const own = from.length === 1 && unknown.length === 0 && from[0]?.tag === port.equipment.tag;
  return from.length > 0 ? { from, value, own, unknown } : undefined;
}

/** The ports upstream of a port; of an AC out that nothing feeds, the AC inputs of its inverter. */
function upstreamOf(port: SitePort): readonly SitePort[] {
  const { cls, equipment, feeders } = port;
  if (cls === 'ac-out' && equipment.kind === 'transformer') {
    return equipment.ports.filter((p) => p.cls === 'ac-in');
  }
  return cls === 'ac-out' && feeders.length === 0
    ? equipment.ports.filter((p) => p.cls === 'ac-in' || p.cls === 'ac-in-2')
    : feeders;
}

/** True for the side of a transformer that a system of its own begins at. */
function isDerived({ cls, equipment }: SitePort): boolean {
  return cls === 'ac-out' && equipment.kind === 'transformer' && equipment.facts.isolated?.value !== false;
}

/** What a port's own row states of it: of a transformer that is about what it feeds. */
function ownFigure(port: SitePort, bound: TransformerBound): FaultSource | undefined {
  const { equipment, cls, system } = port;
  const { tag, facts, kind } = equipment;
  if (kind === 'transformer' && cls !== 'ac-out') return undefined;
  if (facts.fault_current) return { tag, fact: facts.fault_current };
  const { kva, impedance_percent: impedance } = facts;
  if (!isDerived(port) || !kva || !impedance || system === undefined) return undefined;
  const by = { kva, impedance, system };
  return { tag, fact: { value: bound(by), origin: kva.origin, text: '' }, by };
}

function find(port: SitePort, seen: Set<SitePort>, bound: TransformerBound): FaultCurrent | undefined {
  let at = port;
  // As long as one port feeds it, what is known there is known here: a chain of panels may be as long as its list.
  for (;;) {
    if (seen.has(at)) return undefined;
    seen.add(at);
    const { equipment } = at;
    const own = ownFigure(at, bound);
    if (own) {
      const isOwn = at === port && own.by === undefined;
      return { from: [own], value: own.fact.value, own: isOwn, unknown: [] };
    }
    if (isDerived(at)) return undefined;
    const upstream = upstreamOf(at);
    const [only] = upstream;
    if (!only) return undefined;
    if (upstream.length > 1) return join(equipment, upstream, seen, bound);
    at = only;
  }
}

/** The most that any of several feeders can drive. */
function join(
  equipment: SiteEquipment,
  upstream: readonly SitePort[],
  seen: Set<SitePort>,
  bound: TransformerBound,
): FaultCurrent | undefined {
  const from: FaultCurrent['from'][number][] = [];
  const unknown: string[] = [];
  let value = 0;
  for (const feeder of upstream) {
    const found = find(feeder, seen, bound);
    if (!found) {
      // An inverter's own AC in isn't what to ask about: what feeds it is.
      const silent = feeder.equipment === equipment ? feeder.feeders : [feeder];
      for (const one of silent) unknown.push(one.equipment.tag);
      continue;
    }
    for (const one of found.from) from.push(one);
    for (const tag of found.unknown) unknown.push(tag);
    value = Math.max(value, found.value);
  }
  return from.length > 0 ? { from, value, own: false, unknown } : undefined;
}
