import type { PlacedNote } from '../model/open-item.js';
import type { SiteEquipment } from '../model/site.js';
import type { Kind, PortClass } from '../model/words.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import type { Connections } from './connections.js';
import { lineOf } from './equipment.js';

/** A class of port, or the pass-through of a transfer switch. */
export type LinkEnd = PortClass | 'pass';

/** One connection with its direction: `up` feeds `down`. */
export interface Link {
  readonly row: SiteEquipment;
  readonly up: SiteEquipment;
  readonly down: SiteEquipment;
  readonly upEnd: LinkEnd;
  readonly downEnd: LinkEnd;
  readonly inputs: readonly number[];
  readonly carries: 'ac' | 'dc' | 'battery' | 'control';
}

type Way = {
  readonly rowIsUp: boolean;
  readonly upEnd: LinkEnd;
  readonly downEnd: LinkEnd;
  readonly carries: Link['carries'];
};

const SOURCES: readonly Kind[] = ['array', 'combiner', 'wind-turbine', 'hydro-turbine'];
const CONVERTERS: readonly Kind[] = ['charge-controller', 'grid-tie-inverter', 'inverter-charger'];
const GRID_FEEDING: readonly Kind[] = ['grid-tie-inverter', 'ac-module-branch'];

const WAYS = new Map<string, Way>();

function both(up: Kind, down: Kind, upEnd: LinkEnd, downEnd: LinkEnd, carries: Link['carries']): void {
  WAYS.set(`${up}>${down}`, { rowIsUp: true, upEnd, downEnd, carries });
  WAYS.set(`${down}>${up}`, { rowIsUp: false, upEnd, downEnd, carries });
}

for (const source of SOURCES) {
  for (const converter of CONVERTERS) both(source, converter, 'output', 'dc-in', 'dc');
  if (source !== 'combiner') both(source, 'combiner', 'output', 'output', 'dc');
}
WAYS.set('combiner>combiner', { rowIsUp: true, upEnd: 'output', downEnd: 'output', carries: 'dc' });
for (const converter of CONVERTERS) both('battery', converter, 'battery', 'battery', 'battery');
both('charge-controller', 'inverter-charger', 'battery', 'battery', 'battery');
WAYS.set('battery>battery', { rowIsUp: false, upEnd: 'battery', downEnd: 'battery', carries: 'battery' });
for (const down of ['panel', 'load'] as const) {
  both('service', down, 'service', 'feeder', 'ac');
  both('generator', down, 'output', 'feeder', 'ac');
}
both('panel', 'load', 'feeder', 'feeder', 'ac');
WAYS.set('panel>panel', { rowIsUp: false, upEnd: 'feeder', downEnd: 'feeder', carries: 'ac' });
both('inverter-charger', 'load', 'ac-out', 'feeder', 'ac');
both('service', 'inverter-charger', 'service', 'ac-in', 'ac');
both('generator', 'inverter-charger', 'output', 'ac-in', 'ac');
both('service', 'transfer-switch', 'service', 'pass', 'ac');
both('generator', 'transfer-switch', 'output', 'pass', 'ac');
both('transfer-switch', 'load', 'pass', 'feeder', 'ac');
for (const feeding of GRID_FEEDING) {
  const end = feeding === 'ac-module-branch' ? 'output' : 'ac-out';
  both('service', feeding, 'service', end, 'ac');
  both('panel', feeding, 'feeder', end, 'ac');
  both('inverter-charger', feeding, 'ac-out', end, 'ac');
  both('transfer-switch', feeding, 'pass', end, 'ac');
}
WAYS.set('inverter-charger>panel', { rowIsUp: false, upEnd: 'feeder', downEnd: 'ac-in', carries: 'ac' });
WAYS.set('panel>transfer-switch', { rowIsUp: false, upEnd: 'pass', downEnd: 'feeder', carries: 'ac' });
WAYS.set('inverter-charger>transfer-switch', {
  rowIsUp: false,
  upEnd: 'pass',
  downEnd: 'ac-in',
  carries: 'ac',
});
WAYS.set('transfer-switch>transfer-switch', {
  rowIsUp: false,
  upEnd: 'pass',
  downEnd: 'pass',
  carries: 'ac',
});

/** Pairs whose direction depends on what else feeds one of the two. */
const UNSETTLED: ReadonlySet<string> = new Set([
  'panel>inverter-charger',
  'transfer-switch>panel',
  'transfer-switch>inverter-charger',
]);

/** What a power row puts on equipment of kind `other`: its cable still has an end of its own, and a length. */
const ONTO_OTHER: ReadonlyMap<Kind, readonly [LinkEnd, Link['carries']]> = new Map<
  Kind,
  readonly [LinkEnd, Link['carries']]
>([
  ...SOURCES.map((kind) => [kind, ['output', 'dc']] as const),
  ['generator', ['output', 'ac']],
  ['battery', ['battery', 'battery']],
]);

/** The way of a pair whose direction is settled by its kinds; `apart`: it carries no power; undefined: it makes no sense. */
function wayOf(row: Kind, other: Kind): Way | 'apart' | undefined {
  if (row === 'signal-line') return 'apart';
  if (other === 'signal-line') return undefined;
  if (row === 'control-circuit' || other === 'control-circuit') {
    return { rowIsUp: false, upEnd: 'terminals', downEnd: 'terminals', carries: 'control' };
  }
  if (row === 'other') return 'apart';
  if (other === 'other') {
    const onto = ONTO_OTHER.get(row);
    return onto ? { rowIsUp: true, upEnd: onto[0], downEnd: 'terminals', carries: onto[1] } : 'apart';
  }
  return WAYS.get(`${row}>${other}`);
}

