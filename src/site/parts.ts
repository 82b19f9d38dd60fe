import type { Site, SiteEquipment } from '../model/site.js';

/**
 * The parts of a site that hang together: whatever cables of the list join, through converters, panels and transformers, control
 * circuits too, since what they start is part of it.
 * @returns by equipment the equipments of its part, in natural order of tags
 */
export function partsOf(site: Site): ReadonlyMap<SiteEquipment, readonly SiteEquipment[]> {
  const found = new Map<SiteEquipment, SiteEquipment[]>();
  for (const first of site.equipments) {
    if (found.has(first)) continue;
    const part: SiteEquipment[] = [];
    const open = [first];
    found.set(first, part);
    for (let at = open.pop(); at; at = open.pop()) {
      for (const port of at.ports) {
        for (const run of port.runs) {
          const other = run.from === port ? run.to.equipment : run.from.equipment;
          if (found.has(other)) continue;
          found.set(other, part);
          open.push(other);
        }
      }
    }
  }
  for (const equipment of site.equipments) found.get(equipment)?.push(equipment);
  return found;
}
