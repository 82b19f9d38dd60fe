import type { SiteEquipment, SitePort } from '../model/site.js';
import { byNaturalOrder } from '../model/natural-order.js';

/**
 * The ports on a battery bus, through controllers and inverters that share it.
 * @param port a `battery` port; it is among them
 */
export function portsOnBus(port: SitePort): ReadonlySet<SitePort> {
  const seen = new Set<SitePort>();
  const queue: SitePort[] = [port];
  for (let at = queue.pop(); at; at = queue.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    for (const run of at.runs) if (run.carries === 'battery') queue.push(run.from, run.to);
  }
  return seen;
}

/**
 * The batteries on a bus, in natural order of tags.
 * @param port a `battery` port
 */
export function batteriesOn(port: SitePort): readonly SiteEquipment[] {
  const known = port.found.batteries;
  if (known) return known;
  const ports = portsOnBus(port);
  const found = [...ports].map((p) => p.equipment).filter((e) => e.kind === 'battery');
  const each = [...new Set(found)].sort((a, b) => byNaturalOrder(a.tag, b.tag));
  // Those of one bus share theirs, or a bus would cost the square of its batteries.
  for (const one of ports) one.found.batteries = each;
  return each;
}
