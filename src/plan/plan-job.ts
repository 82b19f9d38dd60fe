import type { Catalogue } from '../model/catalogue.js';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { LIMITS } from '../model/limits.js';
import type { JobList } from '../model/list.js';
import type { PlacedNote } from '../model/open-item.js';
import type { NotPlaced, Plan, PlannedProtector } from '../model/plan.js';
import { reason } from '../model/reason.js';
import type { Settings } from '../model/settings.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import type { PlacementReason } from '../rules/placement-facts.js';
import { CRITICAL_LENGTH_RULE, RISK_RULE } from '../rules/rulebook.js';
import { surveySite } from '../site/survey.js';
import { about, note } from '../model/message.js';
import { LIMIT_MESSAGES } from '../model/messages/limits.js';
import { CHOOSE_MESSAGES } from '../model/messages/choose.js';
import { byNaturalOrder } from '../model/natural-order.js';
import { calculation } from './context/calculation.js';
import { defaultsUsed } from './items/defaults.js';
import { earthingConflicts, linesOfCorner, linkedThoughNotSolid } from './items/earthing.js';
import { besideExisting } from './choose/beside-existing.js';
import { existingElsewhere } from './choose/existing.js';
import { exposureOf } from './context/exposure.js';
import { withFitted } from './context/fitted.js';
import type { FittedAt } from './context/fitted-there.js';
import { overcurrentItems } from './items/overcurrent.js';
import { placeItems } from './items/items.js';
import { unfedPorts } from './items/unfed.js';
import { undecidedCycle, undecidedPorts } from './items/undecided.js';
import { portOrder } from './context/order.js';
import { placeOnSite } from './place/place.js';
import { strongest, type Refusal } from './context/verdict.js';
import { plannedJobFacts, plannedSite } from './make/planned-site.js';
import { isolateSite } from './make/isolation.js';
import { makeProtectors } from './make/protectors.js';
import { placeByReach } from './reach/reach-places.js';
import type { Selected } from './choose/select.js';
import { rateAndChoose } from './choose/share.js';
import { citedWhereRefused, citedWhereSelected, clausesOf, otherClausesOf } from './standing/clauses.js';
import { standingsOf } from './standing/standings.js';
import { jobContext, type JobContext } from './context/job-context.js';

/** What a plan is made with beside the list. */
export interface PlanContext {
  /** Undefined: there is no catalogue, so everything is placed and rated without parts. */
  readonly catalogue: Catalogue | undefined;
  readonly settings: Settings;
  /** What hangs where, once the work is done; absent: nothing does yet. */
  readonly fitted?: FittedAt;
}

/**
 * Plans one job: where protectors go, what each must withstand, which part it is, which wire goes where, what its lights
 * show, and what is still open.
 * @param list the rows of one job as they were read
 * @param context catalogue and settings
 * @returns the plan; whatever was missing or contradictory stands in its open items, nothing is thrown for the list's sake
 * @throws Failure where the job is beyond the limits, before anything grows with it
 */
export function planJob(list: JobList, context: PlanContext): Plan {
  const site = surveySite(list, context.settings);
  if (site.limit) throw new Failure(site.limit, EXIT.unreadable);
  const job = jobContext(site, context.settings, exposureOf(site));

  // 1 and 2: place what the site alone decides, merged by port, reasons together.
  const placing = placeOnSite(job);
  // 3 to 5: rate each placement, choose its part, wire its housings; the ports of an inverter share where they may.
  if (placing.placements.length > MOST_PLACEMENTS) throw tooManyHousings(list);
  const placements = withFitted(placing.placements, context.fitted);
  const first = rateAndChoose(job, context.catalogue, placements);
  if (housingsOf(first) > LIMITS.jobHousings) throw tooManyHousings(list);
  // 7 and 8: with the reach of what was chosen, place what reach decides, and rate and choose for that alone, once.
  const byReach = placeByReach(job, first);
  const selected = [
    ...first.map((one) => withReason(one, byReach.joined.get(one))),
    ...rateAndChoose(job, context.catalogue, withFitted(byReach.placements, context.fitted)),
  ];
  if (housingsOf(selected) > LIMITS.jobHousings) throw tooManyHousings(list);
  // 5, 6 and 9: housings, wiring and indicators of each, numbered; every bare port with its reason; the orders.
  const isolated = isolateSite(job, selected);
  const made = makeProtectors(job, selected, isolated);
  const protectors = made.map((one) => one.protector);
  const { bare, silent } = refusalsAtBare(job, selected, [placing.refusals, byReach.refusals]);
  const overruled = { verdicts: placing.placed, refusals: byReach.refusals };
  const { standings, fired } = standingsOf(job, made, bare, overruled);
  const named = new Set(standings.map((s) => s.rule));
  const defaults = defaultsUsed(job, selected);
  const notes: PlacedNote[] = [
    ...site.notes,
    ...placing.notes,
    ...selected.flatMap((one) => [...one.requirement.notes, ...one.notes]),
    ...existingElsewhere(selected),
    ...besideExisting(selected),
    ...overcurrentItems(made),
    ...defaults.notes,
    ...earthingConflicts(site),
    ...unfedPorts(site),
    ...linkedThoughNotSolid(job),
    ...linesOfCorner(job),
    ...undecidedCycle(site.basis.value),
    ...undecidedPorts(site, silent),
    ...(context.catalogue || protectors.length === 0 ? [] : [about(CHOOSE_MESSAGES.noCatalogue, {}, '', '')]),
  ];
  const openItems = placeItems(site, notes);
  const { facts } = list;
  const clauses = clausesOf(site.basis.value, (rule) => fired.has(rule), citedWhereSelected(selected));
  const refused = citedWhereRefused([bare, ...placing.placed.map((verdict) => verdict.refusals)]);
  return {
    version: 2,
    job: list.job,
    jobName: facts.job_name?.value ?? '',
    address: facts.address?.value ?? '',
    basis: site.basis.value,
    earthing: site.earthing.value,
    occupancy: site.occupancy.value,
    revision: facts.revision?.value ?? '',
    ownerLanguage: facts.owner_language?.value ?? context.settings.ownerLanguage,
    submittable: openItems.every((item) => item.severity === 'confirm'),
    facts: plannedJobFacts(site),
    site: plannedSite(job),
    protectors,
    isolation: isolated.isolation,
    notPlaced: bare.map(notPlacedBy),
    openItems,
    settled: defaults.settled,
    orders: ordersOf(protectors),
    clauses,
    otherClauses: otherClausesOf(site.basis.value, { named, fired, clauses, refused }),
    standings: [...standings],
    siteCalculations: siteCalculationsOf(job),
  };
}

