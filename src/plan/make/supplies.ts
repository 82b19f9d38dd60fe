import { reason, type Reason } from '../../model/reason.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { KINDS, type Kind, type PortClass } from '../../model/words.js';
import { portsOnBus } from '../../site/battery-bus.js';
import { ultimateSources } from '../../site/inputs.js';
import { byNaturalOrder } from '../../model/natural-order.js';

/** More sources than these aren't named one by one, or the notes of a site would grow with its square; common practice, no source. */
const MOST_NAMED = 60;

/**
 * The sources to open before someone works at a port: everything that can put a voltage on it, from upstream, through the
 * converter that it belongs to, and backwards from what feeds into the same bus.
 * @returns one line a source, in natural order of tags; of very many how many there are of each kind, and where they are named
 */
export function sourcesToOpen(ports: readonly SitePort[], subject: SiteEquipment): readonly Reason[] {
  const walk = walkFrom(ports);
  const ahead = ports.filter(isAheadOfService).map((p) => p.equipment);
  const found = [...walk.found].filter((e) => e.kind !== 'inverter-charger' || !walk.crossed.has(e));
  const named = found.length > MOST_NAMED ? found.filter((e) => ahead.includes(e)) : found;
  const lines = [...named]
    .sort((a, b) => byNaturalOrder(a.tag, b.tag))
    .map((e) =>
      ahead.includes(e) ? reason('source/utility-ahead', { tag: e.tag }) : sourceOf(e, walk.inputs.get(e)),
    );
  if (found.length > MOST_NAMED) lines.push(...eachOfKind(found), NAMED_ELSEWHERE);
  const isControl = ports.some((p) => p.cls === 'terminals');
  return isControl ? [reason('source/control-supply', { circuit: subject.tag }), ...lines] : lines;
}

const NAMED_ELSEWHERE = reason('source/named-elsewhere');

/** One line a kind, each with what stays live of it. */
function eachOfKind(found: readonly SiteEquipment[]): readonly Reason[] {
  return KINDS.map((kind) => ({ kind, count: found.filter((e) => e.kind === kind).length }))
    .filter(({ count }) => count > 0)
    .map((of) => reason('source/each-of', of));
}

/** True where the place is on the utility's side of the main disconnect, which then makes nothing dead there. */
function isAheadOfService({ cls, equipment }: SitePort): boolean {
  return cls === 'service' && equipment.facts.ahead_of_disconnect?.value === true;
}

/** What one walk has met. */
interface Walk {
  readonly found: Set<SiteEquipment>;
  /** The ports at which what feeds back is connected. */
  readonly inputs: Map<SiteEquipment, Set<PortClass>>;
  /** Converters that were walked through: what stands behind them is named, so they aren't. */
  readonly crossed: Set<SiteEquipment>;
  readonly seen: Set<SitePort>;
  /** Ports of which everything downstream is gathered. */
  readonly seenBelow: Set<SitePort>;
  /** What is still to do, the next step last: a chain of panels may be as long as the list. */
  readonly steps: Step[];
}

/** One step of a walk: all that is at a port, or what feeds back into it from downstream. */
interface Step {
  readonly port: SitePort;
  readonly below: boolean;
}

/** Each port is met once, so a walk costs what there is to walk through. */
function walkFrom(ports: readonly SitePort[]): Walk {
  const walk: Walk = {
    found: new Set(),
    inputs: new Map(),
    crossed: new Set(),
    seen: new Set(),
    seenBelow: new Set(),
    steps: [],
  };
  next(walk, ports);
  for (let step = walk.steps.pop(); step; step = walk.steps.pop()) {
    if (step.below) gatherDownstream(step.port, walk);
    else gather(step.port, walk);
  }
  return walk;
}

/** Puts ports before all that is still to do, in their order. */
function next({ steps }: Walk, ports: readonly SitePort[], below = false): void {
  for (let i = ports.length - 1; i >= 0; i -= 1) {
    const port = ports[i];
    if (port) steps.push({ port, below });
  }
}

