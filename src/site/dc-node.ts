import type { SiteEquipment, SitePort } from '../model/site.js';
import { joinedTo, type DcJoined } from './dc-joined.js';

/** What can send current through one DC port of an array circuit. */
export interface DcNode {
  readonly joined: DcJoined;
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
  const outputs = port.oneOfSources ? port.sources.flatMap((source) => source.ports[0] ?? []) : [];
  return (outputs.length > 0 ? outputs : [port]).map(nodeAt);
}

function nodeAt(port: SitePort): DcNode {
  const joined = joinedTo(port);
  let node = nodes.get(joined);
  if (!node) {
    const { arrays, others } = joined;
    node = {
      joined,
      turbinesAlone: arrays.size === 0 && others.some((e) => e.kind !== 'combiner'),
      otherSources: arrays.size === 0 || others.some(isNotCounted),
    };
    nodes.set(joined, node);
  }
  return node;
}

/** Those of one circuit share it. */
const nodes = new WeakMap<DcJoined, DcNode>();

/** A turbine, or a combiner of which nobody says what feeds it. */
function isNotCounted({ kind, ports }: SiteEquipment): boolean {
  return kind !== 'combiner' || ports[0]?.sources.length === 0;
}