/** A connection whose direction depends on what else feeds one of the two. */
interface Unsettled {
  readonly row: SiteEquipment;
  readonly target: SiteEquipment;
  readonly pair: string;
}

/**
 * Gives every connection its direction and its ports; a connection that makes no sense becomes an item and is dropped.
 * @param equipments by tag, in natural order
 * @param connections the resolved targets
 * @returns the links; what makes no sense; and the equipment that a dropped connection names
 */
export function directLinks(
  equipments: ReadonlyMap<string, SiteEquipment>,
  connections: Connections,
): { links: readonly Link[]; notes: readonly PlacedNote[]; dropped: ReadonlySet<string> } {
  const links: Link[] = [];
  const notes: PlacedNote[] = [];
  const dropped = new Set<string>();
  const pending: Unsettled[] = [];
  for (const row of equipments.values()) {
    const target = connections.targets.get(row.tag);
    const other = target ? equipments.get(target.member.tag) : undefined;
    if (!target || !other) continue;
    const pair = `${row.kind}>${other.kind}`;
    if (UNSETTLED.has(pair)) {
      pending.push({ row, target: other, pair });
      continue;
    }
    const way = wayOf(row.kind, other.kind);
    if (way === 'apart') continue;
    if (!way) {
      const p = {
        tag: row.tag,
        kind: row.kind,
        line: lineOf(row.row),
        to: other.tag,
        toKind: other.kind,
        toLine: lineOf(other.row),
      };
      notes.push(about(SITE_MESSAGES.senseless, p, row.tag, 'connects_to'));
      dropped.add(row.tag).add(other.tag);
      continue;
    }
    links.push({
      row,
      up: way.rowIsUp ? row : other,
      down: way.rowIsUp ? other : row,
      upEnd: way.upEnd,
      downEnd: way.downEnd,
      inputs: way.downEnd === 'dc-in' ? target.inputs : [],
      carries: way.carries,
    });
  }
  settle(links, pending);
  return { links, notes, dropped };
}

/** What AC links feed, and what they lead away from. */
interface Flow {
  readonly fed: Set<SiteEquipment>;
  readonly feeding: Set<SiteEquipment>;
}

function flowOf(links: readonly Link[]): Flow {
  const flow: Flow = { fed: new Set(), feeding: new Set() };
  for (const link of links) take(flow, link);
  return flow;
}

function take({ fed, feeding }: Flow, link: Link): void {
  // What a grid-tie inverter puts into a panel doesn't make that panel a fed one.
  if (link.carries !== 'ac' || link.downEnd === 'ac-out' || link.downEnd === 'output') return;
  fed.add(link.down);
  feeding.add(link.up);
}

/**
 * Directs the connections that their kinds leave open: first those that what is known decides, then by default the one
 * whose default leaves the least open. Row order doesn't matter: pending ones come in natural order of tags.
 */
function settle(links: Link[], pending: readonly Unsettled[]): void {
  if (pending.length === 0) return;
  const flow = flowOf(links);
  let rest = [...pending];
  while (rest.length > 0) {
    const next =
      rest.find((one) => decided(one, flow)) ??
      rest.find(({ row, pair }) => pair.startsWith('transfer-switch') && flow.fed.has(row)) ??
      rest.find(({ pair }) => pair.startsWith('panel')) ??
      rest[0];
    if (!next) return;
    const link = directed(next, flow);
    take(flow, link);
    links.push(link);
    rest = rest.filter((one) => one !== next);
  }
}

/** True where what is known says the direction; else a default does. */
function decided({ row, target, pair }: Unsettled, flow: Flow): boolean {
  if (pair === 'panel>inverter-charger') return flow.fed.has(row);
  if (pair === 'transfer-switch>panel') return flow.fed.has(target);
  return flow.fed.has(row);
}

/**
 * What is fed from elsewhere feeds on; what isn't is fed here: a panel that names an inverter is fed by its AC out
 * unless a service, a generator or another panel feeds that panel. A transfer switch that something feeds and that feeds
 * nothing else feeds the panel that it names, whatever else feeds that panel: else its generator would feed nothing.
 */
function directed({ row, target, pair }: Unsettled, flow: Flow): Link {
  const common = { row, inputs: [], carries: 'ac' as const };
  if (pair === 'panel>inverter-charger') {
    return flow.fed.has(row)
      ? { ...common, up: row, down: target, upEnd: 'feeder', downEnd: 'ac-in' }
      : { ...common, up: target, down: row, upEnd: 'ac-out', downEnd: 'feeder' };
  }
  if (pair === 'transfer-switch>panel') {
    const isItsOutlet = flow.fed.has(row) && !flow.feeding.has(row);
    return flow.fed.has(target) && !isItsOutlet
      ? { ...common, up: target, down: row, upEnd: 'feeder', downEnd: 'pass' }
      : { ...common, up: row, down: target, upEnd: 'pass', downEnd: 'feeder' };
  }
  return flow.fed.has(row)
    ? { ...common, up: row, down: target, upEnd: 'pass', downEnd: 'ac-in' }
    : { ...common, up: target, down: row, upEnd: 'ac-out', downEnd: 'pass' };
}
