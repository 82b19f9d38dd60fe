import type { SiteEquipment, SitePort } from '../model/site.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { CONVERTERS } from './converters.js';

/** What can send current through one DC port of an array circuit: all that is joined to it by cable. */
export interface DcNode {
  /** In natural order of tags. */
  readonly arrays: readonly SiteEquipment[];
  /** DC inputs of converters, by tag and input. */
  readonly inputs: readonly SitePort[];
  /** True where something else than arrays drives it, or nothing on the list does. */
  readonly otherSources: boolean;
  /** True where turbines alone drive it. */
  readonly turbinesAlone: boolean;
}

/**
 * All that is joined to a DC port, combiners and several inputs of one source passed through.
 * @param port output of an array, a combiner or a turbine, or a DC input
 * @returns one; several where one of several sources feeds an input and which isn't stated
 */
export function dcNodesAt(port: SitePort): readonly DcNode[] {
  let found = nodes.get(port);
  if (!found) {
    const outputs = port.oneOfSources ? port.sources.flatMap((source) => source.ports[0] ?? []) : [];
    found = (outputs.length > 0 ? outputs : [port]).map(nodeAt);
    nodes.set(port, found);
  }
  return found;
}

/** A turbine, or a combiner of which nobody says what feeds it. */
function isNotCounted({ kind, ports }: SiteEquipment): boolean {
  return kind === 'combiner' ? ports[0]?.sources.length === 0 : kind !== 'array';
}

const TURBINES: ReadonlySet<string> = new Set(['wind-turbine', 'hydro-turbine']);

const nodes = new WeakMap<SitePort, readonly DcNode[]>();

/** Of each port of a surveyed site: those of one node share it, or a combiner would cost the square of its strings. */
const joined = new WeakMap<SitePort, DcNode>();

function nodeAt(port: SitePort): DcNode {
  const known = joined.get(port);
  if (known) return known;
  const seen = new Set<SitePort>();
  const queue: SitePort[] = [port];
  for (let at = queue.pop(); at; at = queue.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    for (const { from, to, carries } of at.runs) if (carries === 'dc') queue.push(from, to);
  }
  const inputs = [...seen].filter((p) => p.cls === 'dc-in' && CONVERTERS.has(p.equipment.kind));
  const sources = [...new Set([...seen].filter((p) => p.cls === 'output').map((p) => p.equipment))];
  const arrays = sources.filter((e) => e.kind === 'array');
  const node: DcNode = {
    arrays: arrays.sort((a, b) => byNaturalOrder(a.tag, b.tag)),
    inputs: inputs.sort((a, b) => byNaturalOrder(a.equipment.tag, b.equipment.tag) || a.input - b.input),
    turbinesAlone: arrays.length === 0 && sources.some((e) => TURBINES.has(e.kind)),
    otherSources: arrays.length === 0 || sources.some(isNotCounted),
  };
  for (const one of seen) joined.set(one, node);
  return node;
}
