import type { DcJoined, SiteEquipment, SitePort } from '../model/site.js';
import { byNaturalOrder } from '../model/natural-order.js';

/**
 * What is joined to a DC circuit, through combiners, arrays on several inputs and inputs that several arrays feed. An input of which
 * nobody says which source it takes joins none of them to the others.
 * @param port a DC input, or the output of an array, a combiner or a turbine
 */
export function joinedTo(port: SitePort): DcJoined {
  const known = port.found.circuit;
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
  const found: DcJoined = {
    arrays,
    others,
    inputs: ports.filter((p) => p.cls === 'dc-in'),
    turbinesAlone: arrays.size === 0 && others.some((e) => e.kind !== 'combiner'),
    otherSources: arrays.size === 0 || others.some(isNotCounted),
  };
  // Those of one circuit share it; it goes with the site.
  for (const one of ports) if (!one.oneOfSources || one === port) one.found.circuit = found;
  return found;
}

/** A turbine, or a combiner of which nobody says what feeds it. */
function isNotCounted({ kind, ports }: SiteEquipment): boolean {
  return kind !== 'combiner' || ports[0]?.sources.length === 0;
}

/**
 * All that is joined to a DC port, combiners and several inputs of one source passed through.
 * @param port output of an array, a combiner or a turbine, or a DC input
 * @returns one; several where one of several sources feeds an input and which isn't stated
 */
export function circuitsAt(port: SitePort): readonly DcJoined[] {
  const outputs = port.oneOfSources ? port.sources.flatMap((source) => source.ports[0] ?? []) : [];
  return (outputs.length > 0 ? outputs : [port]).map(joinedTo);
}
