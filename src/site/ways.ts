import type { Kind, PortClass } from '../model/words.js';
import { CONVERTERS } from './converters.js';

/** A class of port, or the pass-through of a transfer switch. */
export type LinkEnd = PortClass | 'pass';

/** What a run carries. */
export type Carries = 'ac' | 'dc' | 'battery' | 'control';

/** How a row and what it names are joined. */
export interface Way {
  readonly rowIsUp: boolean;
  readonly upEnd: LinkEnd;
  readonly downEnd: LinkEnd;
  readonly carries: Carries;
}

const SOURCES: readonly Kind[] = ['array', 'combiner', 'wind-turbine', 'hydro-turbine'];
const TURBINES: readonly Kind[] = ['wind-turbine', 'hydro-turbine'];
const BATTERY_CONVERTERS: readonly Kind[] = ['charge-controller', 'grid-tie-inverter', 'inverter-charger'];

/** By the kind of the row that names, then of what it names. */
const WAYS = new Map<Kind, Map<Kind, Way | 'unsettled'>>();

function one(row: Kind, named: Kind, way: Way | 'unsettled'): void {
  const ofRow = WAYS.get(row) ?? new Map<Kind, Way | 'unsettled'>();
  WAYS.set(row, ofRow.set(named, way));
}

function both(up: Kind, down: Kind, upEnd: LinkEnd, downEnd: LinkEnd, carries: Carries): void {
  one(up, down, { rowIsUp: true, upEnd, downEnd, carries });
  one(down, up, { rowIsUp: false, upEnd, downEnd, carries });
}

/** The port of what runs in step with what it is joined to. */
const IN_STEP: ReadonlyMap<Kind, PortClass> = new Map<Kind, PortClass>([
  ['grid-tie-inverter', 'ac-out'],
  ['ac-module-branch', 'output'],
]);

function dcWays(): void {
  for (const source of SOURCES) {
    for (const converter of CONVERTERS) both(source, converter, 'output', 'dc-in', 'dc');
    if (source !== 'combiner') both(source, 'combiner', 'output', 'output', 'dc');
  }
  one('combiner', 'combiner', { rowIsUp: true, upEnd: 'output', downEnd: 'output', carries: 'dc' });
  for (const converter of BATTERY_CONVERTERS) both('battery', converter, 'battery', 'battery', 'battery');
  both('charge-controller', 'inverter-charger', 'battery', 'battery', 'battery');
  one('battery', 'battery', { rowIsUp: false, upEnd: 'battery', downEnd: 'battery', carries: 'battery' });
  for (const load of ['dc-load', 'dc-panel', 'diversion-load'] as const) {
    both('battery', load, 'battery', 'dc-bus', 'battery');
    both('charge-controller', load, 'battery', 'dc-bus', 'battery');
    if (load !== 'dc-panel') both('dc-panel', load, 'dc-bus', 'dc-bus', 'battery');
  }
  for (const converter of ['grid-tie-inverter', 'inverter-charger'] as const) {
    both('dc-panel', converter, 'dc-bus', 'battery', 'battery');
  }
  one('dc-panel', 'dc-panel', { rowIsUp: false, upEnd: 'dc-bus', downEnd: 'dc-bus', carries: 'battery' });
  for (const turbine of TURBINES) both(turbine, 'diversion-load', 'output', 'dc-bus', 'dc');
}

function acWays(): void {
  for (const down of ['panel', 'load'] as const) {
    both('service', down, 'service', 'feeder', 'ac');
    both('generator', down, 'output', 'feeder', 'ac');
  }
  both('panel', 'load', 'feeder', 'feeder', 'ac');
  one('panel', 'panel', { rowIsUp: false, upEnd: 'feeder', downEnd: 'feeder', carries: 'ac' });
  both('inverter-charger', 'load', 'ac-out', 'feeder', 'ac');
  both('service', 'inverter-charger', 'service', 'ac-in', 'ac');
  both('generator', 'inverter-charger', 'output', 'ac-in', 'ac');
  one('inverter-charger', 'panel', { rowIsUp: false, upEnd: 'feeder', downEnd: 'ac-in', carries: 'ac' });
  for (const [kind, end] of IN_STEP) {
    both('service', kind, 'service', end, 'ac');
    both('panel', kind, 'feeder', end, 'ac');
    both('inverter-charger', kind, 'ac-out', end, 'ac');
    both('transfer-switch', kind, 'pass', end, 'ac');
    both('ac-battery', kind, 'ac-out', end, 'ac');
  }
  transferSwitchWays();
  transformerWays();
  both('service', 'ac-battery', 'service', 'ac-out', 'ac');
  both('inverter-charger', 'ac-battery', 'ac-out', 'ac-out', 'ac');
  both('ac-battery', 'load', 'ac-out', 'feeder', 'ac');
  both('pump-drive', 'load', 'ac-out', 'feeder', 'ac');
  for (const [up, end] of [
    ['service', 'service'],
    ['panel', 'feeder'],
    ['generator', 'output'],
    ['inverter-charger', 'ac-out'],
    ['ac-battery', 'ac-out'],
    ['transfer-switch', 'pass'],
    ['transformer', 'ac-out'],
  ] as const) {
    both(up, 'pump-drive', end, 'ac-in', 'ac');
  }
}