/** As many of them share a housing at most: the AC ports of an inverter. */
const MOST_SHARING = 3;
const MOST_PLACEMENTS = MOST_SHARING * LIMITS.jobHousings;

function housingsOf(selected: readonly Selected[]): number {
  return selected.reduce((sum, one) => sum + one.housings.length, 0);
}

function tooManyHousings({ job }: JobList): Failure {
  return new Failure(note(LIMIT_MESSAGES.jobHousings, { job, most: LIMITS.jobHousings }), EXIT.unreadable);
}

function withReason(one: Selected, reason: PlacementReason | undefined): Selected {
  if (!reason) return one;
  const reasons = [...one.placement.reasons, reason];
  return { ...one, placement: { ...one.placement, reasons, strength: strongest(reasons) } };
}

/**
 * Every port without a protector, with what each rule that looked at it said.
 * @returns what was said, port by port, and the ports of which nothing was
 */
function refusalsAtBare(
  job: JobContext,
  selected: readonly Selected[],
  refusals: readonly (readonly Refusal[])[],
): { bare: readonly Refusal[]; silent: readonly SitePort[] } {
  const guarded = new Set<SitePort>();
  for (const { placement } of selected) for (const port of placement.ports) guarded.add(port);
  const byPort = new Map<SitePort, Refusal[]>();
  for (const some of refusals) {
    for (const refusal of some) {
      const mine = byPort.get(refusal.port);
      if (mine) mine.push(refusal);
      else byPort.set(refusal.port, [refusal]);
    }
  }
  const bare: Refusal[] = [];
  const silent: SitePort[] = [];
  for (const equipment of job.site.equipments) {
    const { ports } = equipment;
    for (const port of ports.length < 2 ? ports : [...ports].sort((a, b) => portOrder(a) - portOrder(b))) {
      if (guarded.has(port)) continue;
      const mine = byPort.get(port);
      if (!mine) {
        silent.push(port);
        continue;
      }
      const before = bare.length;
      for (const one of mine) if (one.rule.quiet !== true || one.waived === true) bare.push(one);
      if (bare.length === before) bare.push(...mine);
    }
  }
  return { bare, silent };
}

function notPlacedBy({ port, rule, because, open = false }: Refusal): NotPlaced {
  return { equipment: port.equipment.tag, port: port.name, rule: rule.id, because, open };
}

/** What has to be bought: a part that is there already isn't. */
function ordersOf(protectors: readonly PlannedProtector[]): Plan['orders'] {
  const counts = new Map<string, number>();
  for (const { part, existing } of protectors) {
    if (part !== null && existing === null) counts.set(part, (counts.get(part) ?? 0) + 1);
  }
  return [...counts].sort(([a], [b]) => byNaturalOrder(a, b)).map(([part, quantity]) => ({ part, quantity }));
}

const FLASH_DENSITY = reason('calculation/flash-density');
const RISK_LEVEL = reason('calculation/risk-level');

function siteCalculationsOf(job: JobContext): Plan['siteCalculations'] {
  const { exposure, site } = job;
  const found: Plan['siteCalculations'] = [];
  if (exposure.flashDensity) {
    found.push(mutable(calculation(RISK_RULE.id, FLASH_DENSITY, exposure.flashDensity)));
  }
  if (exposure.riskLevel) {
    found.push(mutable(calculation(RISK_RULE.id, RISK_LEVEL, exposure.riskLevel)));
  }
  for (const { line, to, near } of exposure.lineStrikes) {
    const atLine = reason('calculation/strikes-to-line', { line });
    const nearLine = reason('calculation/strikes-near-line', { line });
    found.push(mutable(calculation(RISK_RULE.id, atLine, to)));
    found.push(mutable(calculation(RISK_RULE.id, nearLine, near)));
  }
  for (const equipment of site.equipments) {
    const hasArray = equipment.ports.some((p) => p.cls === 'dc-in' && p.sources.some(isOfArray));
    const critical = hasArray ? exposure.criticalLengthFor(equipment) : undefined;
    if (critical) {
      const title = reason('calculation/critical-length', { at: equipment.tag });
      found.push(mutable(calculation(CRITICAL_LENGTH_RULE.id, title, critical)));
    }
  }
  return found;
}

/** A turbine's runs have no critical length; what a combiner gathers counts as arrays. */
function isOfArray({ kind }: SiteEquipment): boolean {
  return kind === 'array' || kind === 'combiner';
}

function mutable(one: ReturnType<typeof calculation>): Plan['siteCalculations'][number] {
  return { ...one, steps: [...one.steps] };
}
