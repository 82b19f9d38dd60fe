import type { PlacedNote } from '../model/open-item.js';
import type { RunLeg, SiteEquipment } from '../model/site.js';
import { about } from '../model/message.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import { NETWORK_MESSAGES } from '../model/messages/network.js';
import { lineOf } from './row-line.js';
import type { Joint } from './passing.js';
import { byTrade, listedOtherwise, wayOf, type LinkEnd } from './ways.js';

/** One connection with its direction: `up` feeds `down`. */
export interface Link {
  readonly row: SiteEquipment;
  readonly up: SiteEquipment;
  readonly down: SiteEquipment;
  readonly upEnd: LinkEnd;
  readonly downEnd: LinkEnd;
  readonly inputs: readonly number[];
  readonly carries: 'ac' | 'dc' | 'battery' | 'control';
  /** From `row` to the other. */
  readonly legs: readonly RunLeg[];
  /** Disconnects on the way, from `row` to the other. */
  readonly through: readonly SiteEquipment[];
}

/** A connection whose direction depends on what else feeds one of the two. */
interface Unsettled {
  readonly joint: Joint;
  readonly pair: string;
}

/** A joint of several at a disconnect that makes no sense by itself. */
type Idle = Joint;

/**
 * Gives every joint its direction and its ports; one that makes no sense becomes an item and is dropped.
 * @param joints what is joined, disconnects passed through, in natural order of the naming rows
 * @returns the links; what makes no sense; and the equipment that a dropped joint names
 */
export function directLinks(joints: readonly Joint[]): {
  links: readonly Link[];
  notes: readonly PlacedNote[];
  dropped: ReadonlySet<string>;
} {
  const links: Link[] = [];
  const notes: PlacedNote[] = [];
  const dropped = new Set<string>();
  const pending: Unsettled[] = [];
  const idle: Idle[] = [];
  for (const joint of joints) {
    const { row, other } = joint;
    const way = wayOf(row.kind, other.kind);
    if (way === 'unsettled') {
      pending.push({ joint, pair: `${row.kind}>${other.kind}` });
      continue;
    }
    if (way === 'apart') continue;
    if (!way) {
      if (joint.oneOfSeveral) idle.push(joint);
      else refuse(joint, notes, dropped);
      continue;
    }
    links.push(linkOf(joint, way.rowIsUp ? row : other, way.rowIsUp ? other : row, way));
  }
  settle(links, pending);
  refuseIdle(idle, links, notes, dropped);
  return { links, notes, dropped };
}

function linkOf(
  { row, inputs, legs, through }: Joint,
  up: SiteEquipment,
  down: SiteEquipment,
  { upEnd, downEnd, carries }: Pick<Link, 'upEnd' | 'downEnd' | 'carries'>,
): Link {
  return { row, up, down, upEnd, downEnd, inputs: downEnd === 'dc-in' ? inputs : [], carries, legs, through };
}

function refuse({ row, other }: Joint, notes: PlacedNote[], dropped: Set<string>): void {
  const p = {
    tag: row.tag,
    kind: row.kind,
    line: lineOf(row.row),
    to: other.tag,
    toKind: other.kind,
    toLine: lineOf(other.row),
  };
  const instead = listedOtherwise(row.kind, other.kind);
  if (instead) {
    notes.push(about(NETWORK_MESSAGES.listedOtherwise, { ...p, instead }, row.tag, 'connects_to'));
  } else {
    const kind = byTrade(row.kind, other.kind) ? NETWORK_MESSAGES.unplanned : SITE_MESSAGES.senseless;
    notes.push(about(kind, p, row.tag, 'connects_to'));
  }
  dropped.add(row.tag).add(other.tag);
}

