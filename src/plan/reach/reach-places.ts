import type { SitePort, SiteRun } from '../../model/site.js';
import type { Kind } from '../../model/words.js';
import type { NearestProtector, PlacementReason } from '../../rules/placement-facts.js';
import { REACH_RULE } from '../../rules/rulebook.js';
import { waivedByList } from '../../rules/waiving.js';
import { samePlaceName } from '../../site/equipment.js';
import { servicePlaceRun } from '../../site/premises.js';
import { looksAt, strongest, type Placement, type Refusal } from '../context/verdict.js';
import { withstandOfPort } from '../rate/rate.js';
import { reachOf, type Selected } from '../choose/select.js';
import { placementFacts, type JobContext } from '../context/job-context.js';

/** What reach decides: new placements, reasons for places that are there already, and refusals. */
export interface ReachPlacing {
  readonly placements: readonly Placement[];
  readonly joined: ReadonlyMap<Selected, PlacementReason>;
  readonly refusals: readonly Refusal[];
}

/**
 * Places what reach decides: the outputs of grid-tie inverters that no chosen protector covers.
 * @param selected what was chosen for the places that the site alone decides
 */
export function placeByReach(job: JobContext, selected: readonly Selected[]): ReachPlacing {
  const at = new Map<SitePort, Selected>();
  for (const one of selected)
    for (const port of one.placement.ports) if (port.cls !== 'terminals') at.set(port, one);
  const placements: Placement[] = [];
  const joined = new Map<Selected, PlacementReason>();
  const refusals: Refusal[] = [];
  for (const equipment of job.site.equipments) {
    for (const port of equipment.ports) {
      if (!looksAt(REACH_RULE, { basis: job.site.basis.value, port: port.cls, kind: equipment.kind }))
        continue;
      const facts = placementFacts(job, port, nearestTo(job, port, at));
      const decision = REACH_RULE.decide(facts);
      if (decision.outcome !== 'placed') {
        refusals.push({ port, rule: REACH_RULE, because: decision.because });
        continue;
      }
      const reason: PlacementReason = {
        rule: REACH_RULE,
        strength: decision.strength,
        because: decision.because,
      };
      const there = at.get(port);
      if (there) {
        joined.set(there, reason);
        continue;
      }
      const waived = waivedByList(facts);
      if (waived) refusals.push({ ...waived, port });
      else {
        const reasons = [reason];
        placements.push({ ports: [port], subject: equipment, reasons, strength: strongest(reasons) });
      }
    }
  }
  return { placements, joined, refusals };
}

const LEANED_ON: ReadonlySet<Kind> = new Set<Kind>(['service', 'panel', 'inverter-charger']);

/**
 * The protected place that the run of an output leads to: of several (through a transfer switch) the one that covers it, else
 * the first. A panel at its service leans on the service's protector.
 */
function nearestTo(
  job: JobContext,
  port: SitePort,
  at: ReadonlyMap<SitePort, Selected>,
): NearestProtector | undefined {
  let first: NearestProtector | undefined;
  for (const run of port.runs) {
    if (run.to !== port || run.carries !== 'ac' || !LEANED_ON.has(run.from.equipment.kind)) continue;
    const found = nearestAlong(job, port, run, at);
    if (covers(job, found)) return found;
    first ??= found;
  }
  return first;
}

function covers(job: JobContext, { length, sameBuilding, reach }: NearestProtector): boolean {
  return (
    sameBuilding && length !== undefined && reach !== undefined && length <= Math.min(reach, job.longRunLimit)
  );
}

function nearestAlong(
  job: JobContext,
  port: SitePort,
  run: SiteRun,
  at: ReadonlyMap<SitePort, Selected>,
): NearestProtector {
  let target = run.from;
  let length = run.length;
  let there = at.get(target);
  if (!there && target.equipment.kind === 'panel') {
    const toService = servicePlaceRun(target, job.settings.thresholds.servicePlaceRun);
    const service = toService && at.get(toService.from);
    if (toService && service) {
      there = service;
      target = toService.from;
      length = length === undefined || toService.length === undefined ? undefined : length + toService.length;
    }
  }
  const a = target.equipment.building;
  const b = port.equipment.building;
  const sameBuilding = !run.betweenBuildings && run.unplaced.length === 0 && samePlaceName(a, b);
  const unplaced = run.unplaced;
  if (!there) {
    return { tag: target.equipment.tag, length, sameBuilding, unplaced, protected: false, reach: undefined };
  }
  const own: Placement = { ports: [port], subject: port.equipment, reasons: [], strength: 'recommended' };
  const reach = reachOf(job, there, withstandOfPort(job, own, port), length);
  return {
    tag: target.equipment.tag,
    length,
    sameBuilding,
    unplaced,
    protected: true,
    reach: reach === null ? Infinity : reach,
  };
}
