import type { PlacedNote } from '../model/message.js';
import type { SiteEquipment } from '../model/site.js';
import type { Kind, PortClass } from '../model/words.js';
import { about } from '../text/message-kit.js';
import { SITE_MESSAGES } from '../text/messages/site.js';
import type { Connections } from './connections.js';

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

/** Kinds that hang on anything and carry no power of the site. */
const APART: ReadonlySet<Kind> = new Set<Kind>(['signal-line', 'other']);

/**
 * Gives every connection its direction and its ports; a connection that makes no sense becomes an item and is dropped.
 * @param equipments by tag
 * @param connections the resolved targets
 */
export function directLinks(
  equipments: ReadonlyMap<string, SiteEquipment>,
  connections: Connections,
): { links: readonly Link[]; notes: readonly PlacedNote[] } {
  const links: Link[] = [];
  const notes: PlacedNote[] = [];
  const later: { row: SiteEquipment; target: SiteEquipment; pair: string }[] = [];
  const fed = new Set<string>();
  const add = (link: Link): void => {
    links.push(link);
    if (link.carries === 'ac' && link.downEnd !== 'ac-out' && link.downEnd !== 'output')
      fed.add(link.down.tag);
  };
  for (const row of equipments.values()) {
    const target = connections.targets.get(row.tag);
    const other = target ? equipments.get(target.member.tag) : undefined;
    if (!target || !other) continue;
    if (APART.has(row.kind) || APART.has(other.kind)) continue;
    const pair = `${row.kind}>${other.kind}`;
    if (row.kind === 'control-circuit' || other.kind === 'control-circuit') {
      add({
        row,
        up: other,
        down: row,
        upEnd: 'terminals',
        downEnd: 'terminals',
        inputs: [],
        carries: 'control',
      });
      continue;
    }
    if (UNSETTLED.has(pair)) {
      later.push({ row, target: other, pair });
      continue;
    }
    const way = WAYS.get(pair);
    if (!way) {
      const p = {
        tag: row.tag,
        kind: row.kind,
        line: row.row.line,
        to: other.tag,
        toKind: other.kind,
        toLine: other.row.line,
      };
      notes.push(about(SITE_MESSAGES.senseless, p, row.tag, 'connects_to'));
      continue;
    }
    add({
      row,
      up: way.rowIsUp ? row : other,
      down: way.rowIsUp ? other : row,
      upEnd: way.upEnd,
      downEnd: way.downEnd,
      inputs: way.downEnd === 'dc-in' ? target.inputs : [],
      carries: way.carries,
    });
  }
  for (const one of later) add(settle(one.row, one.target, one.pair, fed));
  return { links, notes };
}

/**
 * What is fed from elsewhere feeds on; what isn't is fed here: a panel that names an inverter is fed by its AC out
 * unless a service, a generator or another panel feeds that panel.
 */
function settle(row: SiteEquipment, target: SiteEquipment, pair: string, fed: ReadonlySet<string>): Link {
  const common = { row, inputs: [], carries: 'ac' as const };
  if (pair === 'panel>inverter-charger') {
    return fed.has(row.tag)
      ? { ...common, up: row, down: target, upEnd: 'feeder', downEnd: 'ac-in' }
      : { ...common, up: target, down: row, upEnd: 'ac-out', downEnd: 'feeder' };
  }
  if (pair === 'transfer-switch>panel') {
    return fed.has(target.tag)
      ? { ...common, up: target, down: row, upEnd: 'feeder', downEnd: 'pass' }
      : { ...common, up: row, down: target, upEnd: 'pass', downEnd: 'feeder' };
  }
  return fed.has(row.tag)
    ? { ...common, up: row, down: target, upEnd: 'pass', downEnd: 'ac-in' }
    : { ...common, up: target, down: row, upEnd: 'ac-out', downEnd: 'pass' };
}
