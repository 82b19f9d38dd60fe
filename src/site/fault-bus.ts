import type { Fact } from '../model/fact.js';
import type { SitePort, SiteRun } from '../model/site.js';
import type { AcSystem } from '../model/words.js';

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

/** Why it isn't known what comes from a row: it states no figure, or the list doesn't say what it passes on. */
export type Unknown = 'not-stated' | 'passes-on';

/** What feeds a fault on a bus, or why that isn't known. */
export interface Feed {
  readonly tag: string;
  readonly source: FaultSource | Unknown;
}

/** AC ports of which a fault is fed alike: joined without a transfer switch and without a row that says what is available there. */
export interface FaultBus {
  /** What rows that feed it say is available at them; what stands ahead of them is in that figure. */
  readonly given: Feed[];
  /** What feeds by itself: generators, inverters, AC batteries, services; and panels of which nobody says what feeds them. */
  readonly sources: Feed[];
  /** Ports fed by it that say what is available there: what stands behind them may feed back. */
  readonly lower: SitePort[];
  /** Runs through a transfer switch that feed it, and that it feeds. */
  readonly up: SiteRun[];
  readonly down: SiteRun[];
  /** AC inputs, by inverter, whose supply its AC out passes on. */
  readonly passed: (readonly SitePort[])[];
}

/** From where a port is looked at that states what is available there: by what feeds it, or by what it feeds. */
type Side = 'above' | 'below';

/** The buses of sites, found as they are asked for; each port of one bus shares its own. */
export interface FaultBuses {
  readonly above: WeakMap<SitePort, FaultBus>;
  readonly below: WeakMap<SitePort, FaultBus>;
  readonly bound: TransformerBound;
}

/** True for the side of a transformer that a system of its own begins at. */
export function isDerived({ cls, equipment }: SitePort): boolean {
  return cls === 'ac-out' && equipment.kind === 'transformer' && equipment.facts.isolated?.value !== false;
}

/** Kinds whose figure is what they give, not what is available at them. */
const GIVES: ReadonlySet<string> = new Set([
  'generator',
  'inverter-charger',
  'ac-battery',
  'grid-tie-inverter',
  'ac-module-branch',
]);

/** True for a port whose figure takes in all that stands ahead of it: what a row states, and where a system of its own begins. */
export function separates(port: SitePort): boolean {
  const { equipment, cls } = port;
  if (GIVES.has(equipment.kind)) return false;
  if (equipment.kind === 'transformer') {
    return cls === 'ac-out' && (isDerived(port) || equipment.facts.fault_current !== undefined);
  }
  return equipment.facts.fault_current !== undefined;
}

/** What the row of a port that separates says is available there: its own figure, or of a transformer what bounds it. */
export function availableAt(port: SitePort, bound: TransformerBound): FaultSource | undefined {
  const { tag, facts } = port.equipment;
  if (facts.fault_current) return { tag, fact: facts.fault_current };
  const { kva, impedance_percent: impedance } = facts;
  if (!kva || !impedance || port.system === undefined) return undefined;
  const by = { kva, impedance, system: port.system };
  return { tag, fact: { value: bound(by), origin: kva.origin, text: '' }, by };
}

/** AC inputs of an inverter-charger that the list doesn't call unused. */
export function acInputsOf({ equipment }: SitePort): readonly SitePort[] {
  if (equipment.kind !== 'inverter-charger') return [];
  return equipment.ports.filter((p) => (p.cls === 'ac-in' || p.cls === 'ac-in-2') && p.unused !== 'stated');
}

/** The bus of a port; of one that separates the bus on that side of it. */
export function busOf(buses: FaultBuses, port: SitePort, side: Side): FaultBus {
  const known = (side === 'below' ? buses.below : buses.above).get(port);
  if (known) return known;
  const bus: FaultBus = { given: [], sources: [], lower: [], up: [], down: [], passed: [] };
  const open: [SitePort, Side][] = [[port, side]];
  for (let at = open.pop(); at; at = open.pop()) {
    const [one, from] = at;
    const sides = separates(one) ? [from] : (['above', 'below'] as const);
    if (sides.some((s) => buses[s].has(one))) continue;
    for (const s of sides) buses[s].set(one, bus);
    collect(bus, one, from, buses.bound);
    for (const run of one.runs) {
      const isDown = run.from === one;
      if (run.carries !== 'ac' || !sides.includes(isDown ? 'below' : 'above')) continue;
      if (run.switches.length > 0) (isDown ? bus.down : bus.up).push(run);
      else open.push(isDown ? [run.to, 'above'] : [run.from, 'below']);
    }
    open.push(...throughAutotransformer(one, sides));
  }
  return bus;
}

/** Both sides of an autotransformer are one system. */
function throughAutotransformer(port: SitePort, sides: readonly Side[]): [SitePort, Side][] {
  const { equipment, cls } = port;
  if (equipment.kind !== 'transformer' || equipment.facts.isolated?.value !== false) return [];
  const isOut = cls === 'ac-out';
  if (isOut && !sides.includes('above')) return [];
  const others = equipment.ports.filter((p) => p !== port && (p.cls === 'ac-in' || p.cls === 'ac-out'));
  return others.map((p) => [p, isOut ? 'below' : 'above']);
}

/** Puts what a port brings to the bus that it is on. */
function collect(bus: FaultBus, port: SitePort, side: Side, bound: TransformerBound): void {
  const { equipment, cls } = port;
  const { tag, kind } = equipment;
  if (separates(port)) {
    if (side === 'below') bus.given.push({ tag, source: availableAt(port, bound) ?? 'not-stated' });
    // Behind a transformer that begins a system of its own nothing feeds back as it is.
    else if (!isDerived(port)) bus.lower.push(port);
    return;
  }
  const own = equipment.facts.fault_current;
  const source = own ? { tag, fact: own } : 'not-stated';
  if (kind === 'service' || kind === 'generator' || kind === 'ac-battery') bus.sources.push({ tag, source });
  else if (kind === 'panel' && port.feeders.length === 0) bus.sources.push({ tag, source: 'passes-on' });
  else if (kind === 'inverter-charger' && cls === 'ac-out') collectInverter(bus, port, source);
}

/** An inverter gives its own share and passes on what feeds its AC in, beside which its unstated share isn't asked for. */
function collectInverter(bus: FaultBus, port: SitePort, source: Feed['source']): void {
  const { tag } = port.equipment;
  const inputs = acInputsOf(port);
  const fed = inputs.filter((p) => p.feeders.length > 0);
  if (source !== 'not-stated' || fed.length === 0) bus.sources.push({ tag, source });
  if (fed.length < inputs.length) bus.sources.push({ tag, source: 'passes-on' });
  if (fed.length > 0) bus.passed.push(fed);
}