function gather(port: SitePort, walk: Walk): void {
  if (walk.seen.has(port)) return;
  walk.seen.add(port);
  const { equipment } = port;
  const behind: SitePort[] = [];
  switch (port.cls) {
    case 'terminals':
      return;
    case 'service':
      walk.found.add(equipment);
      break;
    case 'battery':
    case 'dc-bus':
      for (const at of portsOnBus(port)) {
        walk.seen.add(at);
        if (at.equipment.kind === 'battery') walk.found.add(at.equipment);
        else behind.push(...crossConverter(at, walk));
      }
      for (const run of port.runs) if (run.to === port && run.carries === 'dc') behind.push(run.from);
      next(walk, behind);
      return;
    case 'output':
      behind.push(...gatherOutput(port, walk));
      break;
    case 'dc-in':
      for (const source of ultimateSources(port)) walk.found.add(source);
      next(walk, crossConverter(port, walk));
      return;
    case 'ac-in':
    case 'ac-in-2':
    case 'ac-out':
      if (equipment.kind === 'ac-battery') walk.found.add(equipment);
      behind.push(...crossConverter(port, walk));
      break;
    case 'feeder':
      break;
  }
  next(walk, [port], true);
  next(walk, port.feeders);
  next(walk, behind);
}

/** Kinds that can feed into the bus that feeds them. */
const FEEDS_BACK: ReadonlySet<Kind> = new Set<Kind>([
  'grid-tie-inverter',
  'ac-module-branch',
  'inverter-charger',
  'ac-battery',
]);

/**
 * What can feed into the same bus from downstream: grid-tie inverters and AC modules, and inverter-chargers, whose transfer
 * relay may fail; panels passed through.
 */
function gatherDownstream(port: SitePort, walk: Walk): void {
  if (walk.seenBelow.has(port)) return;
  walk.seenBelow.add(port);
  const panels: SitePort[] = [];
  for (const run of port.runs) {
    if (run.from !== port || run.carries !== 'ac') continue;
    const { equipment, cls } = run.to;
    if (equipment.kind === 'panel') panels.push(run.to);
    else if (equipment.kind === 'transformer')
      panels.push(...equipment.ports.filter((p) => p.cls === 'ac-out'));
    else if (FEEDS_BACK.has(equipment.kind)) {
      walk.found.add(equipment);
      walk.inputs.set(equipment, (walk.inputs.get(equipment) ?? new Set()).add(cls));
    }
  }
  next(walk, panels, true);
}

/** @returns what stands behind the converters that the output feeds: they can feed back from their battery or from the grid */
function gatherOutput(port: SitePort, walk: Walk): readonly SitePort[] {
  const { kind } = port.equipment;
  if (kind === 'generator' || kind === 'ac-module-branch') {
    walk.found.add(port.equipment);
    return [];
  }
  for (const source of ultimateSources(port)) walk.found.add(source);
  return port.runs.flatMap((run) => (run.from === port ? crossConverter(run.to, walk) : []));
}

/** Kinds whose ports stand on both sides of a conversion: what is on one side can put a voltage on the other. */
const CROSSED: ReadonlySet<Kind> = new Set<Kind>([
  'charge-controller',
  'grid-tie-inverter',
  'inverter-charger',
  'transformer',
  'pump-drive',
]);

/** @returns the other ports of a converter */
function crossConverter(port: SitePort, walk: Walk): readonly SitePort[] {
  const { equipment } = port;
  const { kind, ports } = equipment;
  if (!CROSSED.has(kind)) return [];
  walk.crossed.add(equipment);
  return ports.filter((other) => other !== port);
}

function sourceOf({ kind, tag }: SiteEquipment, inputs: ReadonlySet<PortClass> = new Set()): Reason {
  switch (kind) {
    case 'service':
      return reason('source/utility', { tag });
    case 'generator':
      return reason('source/generator', { tag });
    case 'battery':
      return reason('source/battery', { tag });
    case 'array':
      return reason('source/array', { tag });
    case 'wind-turbine':
    case 'hydro-turbine':
      return reason('source/turbine', { tag });
    case 'grid-tie-inverter':
    case 'ac-module-branch':
    case 'ac-battery':
      return reason('source/inverter', { tag });
    case 'inverter-charger':
      return reason('source/inverter-at', { tag, ports: [...inputs] });
    default:
      return reason('source/other', { tag });
  }
}
