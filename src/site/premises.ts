import type { OrDefault, Site, SiteEquipment, SitePort, SiteRun, Supplies } from '../model/site.js';
import type { Kind, Occupancy } from '../model/words.js';
import { samePlaceName } from './equipment.js';
import { ultimateSources } from './inputs.js';

/**
 * The service whose place a panel is: it feeds the panel in the same building over a run of at most `limit`. Behind a
 * transfer switch that can put another supply on the panel it isn't: the service's protector is cut off just then.
 * @param port the `feeder` port of a panel
 * @param limit m
 * @returns the run from that service; undefined where the panel has a place of its own
 */
export function servicePlaceRun(port: SitePort, limit: number): SiteRun | undefined {
  if (port.equipment.kind !== 'panel') return undefined;
  return port.runs.find(
    (run) =>
      run.to === port &&
      run.from.equipment.kind === 'service' &&
      !run.betweenBuildings &&
      run.unplaced.length === 0 &&
      run.length !== undefined &&
      run.length <= limit &&
      (run.switches.length === 0 || !port.runs.some((other) => other !== run && sharesSwitch(other, run))),
  );
}

/** True where another supply comes in by a transfer switch that this run passes through. */
function sharesSwitch(other: SiteRun, run: SiteRun): boolean {
  return other.to === run.to && other.switches.some((tag) => run.switches.includes(tag));
}

/** What the building of a panel or a load holds, and whether only a default says so. */
export interface Unit {
  readonly occupancy: OrDefault<Occupancy>;
  /** True where it stands in another building than the one that the job's occupancy is about. */
  readonly otherBuilding: boolean;
  /** True where only a default of a building says so. */
  readonly otherByDefault: boolean;
  /** True where its supply comes from where nobody lives, so that the job's occupancy stands in for its own. */
  readonly occupancyOfJob: boolean;
}

/**
 * What a panel or load stands in: the job's occupancy in the building of its supply, `building_occupancy` in another.
 * @param site the survey
 * @param equipment a panel or a load
 */
export function unitOf(site: Site, equipment: SiteEquipment): Unit {
  const stated = equipment.facts.building_occupancy;
  const home = homeOf(site, equipment);
  if (home && !isOnBuilding(site, home)) {
    // A meter pole or a yard holds nobody: what it feeds is where the job's occupancy is, unless the row says otherwise.
    const occupancy = stated ? { value: stated.value, byDefault: false } : site.occupancy;
    return { occupancy, otherBuilding: false, otherByDefault: false, occupancyOfJob: !stated };
  }
  const known = home !== undefined && home.building !== '' && equipment.building !== '';
  const otherBuilding = known && !samePlaceName(home.building, equipment.building);
  const otherByDefault = otherBuilding && (home.buildingByDefault || equipment.buildingByDefault);
  if (!otherBuilding) {
    return { occupancy: site.occupancy, otherBuilding, otherByDefault, occupancyOfJob: false };
  }
  const unstated = equipment.row.settled?.building_occupancy?.value ?? 'other';
  return {
    occupancy: stated ? { value: stated.value, byDefault: false } : { value: unstated, byDefault: true },
    otherBuilding,
    otherByDefault,
    occupancyOfJob: false,
  };
}

/**
 * Panels and loads in buildings that are stated to hold a dwelling or sleeping unit, fed from a service by however many feeders.
 * @returns their tags, in natural order
 */
export function unitsFedBy(site: Site, service: SiteEquipment): readonly { tag: string; unit: Occupancy }[] {
  return site.equipments.flatMap((e) => {
    const unit = e.facts.building_occupancy?.value;
    if (unit === undefined || unit === 'other' || headOf(e, site.supplies.heads) !== service) return [];
    return [{ tag: e.tag, unit }];
  });
}

/** Supplies of a site of which only the service is known yet. */
export function suppliesOf(equipments: readonly SiteEquipment[]): Supplies {
  const service = equipments.find((e) => e.kind === 'service');
  return { heads: new Map(), buildings: new Map(), service };
}

/**
 * True where what its row calls a building has an inside: the equipment itself or something else there isn't outdoors.
 * @param head any equipment of the site
 */