function transferSwitchWays(): void {
  both('service', 'transfer-switch', 'service', 'pass', 'ac');
  both('generator', 'transfer-switch', 'output', 'pass', 'ac');
  both('transfer-switch', 'load', 'pass', 'feeder', 'ac');
  both('ac-battery', 'transfer-switch', 'ac-out', 'pass', 'ac');
  one('panel', 'transfer-switch', { rowIsUp: false, upEnd: 'pass', downEnd: 'feeder', carries: 'ac' });
  one('inverter-charger', 'transfer-switch', {
    rowIsUp: false,
    upEnd: 'pass',
    downEnd: 'ac-in',
    carries: 'ac',
  });
  one('transfer-switch', 'transfer-switch', {
    rowIsUp: false,
    upEnd: 'pass',
    downEnd: 'pass',
    carries: 'ac',
  });
}

/** A transformer's own connection is its `ac-in`; what names it sits on its `ac-out`, but for what can only feed it. */
function transformerWays(): void {
  both('service', 'transformer', 'service', 'ac-in', 'ac');
  both('generator', 'transformer', 'output', 'ac-in', 'ac');
  both('transformer', 'load', 'ac-out', 'feeder', 'ac');
  for (const [other, end] of [
    ['panel', 'feeder'],
    ['transfer-switch', 'pass'],
    ['inverter-charger', 'ac-in'],
    ['grid-tie-inverter', 'ac-out'],
    ['ac-module-branch', 'output'],
    ['ac-battery', 'ac-out'],
    ['transformer', 'ac-in'],
  ] as const) {
    one(other, 'transformer', { rowIsUp: false, upEnd: 'ac-out', downEnd: end, carries: 'ac' });
    if (other === 'transformer') continue;
    const own = other === 'inverter-charger' ? 'ac-out' : end;
    one('transformer', other, { rowIsUp: false, upEnd: own, downEnd: 'ac-in', carries: 'ac' });
  }
}

/** Pairs whose direction depends on what else feeds one of the two. */
function unsettledWays(): void {
  one('panel', 'inverter-charger', 'unsettled');
  one('transfer-switch', 'panel', 'unsettled');
  one('transfer-switch', 'inverter-charger', 'unsettled');
  one('panel', 'ac-battery', 'unsettled');
  one('ac-battery', 'panel', 'unsettled');
}

dcWays();
acWays();
unsettledWays();

/** What a power row puts on equipment of kind `other`: its cable still has an end of its own, and a length. */
const ONTO_OTHER: ReadonlyMap<Kind, readonly [LinkEnd, Carries]> = new Map<Kind, readonly [LinkEnd, Carries]>(
  [
    ...SOURCES.map((kind) => [kind, ['output', 'dc']] as const),
    ['generator', ['output', 'ac']],
    ['battery', ['battery', 'battery']],
  ],
);

/**
 * The way of a pair whose direction is settled by its kinds; `unsettled`: it depends on what else feeds one of the two; `apart`: it
 * carries no power; undefined: it makes no sense.
 */
export function wayOf(row: Kind, other: Kind): Way | 'unsettled' | 'apart' | undefined {
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
  return WAYS.get(row)?.get(other);
}

/** What the list should name instead, where two kinds can't be joined as they stand. */
export function listedOtherwise(a: Kind, b: Kind): 'converter' | 'ac-battery' | undefined {
  const kinds = new Set([a, b]);
  if (!kinds.has('battery')) return undefined;
  if (TURBINES.some((kind) => kinds.has(kind))) return 'converter';
  const onAc: readonly Kind[] = ['panel', 'service', 'transfer-switch', 'transformer', 'load', 'ac-battery'];
  return onAc.some((kind) => kinds.has(kind)) ? 'ac-battery' : undefined;
}

/** Pairs that the trade joins and that aren't planned; common practice, no source. */
const UNPLANNED: readonly (readonly [Kind, Kind])[] = [
  ['inverter-charger', 'inverter-charger'],
  ['charge-controller', 'charge-controller'],
  ['grid-tie-inverter', 'grid-tie-inverter'],
  ['grid-tie-inverter', 'load'],
  ['grid-tie-inverter', 'generator'],
  ['ac-module-branch', 'load'],
  ['ac-module-branch', 'generator'],
  ['ac-battery', 'generator'],
  ['ac-battery', 'ac-battery'],
  ['array', 'battery'],
  ['array', 'dc-panel'],
  ['array', 'dc-load'],
  ['combiner', 'battery'],
  ['generator', 'battery'],
  ['generator', 'charge-controller'],
  ['generator', 'generator'],
  ['service', 'charge-controller'],
  ['service', 'service'],
  ['wind-turbine', 'load'],
  ['hydro-turbine', 'load'],
  ['wind-turbine', 'panel'],
  ['hydro-turbine', 'panel'],
];

/** True for a pair that the trade joins and that isn't planned. */
export function byTrade(a: Kind, b: Kind): boolean {
  return UNPLANNED.some(([x, y]) => (a === x && b === y) || (a === y && b === x));
}
