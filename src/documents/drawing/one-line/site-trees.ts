import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Plan, PlannedEquipment, PlannedProtector } from '../../../model/plan.js';
import { siteParts } from './edges.js';
import type { Branch, Edge, End, SiteParts, SiteTrees, Tap, TreeNode } from './tree.js';

/** What a tree begins with, the first there is: then the one with the most lines. */
const FIRST_KINDS = [
  'service',
  'battery',
  'dc-panel',
  'inverter-charger',
  'transfer-switch',
  'panel',
  'generator',
  'transformer',
  'grid-tie-inverter',
  'charge-controller',
  'combiner',
  'other',
];

const placeKey = ({ equipment, port }: End): string => JSON.stringify([equipment, port]);

/** The taps at each port: housings of one port that share all that is told of them are one tap. */
function tapsByPort(plan: Plan): Map<string, Tap[]> {
  const placed = new Map<string, PlannedProtector[]>();
  for (const protector of plan.protectors) {
    const { ports, part, existing, overcurrent, wiring, required } = protector;
    const lead = [wiring.leadGauge, wiring.leadLengthLimit, wiring.leadLengthPlanned];
    const key = JSON.stringify([ports, part, existing, overcurrent, lead, required.mcov]);
    placed.set(key, [...(placed.get(key) ?? []), protector]);
  }
  const found = new Map<string, Tap[]>();
  for (const protectors of placed.values()) {
    protectors[0]?.ports.forEach((port, index) => {
      const at = placeKey(port);
      const tap = { protectors, housings: protectors.length, again: index > 0 };
      found.set(at, [...(found.get(at) ?? []), tap]);
    });
  }
  return found;
}

/** The order of what is reached: breadth first, so that the trees are as shallow as can be. */
function spanned(root: string, parts: SiteParts, seen: Set<string>): Map<string, Edge[]> {
  const below = new Map<string, Edge[]>();
  const queue = [root];
  seen.add(root);
  // It grows while it is walked.
  for (const tag of queue) {
    const own: Edge[] = [];
    below.set(tag, own);
    for (const edge of sortedEdges(tag, parts)) {
      const other = otherEnd(edge, tag).equipment;
      if (seen.has(other)) continue;
      seen.add(other);
      queue.push(other);
      own.push(edge);
    }
  }
  return below;
}

function ownEnd(edge: Edge, tag: string): End {
  return edge.from.equipment === tag ? edge.from : edge.to;
}

function otherEnd(edge: Edge, tag: string): End {
  return edge.from.equipment === tag ? edge.to : edge.from;
}

/** Lines of an equipment by its ports, then by the tag at the other end. */
function sortedEdges(tag: string, parts: SiteParts): Edge[] {
  const ports = parts.equipmentOf.get(tag)?.ports ?? [];
  return [...(parts.edgesOf.get(tag) ?? [])].sort(
    (a, b) =>
      ports.indexOf(ownEnd(a, tag).port) - ports.indexOf(ownEnd(b, tag).port) ||
      byNaturalOrder(otherEnd(a, tag).equipment, otherEnd(b, tag).equipment),
  );
}

function rootsFirst(parts: SiteParts): string[] {
  const rank = ({ kind }: PlannedEquipment): number => {
    const at = FIRST_KINDS.indexOf(kind);
    return at < 0 ? FIRST_KINDS.length : at;
  };
  const lines = ({ tag }: PlannedEquipment): number => parts.edgesOf.get(tag)?.length ?? 0;
  return [...parts.plan.site.equipments]
    .sort((a, b) => rank(a) - rank(b) || lines(b) - lines(a) || byNaturalOrder(a.tag, b.tag))
    .map(({ tag }) => tag);
}

/** True for a service whose protector stands ahead of its main. */
function isAhead(equipment: PlannedEquipment): boolean {
  return equipment.facts.some((f) => f.field === 'ahead_of_disconnect' && f.value === true);
}

interface Building {
  readonly parts: SiteParts;
  readonly taps: ReadonlyMap<string, readonly Tap[]>;
  /** Ports of each equipment that have a protector. */
  readonly tapped: ReadonlyMap<string, readonly string[]>;
  readonly below: ReadonlyMap<string, readonly Edge[]>;
}

