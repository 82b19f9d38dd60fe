import { LIMITS } from '../model/limits.js';
import type { RunLeg, SiteEquipment, SitePort, SiteRun } from '../model/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { samePlaceName } from './equipment.js';
import type { Link } from './links.js';

/** A way from a port to a port, over one link or over several with transfer switches between. */
interface Way {
  readonly first: Link;
  readonly last: Link;
  readonly links: readonly Link[];
  readonly through: readonly string[];
}

/**
 * Makes the runs of a site: one for each connection, those at a transfer switch joined into one from source to what is fed.
 * @param links the directed connections
 * @param reached for a link onto DC inputs, the inputs that it reaches
 * @param acInputs for a link onto an AC input, the port that it takes
 * @returns the runs in natural order; each is also put to the ports at its ends; undefined where they follow more connections than those of a job may
 */
export function makeRuns(
  links: readonly Link[],
  reached: ReadonlyMap<Link, readonly SitePort[]>,
  acInputs: ReadonlyMap<Link, SitePort>,
): readonly SiteRun[] | undefined {
  const ways = waysOf(links);
  if (!ways) return undefined;
  const runs: SiteRun[] = [];
  let followed = 0;
  for (const way of ways) {
    const from = portAt(way.first.up, way.first.upEnd);
    const downs = downPorts(way.last, reached, acInputs);
    if (!from) continue;
    followed += downs.length * way.links.length;
    if (followed > LIMITS.jobConnections) return undefined;
    for (const to of downs) {
      const run = makeRun(way, from, to);
      runs.push(run);
      from.runs.push(run);
      to.runs.push(run);
      if (run.carries === 'ac' && !to.feeders.includes(from)) to.feeders.push(from);
    }
  }
  return runs.sort(
    (a, b) =>
      byNaturalOrder(a.from.equipment.tag, b.from.equipment.tag) ||
      byNaturalOrder(a.to.equipment.tag, b.to.equipment.tag) ||
      byNaturalOrder(a.to.name, b.to.name),
  );
}

/** Ways that start and end at ports: links onto a transfer switch go on with each link off it. */
function waysOf(links: readonly Link[]): Way[] | undefined {
  const off = new Map<string, Link[]>();
  for (const link of links) {
    if (link.upEnd !== 'pass') continue;
    const list = off.get(link.up.tag);
    if (list) list.push(link);
    else off.set(link.up.tag, [link]);
  }
  const ways: Way[] = [];
  let steps = 0;
  let followed = 0;
  const goOn = (first: Link, path: readonly Link[], through: readonly string[]): void => {
    steps += 1;
    if (Math.max(steps, followed) > LIMITS.jobConnections) return;
    const last = path[path.length - 1] ?? first;
    if (last.downEnd !== 'pass') {
      followed += path.length;
      ways.push({ first, last, links: path, through });
      return;
    }
    if (through.includes(last.down.tag)) return;
    for (const next of off.get(last.down.tag) ?? [])
      goOn(first, [...path, next], [...through, last.down.tag]);
  };
  for (const link of links) if (link.upEnd !== 'pass') goOn(link, [link], NONE);
  return Math.max(steps, followed) > LIMITS.jobConnections ? undefined : ways;
}

function portAt(equipment: SiteEquipment, end: string): SitePort | undefined {
  return equipment.ports.find((p) => p.cls === end);
}

function downPorts(
  last: Link,
  reached: ReadonlyMap<Link, readonly SitePort[]>,
  acInputs: ReadonlyMap<Link, SitePort>,
): readonly SitePort[] {
  if (last.downEnd === 'dc-in' || (last.carries === 'dc' && last.downEnd === 'output'))
    return reached.get(last) ?? [];
  if (last.downEnd === 'ac-in') {
    const port = acInputs.get(last) ?? portAt(last.down, 'ac-in');
    return port ? [port] : [];
  }
  const port = portAt(last.down, last.downEnd);
  return port ? [port] : [];
}

