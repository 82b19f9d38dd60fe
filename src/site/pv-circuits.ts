import type { Site, SiteEquipment } from '../model/site.js';
import { isOnBuilding } from './premises.js';
import { CONVERTERS } from './converters.js';
import { samePlaceName } from './equipment.js';

/** Where the DC circuits of an array are, as NEC 690.7 asks it. */
export interface PvCircuits {
  /** True where the array stands on the ground, and nothing that its circuits pass or end at is on or in a building. */
  readonly offBuildings: boolean;
  /** True where a building that they pass or end at is stated to be a dwelling, whatever the job is. */
  readonly atDwelling: boolean;
}

/**
 * Where the DC circuits of an array are: an array on the ground doesn't keep its cable out of the building of its converter.
 * @param site the survey
 * @param array an array of it
 * @returns on a building, too, where nothing on the list says where its circuit ends: the lower limit is the safe one
 * Source: NEC 690.7, 2017 to 2023.
 */
export function pvCircuitsOf(site: Site, array: SiteEquipment): PvCircuits {
  const onGround = array.facts.mounting?.value === 'ground';
  const { passed, ends } = reachedBy(array);
  const reached = onGround ? passed : [array, ...passed];
  return {
    offBuildings: onGround && ends && !reached.some((one) => isOnBuilding(site, one)),
    atDwelling: reached.some((one) => holdsDwelling(site, one)),
  };
}

/** What the circuits of an array pass or end at, combiners and disconnects too; `ends`: a converter is among it. */
function reachedBy(array: SiteEquipment): {
  readonly passed: readonly SiteEquipment[];
  readonly ends: boolean;
} {
  const passed = new Set<SiteEquipment>();
  const todo = [array];
  let ends = false;
  for (let from = todo.pop(); from; from = todo.pop()) {
    for (const run of from.ports.flatMap((port) => port.runs)) {
      if (run.from.equipment !== from || run.carries !== 'dc') continue;
      const to = run.to.equipment;
      const isEnd = CONVERTERS.has(to.kind);
      ends ||= isEnd;
      for (const { row } of run.legs) if (row !== array) passed.add(row);
      if (passed.has(to)) continue;
      passed.add(to);
      if (!isEnd) todo.push(to);
    }
  }
  return { passed: [...passed], ends };
}

/** True where a panel or a load in the same building says that this building is a dwelling. */
function holdsDwelling(site: Site, { building }: SiteEquipment): boolean {
  return (
    building !== '' &&
    site.equipments.some(
      (e) => e.facts.building_occupancy?.value === 'dwelling' && samePlaceName(e.building, building),
    )
  );
}
