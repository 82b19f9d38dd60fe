import type { FaultSource, Feed, TransformerFacts } from '../model/fault-current.js';
import type { FaultBus, SitePort } from '../model/site.js';

/** The most that a transformer can drive into a fault, A. */
export type TransformerBound = (facts: TransformerFacts) => number;

/** From where a port is looked at that states what is available there: by what feeds it, or by what it feeds. */
type Side = 'above' | 'below';

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

/** Sides of a port that stand on one bus. */
const SIDES: Readonly<Record<Side | 'both', readonly Side[]>> = {
  above: ['above'],
  below: ['below'],
  both: ['above', 'below'],
};

function knownBus({ found }: SitePort, side: Side): FaultBus | undefined {
  return side === 'below' ? found.busBelow : found.busAbove;
}

/** The bus of a port; of one that separates the bus on that side of it. Each port of one bus shares its own. */
export function busOf(port: SitePort, side: Side, bound: TransformerBound): FaultBus {
  const known = knownBus(port, side);
  if (known) return known;
  const bus: FaultBus = {
    given: [],
    sources: [],
    lower: [],
    up: [],
    down: [],
    passed: [],
    fed: undefined,
    feedsBack: undefined,
  };
  const open: [SitePort, Side][] = [[port, side]];
  for (let at = open.pop(); at; at = open.pop()) {
    const [one, from] = at;
    const sides = SIDES[separates(one) ? from : 'both'];
    if (sides.some((s) => knownBus(one, s))) continue;
    const isAbove = sides[0] === 'above';
    const isBelow = sides.at(-1) === 'below';
    if (isAbove) one.found.busAbove = bus;
    if (isBelow) one.found.busBelow = bus;
    collect(bus, one, from, bound);
    for (const run of one.runs) {
      const isDown = run.from === one;
      if (run.carries !== 'ac' || !(isDown ? isBelow : isAbove)) continue;
      if (run.switches.length > 0) (isDown ? bus.down : bus.up).push(run);
      else {
        const side = isDown ? 'above' : 'below';
        const other = isDown ? run.to : run.from;
        if (!knownBus(other, side)) open.push([other, side]);
      }
    }
    if (one.equipment.kind === 'transformer') open.push(...throughAutotransformer(one, sides));
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
