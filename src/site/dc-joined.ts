import type { SiteEquipment, SitePort } from '../model/site.js';
import { byNaturalOrder } from '../model/natural-order.js';

/** What is joined to one DC circuit: whatever feeds a fault anywhere on it. */
export interface DcJoined {
  /** Arrays, in natural order. */
  readonly arrays: ReadonlySet<SiteEquipment>;
  /** Turbines and combiners, in natural order. */
  readonly others: readonly SiteEquipment[];
  /** DC inputs, in natural order: what a converter sends back comes out of each. */
  readonly inputs: readonly SitePort[];
}

/** Of each port of a surveyed site; those of one circuit share theirs. */
const circuits = new WeakMap<SitePort, DcJoined>();

/**
 * What is joined to a DC circuit, through combiners, arrays on several inputs and inputs that several arrays feed. An input of which
 * nobody says which source it takes joins none of them to the others.
 * @param port a DC input, or the output of an array, a combiner or a turbine
 */
export function joinedTo(port: SitePort): DcJoined {
  const known = circuits.get(port);
  if (known) return known;
  const seen = new Set<SitePort>();
  const open: SitePort[] = [port];
  for (let at = open.pop(); at; at = open.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    if (at.oneOfSources) continue;
    for (const run of at.runs) if (run.carries === 'dc') open.push(run.from, run.to);
  }
  const ports = [...seen].sort(
    (a, b) => byNaturalOrder(a.equipment.tag, b.equipment.tag) || byNaturalOrder(a.name, b.name),
  );
  const sources = ports.filter((p) => p.cls === 'output').map((p) => p.equipment);
  const arrays = new Set(sources.filter((e) => e.kind === 'array'));
  const others = sources.filter((e) => e.kind !== 'array');
  const found = { arrays, others, inputs: ports.filter((p) => p.cls === 'dc-in') };
  for (const one of ports) if (!one.oneOfSources || one === port) circuits.set(one, found);
  return found;
}