const NONE: readonly string[] = [];

/** Whether a run leads from one building to another, and whether the list itself says so. */
function between(
  a: SiteEquipment,
  b: SiteEquipment,
): Pick<SiteRun, 'betweenBuildings' | 'betweenByDefault' | 'unplaced'> {
  const isUnknown = (a.building === '' || b.building === '') && !sameUnknown(a, b);
  const unplaced = isUnknown ? rootsOf([a, b].filter((e) => e.building === '')) : NONE;
  if (unplaced.length > 0 || samePlaceName(a.building, b.building)) {
    return { betweenBuildings: false, betweenByDefault: false, unplaced };
  }
  return { betweenBuildings: true, betweenByDefault: a.buildingByDefault || b.buildingByDefault, unplaced };
}

/** True for two that are in one place, whichever that is: one takes its place from the other, or both from a third. */
function sameUnknown(a: SiteEquipment, b: SiteEquipment): boolean {
  return a === b || (a.placeOf !== '' && a.placeOf === b.placeOf);
}

function rootsOf(equipments: readonly SiteEquipment[]): readonly string[] {
  return [...new Set(equipments.map((e) => e.placeOf).filter((tag) => tag !== ''))];
}

function isStatedOutdoors({ outdoors }: SiteEquipment): boolean {
  return outdoors.value && !outdoors.byDefault;
}

/** What one link lays from its upper to its lower end. */
function laid(link: Link): Pick<Link, 'legs' | 'through'> {
  const { row, up, legs, through } = link;
  // One cable is the same from both ends.
  if (row === up || (legs.length < 2 && through.length < 2)) return link;
  return { legs: legs.toReversed(), through: through.toReversed() };
}

/** What a way lays, link by link, with the transfer switches between them. */
function laidAlong({ links }: Way): Pick<Link, 'legs' | 'through'> {
  const [only] = links;
  if (links.length === 1 && only && only.downEnd !== 'pass') return laid(only);
  const legs: RunLeg[] = [];
  const through: SiteEquipment[] = [];
  for (const link of links) {
    const one = laid(link);
    legs.push(...one.legs);
    through.push(...one.through);
    if (link.downEnd === 'pass') through.push(link.down);
  }
  return { legs, through };
}

function makeRun(way: Way, from: SitePort, to: SitePort): SiteRun {
  const { legs, through } = laidAlong(way);
  const a = from.equipment;
  const b = to.equipment;
  let length = 0;
  let areKnown = true;
  for (const leg of legs) {
    if (leg.length === undefined) areKnown = false;
    else length += leg.length;
  }
  const outdoors = a.outdoors.value || b.outdoors.value || through.some((e) => e.outdoors.value);
  const isStated =
    outdoors && (isStatedOutdoors(a) || isStatedOutdoors(b) || through.some((e) => isStatedOutdoors(e)));
  const areTogether = sameUnknown(a, b);
  const isUnknown = (a.place === '' || b.place === '') && !areTogether;
  const placeless = isUnknown ? rootsOf([a, b].filter((e) => e.place === '')) : NONE;
  const { betweenBuildings, betweenByDefault, unplaced } = between(a, b);
  return {
    from,
    to,
    legs,
    through: through.length === 0 ? NONE : through.map((e) => e.tag),
    switches: way.through,
    rapidShutdown: through.some((e) => e.facts.rapid_shutdown?.value === true),
    length: areKnown ? length : undefined,
    unknown: areKnown ? NOBODY : legs.filter((leg) => leg.length === undefined).map((leg) => leg.row),
    outdoors,
    outdoorsByDefault: outdoors && !isStated,
    betweenBuildings,
    betweenByDefault,
    unplaced,
    placesDiffer: placeless.length === 0 && !areTogether && !samePlaceName(a.place, b.place),
    placeless,
    carries: way.first.carries,
  };
}

const NOBODY: readonly SiteEquipment[] = [];