/** The node of an equipment, its children made before it. */
function nodeOf(
  equipment: PlannedEquipment,
  above: Edge | null,
  { parts, taps, tapped, below }: Building,
  made: ReadonlyMap<string, TreeNode>,
): TreeNode {
  const { tag } = equipment;
  const tapsAt = (end: End): readonly Tap[] => taps.get(placeKey(end)) ?? [];
  const inTree = new Set(below.get(tag));
  const entry = above === null ? null : ownEnd(above, tag);
  const hung = new Set<string>(entry === null ? [] : [placeKey(entry)]);
  if (isAhead(equipment)) hung.add(placeKey({ equipment: tag, port: 'service' }));
  const byPort = new Map<string, Branch[]>();
  for (const edge of sortedEdges(tag, parts)) {
    if (edge === above) continue;
    const [near, far] = [ownEnd(edge, tag), otherEnd(edge, tag)];
    const child = inTree.has(edge) ? (made.get(far.equipment) ?? null) : null;
    const branch: Branch = {
      near: [near],
      far: [far],
      isUpstream: edge.to.equipment === tag,
      lengths: [edge.length],
      lengthFrom: edge.lengthFrom,
      hasMain: false,
      nearTaps: [],
      farTaps: child === null ? [] : tapsAt(far),
      child,
      count: 1,
    };
    byPort.set(near.port, [...(byPort.get(near.port) ?? []), branch]);
  }
  // Protectors where no line leaves stand on a short line of their own.
  for (const port of new Set([...equipment.ports, ...(tapped.get(tag) ?? [])])) {
    const end = { equipment: tag, port };
    if (!byPort.has(port) && !hung.has(placeKey(end)) && tapsAt(end).length > 0) byPort.set(port, []);
  }
  const order = (port: string): number => equipment.ports.indexOf(port);
  const branches = [...byPort]
    .sort(([a], [b]) => order(a) - order(b))
    .flatMap(([port, own]) => {
      const end = { equipment: tag, port };
      const nearTaps = hung.has(placeKey(end)) ? [] : tapsAt(end);
      // A protector stands ahead of the main or behind it: it is drawn where one stands.
      const hasMain = equipment.kind === 'service' && port === 'service' && tapsAt(end).length > 0;
      if (nearTaps.length === 0 && !hasMain) return own;
      const [only, ...more] = own;
      if (only && more.length === 0) return [{ ...only, hasMain, nearTaps }];
      const bus: TreeNode | null = only
        ? { form: 'bus', equipments: [], branches: own, part: 'whole' }
        : null;
      const trunk = {
        near: [end],
        far: [],
        isUpstream: false,
        lengths: [null],
        lengthFrom: null,
        hasMain,
        nearTaps,
        farTaps: [],
        child: bus,
      };
      return [{ ...trunk, count: 1 }];
    });
  return { form: 'box', equipments: [equipment], branches, part: 'whole' };
}

/** A service stands behind the utility's line, on which a protector ahead of the main hangs. */
function behindUtility(node: TreeNode, { taps }: Building): TreeNode {
  const [equipment] = node.equipments;
  if (equipment?.kind !== 'service') return node;
  const end = { equipment: equipment.tag, port: 'service' };
  const farTaps = isAhead(equipment) ? (taps.get(placeKey(end)) ?? []) : [];
  const line = {
    near: [],
    far: [end],
    isUpstream: false,
    lengths: [null],
    lengthFrom: null,
    hasMain: false,
    nearTaps: [],
    farTaps,
    child: node,
  };
  return { form: 'utility', equipments: [], branches: [{ ...line, count: 1 }], part: 'whole' };
}

/**
 * The site as trees: from the service, else from the battery, else from where most lines meet, each equipment once. A line that
 * closes a ring is named at both its ends.
 */
export function siteTrees(plan: Plan): SiteTrees {
  const parts = siteParts(plan);
  const taps = tapsByPort(plan);
  const tapped = new Map<string, string[]>();
  for (const { equipment, port } of plan.protectors.flatMap((p) => p.ports))
    tapped.set(equipment, [...(tapped.get(equipment) ?? []), port]);
  const seen = new Set<string>();
  return rootsFirst(parts).flatMap((root) => {
    if (seen.has(root)) return [];
    const below = spanned(root, parts, seen);
    const building = { parts, taps, tapped, below };
    const made = new Map<string, TreeNode>();
    const above = new Map<string, Edge>();
    for (const [tag, edges] of below)
      for (const edge of edges) above.set(otherEnd(edge, tag).equipment, edge);
    // From the leaves up: what is reached last is made first.
    for (const tag of [...below.keys()].reverse()) {
      const equipment = parts.equipmentOf.get(tag);
      if (equipment) made.set(tag, nodeOf(equipment, above.get(tag) ?? null, building, made));
    }
    const node = made.get(root);
    return node ? [behindUtility(node, building)] : [];
  });
}
