import type { SiteEquipment, SitePort } from '../model/site.js';
import { byNaturalOrder } from '../text/natural-order.js';

/**
 * The batteries on a bus: through controllers and inverters that share it, in natural order of tags.
 * @param port a `battery` port
 */
export function batteriesOn(port: SitePort): readonly SiteEquipment[] {
  const seen = new Set<SitePort>();
  const found = new Set<SiteEquipment>();
  const queue: SitePort[] = [port];
  for (let at = queue.pop(); at; at = queue.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    if (at.equipment.kind === 'battery') found.add(at.equipment);
    for (const run of at.runs) if (run.carries === 'battery') queue.push(run.from, run.to);
  }
  return [...found].sort((a, b) => byNaturalOrder(a.tag, b.tag));
}
