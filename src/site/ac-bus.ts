import { holds } from '../model/ac-parts.js';
import type { SitePort, SiteRun } from '../model/site.js';

/**
 * True for a run that joins two ports to one bus: no transfer switch stands in it, and one holds the system of the other: what is
 * fed is a part of what feeds, or what feeds is a part of what several make together.
 */
function joins({ carries, switches, from, to }: SiteRun): boolean {
  if (carries !== 'ac' || switches.length > 0) return false;
  const { system: up } = from;
  const { system: down } = to;
  return up === down || (up !== undefined && down !== undefined && (holds(up, down) || holds(down, up)));
}

/**
 * The ports that are joined to one AC bus: all that panels join, but not through a transfer switch, a transformer or an
 * inverter-charger, of which each side is a port of its own.
 * @param port an AC port; it is among them
 */
export function joinedPorts(port: SitePort): ReadonlySet<SitePort> {
  const seen = new Set<SitePort>([port]);
  const open: SitePort[] = [port];
  for (let at = open.pop(); at; at = open.pop()) {
    for (const run of at.runs) {
      if (!joins(run)) continue;
      const other = run.from === at ? run.to : run.from;
      if (seen.has(other)) continue;
      seen.add(other);
      open.push(other);
    }
  }
  return seen;
}
