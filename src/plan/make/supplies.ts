import { reason, type Reason } from '../../model/reason.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Kind, PortClass } from '../../model/words.js';
import { portsOnBus } from '../../site/battery-bus.js';
import { ultimateSources } from '../../site/inputs.js';
import { byNaturalOrder } from '../../model/natural-order.js';

/**
 * The sources to open before someone works at a port: everything that can put a voltage on it, from upstream, through the
 * converter that it belongs to, and backwards from what feeds into the same bus.
 * @returns one line a source, in natural order of tags
 */
export function sourcesToOpen(ports: readonly SitePort[], subject: SiteEquipment): readonly Reason[] {
  const walk: Walk = { found: new Set(), inputs: new Map(), crossed: new Set(), seen: new Set() };
  for (const port of ports) gather(port, walk);
  const ahead = ports.filter(isAheadOfService).map((p) => p.equipment);
  const lines = [...walk.found]
    .filter((e) => e.kind !== 'inverter-charger' || !walk.crossed.has(e))
    .sort((a, b) => byNaturalOrder(a.tag, b.tag))
    .map((e) =>
      ahead.includes(e) ? reason('source/utility-ahead', { tag: e.tag }) : sourceOf(e, walk.inputs.get(e)),
    );
  const isControl = ports.some((p) => p.cls === 'terminals');
  return isControl ? [reason('source/control-supply', { circuit: subject.tag }), ...lines] : lines;
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
}

function gather(port: SitePort, walk: Walk): void {
  if (walk.seen.has(port)) return;
  walk.seen.add(port);
  const { equipment } = port;
  switch (port.cls) {
    case 'terminals':
      return;
    case 'service':
      walk.found.add(equipment);
      break;
    case 'battery':
      for (const at of portsOnBus(port)) {
        walk.seen.add(at);
        if (at.equipment.kind === 'battery') walk.found.add(at.equipment);
        else crossConverter(at, walk);
      }
      return;
    case 'output':
      gatherOutput(port, walk);
      break;
    case 'dc-in':
      for (const source of ultimateSources(port)) walk.found.add(source);
      crossConverter(port, walk);
      return;
    case 'ac-in':
    case 'ac-in-2':
    case 'ac-out':
      crossConverter(port, walk);
      break;
    case 'feeder':
      break;
  }
  for (const feeder of port.feeders) gather(feeder, walk);
  gatherDownstream(port, walk, new Set());
}

/** Kinds that can feed into the bus that feeds them. */
const FEEDS_BACK: ReadonlySet<Kind> = new Set<Kind>([
  'grid-tie-inverter',
  'ac-module-branch',
  'inverter-charger',
]);

/**
 * What can feed into the same bus from downstream: grid-tie inverters and AC modules, and inverter-chargers, whose transfer
 * relay may fail; panels passed through.
 */
function gatherDownstream(port: SitePort, walk: Walk, seen: Set<SitePort>): void {
  if (seen.has(port)) return;
  seen.add(port);
  for (const run of port.runs) {
    if (run.from !== port || run.carries !== 'ac') continue;
    const { equipment, cls } = run.to;
    if (equipment.kind === 'panel') gatherDownstream(run.to, walk, seen);
    else if (FEEDS_BACK.has(equipment.kind)) {
      walk.found.add(equipment);
      walk.inputs.set(equipment, (walk.inputs.get(equipment) ?? new Set()).add(cls));
    }
  }
}

function gatherOutput(port: SitePort, walk: Walk): void {
  const { kind } = port.equipment;
  if (kind === 'generator' || kind === 'ac-module-branch') {
    walk.found.add(port.equipment);
    return;
  }
  for (const source of ultimateSources(port)) walk.found.add(source);
  // A converter can feed back from its battery or from the grid.
  for (const run of port.runs) if (run.from === port) crossConverter(run.to, walk);
}

/** What stands behind the other ports of a converter. */
function crossConverter(port: SitePort, walk: Walk): void {
  const { equipment } = port;
  const { kind, ports } = equipment;
  if (kind !== 'charge-controller' && kind !== 'grid-tie-inverter' && kind !== 'inverter-charger') return;
  walk.crossed.add(equipment);
  for (const other of ports) if (other !== port) gather(other, walk);
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
      return reason('source/inverter', { tag });
    case 'inverter-charger':
      return reason('source/inverter-at', { tag, ports: [...inputs] });
    default:
      return reason('source/other', { tag });
  }
}
