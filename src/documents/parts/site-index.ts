import type { Plan, PlannedEquipment, PlannedRun } from '../../model/plan.js';

/** A plan's site by tag. */
interface SiteIndex {
  readonly equipments: ReadonlyMap<string, PlannedEquipment>;
  readonly runsFrom: ReadonlyMap<string, readonly PlannedRun[]>;
  readonly runsTo: ReadonlyMap<string, readonly PlannedRun[]>;
}

// A job may have thousands of equipments, and documents ask for them protector by protector.
const indices = new WeakMap<Plan, SiteIndex>();

function byTag(runs: readonly PlannedRun[], end: 'from' | 'to'): ReadonlyMap<string, readonly PlannedRun[]> {
  const found = new Map<string, PlannedRun[]>();
  for (const run of runs) {
    const { equipment } = run[end];
    const known = found.get(equipment);
    if (known === undefined) found.set(equipment, [run]);
    else known.push(run);
  }
  return found;
}

function indexOf(plan: Plan): SiteIndex {
  const known = indices.get(plan);
  if (known !== undefined) return known;
  const { equipments, runs } = plan.site;
  const made: SiteIndex = {
    equipments: new Map(equipments.map((e) => [e.tag, e])),
    runsFrom: byTag(runs, 'from'),
    runsTo: byTag(runs, 'to'),
  };
  indices.set(plan, made);
  return made;
}

/** The equipment of a tag; undefined: the site has none. */
export function equipmentOf(plan: Plan, tag: string): PlannedEquipment | undefined {
  return indexOf(plan).equipments.get(tag);
}

/** The runs that begin at an equipment, in the plan's order. */
export function runsFrom(plan: Plan, tag: string): readonly PlannedRun[] {
  return indexOf(plan).runsFrom.get(tag) ?? [];
}

/** The runs that end at an equipment, in the plan's order. */
export function runsTo(plan: Plan, tag: string): readonly PlannedRun[] {
  return indexOf(plan).runsTo.get(tag) ?? [];
}

/**
 * The equipments that one or more of some equipments feed, those themselves included.
 * @param from tags
 */
export function downstream(plan: Plan, from: readonly string[]): ReadonlySet<string> {
  const seen = new Set(from);
  // A set is walked to its end, whatever is added meanwhile.
  for (const tag of seen) for (const run of runsFrom(plan, tag)) seen.add(run.to.equipment);
  return seen;
}