/** A pair at a disconnect that joins several is none, as long as each of the two has another there. */
function refuseIdle(
  idle: readonly Idle[],
  links: readonly Link[],
  notes: PlacedNote[],
  dropped: Set<string>,
): void {
  if (idle.length === 0) return;
  const joined = new Set<string>();
  for (const { up, down, through } of links) {
    for (const at of through) joined.add(`${at.tag}\n${up.tag}`).add(`${at.tag}\n${down.tag}`);
  }
  for (const joint of idle) {
    const isElsewhere = (end: SiteEquipment): boolean =>
      joint.through.some((at) => joined.has(`${at.tag}\n${end.tag}`));
    if (!isElsewhere(joint.row) || !isElsewhere(joint.other)) refuse(joint, notes, dropped);
  }
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

/** Pairs that a default turns so that an inverter or AC battery feeds a panel: alike ones are turned alike. */
const ALIKE: ReadonlySet<string> = new Set([
  'panel>inverter-charger',
  'panel>ac-battery',
  'ac-battery>panel',
]);

/**
 * Directs the joints that their kinds leave open: first those that what is known decides, then by default the one whose
 * default leaves the least open. Row order doesn't matter: pending ones come in natural order of tags.
 */
function settle(links: Link[], pending: readonly Unsettled[]): void {
  if (pending.length === 0) return;
  const flow = flowOf(links);
  let rest = [...pending];
  while (rest.length > 0) {
    const next =
      rest.find((one) => decided(one, flow)) ??
      rest.find(({ joint, pair }) => pair.startsWith('transfer-switch') && flow.fed.has(joint.row)) ??
      rest.find(({ pair }) => pair.endsWith('>inverter-charger') && pair.startsWith('panel')) ??
      rest.find(({ pair }) => pair.startsWith('transfer-switch')) ??
      rest[0];
    if (!next) return;
    // Stacked outputs feed one panel together: the first of them doesn't make it a fed one for the others.
    const together = decided(next, flow) ? [next] : rest.filter((one) => isAlike(one, next));
    const directedNow = together.map((one) => directed(one, flow));
    for (const link of directedNow) {
      take(flow, link);
      links.push(link);
    }
    rest = rest.filter((one) => !together.includes(one));
  }
}

function isAlike(one: Unsettled, next: Unsettled): boolean {
  if (one === next) return true;
  if (!ALIKE.has(one.pair) || !ALIKE.has(next.pair)) return false;
  const source = (of: Unsettled): string => of.pair.replace('panel', '').replace('>', '');
  return panelOf(one) === panelOf(next) && source(one) === source(next);
}

function panelOf({ joint }: Unsettled): SiteEquipment {
  return joint.row.kind === 'panel' ? joint.row : joint.other;
}

/** True where what is known says the direction; else a default does. */
function decided({ joint, pair }: Unsettled, flow: Flow): boolean {
  if (pair === 'transfer-switch>panel') return flow.fed.has(joint.other);
  if (ALIKE.has(pair)) return flow.fed.has(panelOf({ joint, pair }));
  return flow.fed.has(joint.row);
}

/**
 * What is fed from elsewhere feeds on; what isn't is fed here: a panel that names an inverter is fed by its AC out
 * unless a service, a generator or another panel feeds that panel; so with an AC battery. A transfer switch that something feeds
 * and that feeds nothing else feeds the panel that it names, whatever else feeds that panel: else its generator would feed nothing.
 */
function directed({ joint, pair }: Unsettled, flow: Flow): Link {
  const { row, other } = joint;
  if (ALIKE.has(pair)) {
    const panel = row.kind === 'panel' ? row : other;
    const source = panel === row ? other : row;
    const end = source.kind === 'ac-battery' ? 'ac-out' : 'ac-in';
    return flow.fed.has(panel)
      ? linkOf(joint, panel, source, { upEnd: 'feeder', downEnd: end, carries: 'ac' })
      : linkOf(joint, source, panel, { upEnd: 'ac-out', downEnd: 'feeder', carries: 'ac' });
  }
  if (pair === 'transfer-switch>panel') {
    const isItsOutlet = flow.fed.has(row) && !flow.feeding.has(row);
    return flow.fed.has(other) && !isItsOutlet
      ? linkOf(joint, other, row, { upEnd: 'feeder', downEnd: 'pass', carries: 'ac' })
      : linkOf(joint, row, other, { upEnd: 'pass', downEnd: 'feeder', carries: 'ac' });
  }
  return flow.fed.has(row)
    ? linkOf(joint, row, other, { upEnd: 'pass', downEnd: 'ac-in', carries: 'ac' })
    : linkOf(joint, other, row, { upEnd: 'ac-out', downEnd: 'pass', carries: 'ac' });
}