export function isOnBuilding(site: Site, head: SiteEquipment): boolean {
  const { buildings } = site.supplies;
  let known = buildings.get(head);
  if (known === undefined) {
    known =
      !head.outdoors.value ||
      site.equipments.some(
        (e) =>
          !e.outdoors.value &&
          // A meter or a disconnect on a pole makes no house of it.
          e.kind !== 'disconnect' &&
          e.building !== '' &&
          samePlaceName(e.building, head.building),
      );
    buildings.set(head, known);
  }
  return known;
}

/** The equipment at the head of its supply: the service, else the first service of the site, else the source itself. */
function homeOf(site: Site, equipment: SiteEquipment): SiteEquipment | undefined {
  const { heads, service } = site.supplies;
  const head = headOf(equipment, heads);
  if (head.kind === 'service') return head;
  return service ?? (head === equipment ? undefined : head);
}

/** Where the walk from feeder to feeder ends; what is found holds for all that it passes. */
function headOf(equipment: SiteEquipment, heads: Map<SiteEquipment, SiteEquipment>): SiteEquipment {
  const known = heads.get(equipment);
  if (known) return known;
  const above = nextAbove(equipment);
  const its = above && heads.get(above);
  if (its) {
    heads.set(equipment, its);
    return its;
  }
  const passed = new Set<SiteEquipment>();
  let head = equipment;
  let isCircle = false;
  while (head.kind !== 'service') {
    const found = heads.get(head);
    if (found) {
      head = found;
      break;
    }
    isCircle = passed.has(head);
    if (isCircle) break;
    passed.add(head);
    const next = nextAbove(head);
    if (!next) break;
    head = next;
  }
  // Where a walk into a circle ends depends on where it began.
  if (!isCircle) for (const one of passed) heads.set(one, head);
  return head;
}

/** What is walked to from an equipment; undefined where the walk ends there. */
function nextAbove(equipment: SiteEquipment): SiteEquipment | undefined {
  const { kind } = equipment;
  if (kind === 'service') return undefined;
  const next = feederOf(equipment);
  // A standby generator isn't where people live: the chain of a site without a service ends at its inverter.
  return next?.kind === 'generator' && kind !== 'panel' && kind !== 'load' ? undefined : next;
}

/** What feeds the AC inputs of an equipment: a service where one does, else the first. */
function feederOf(equipment: SiteEquipment): SiteEquipment | undefined {
  let first: SiteEquipment | undefined;
  for (const { cls, feeders } of equipment.ports) {
    if (cls !== 'feeder' && cls !== 'ac-in') continue;
    for (const feeder of feeders) {
      if (feeder.equipment.kind === 'service') return feeder.equipment;
      first ??= feeder.equipment;
    }
  }
  return first;
}

/**
 * The port that carries the protector of NEC 694.7(D): the service's unless it sits ahead of its disconnect, else the
 * first panel's, else the AC out of the turbine's grid-tie inverter or of the first inverter-charger.
 * @returns undefined where the site has no turbine; `none` where it has no AC equipment
 */
export function windCarrier(site: Site): SitePort | 'none' | undefined {
  const turbines = site.equipments.filter((e) => e.kind === 'wind-turbine');
  if (turbines.length === 0) return undefined;
  const service = site.equipments.find(
    (e) => e.kind === 'service' && e.facts.ahead_of_disconnect?.value !== true,
  );
  if (service?.ports[0]) return service.ports[0];
  const panel = site.equipments.find((e) => e.kind === 'panel');
  if (panel?.ports[0]) return panel.ports[0];
  const isOfWind = (e: SiteEquipment): boolean =>
    e.ports.some((p) => p.cls === 'dc-in' && ultimateSources(p).some((s) => s.kind === 'wind-turbine'));
  const usable = (kind: Kind): readonly SitePort[] =>
    site.equipments
      .filter((e) => e.kind === kind && (kind === 'inverter-charger' || isOfWind(e)))
      .flatMap((e) => e.ports.filter((p) => p.cls === 'ac-out' && p.unused === ''));
  return usable('grid-tie-inverter')[0] ?? usable('inverter-charger')[0] ?? 'none';
}
