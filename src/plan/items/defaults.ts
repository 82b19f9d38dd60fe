import { reason, type Reason } from '../../model/reason.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import { since, isNec } from '../../model/editions.js';
import type { Kind } from '../../model/words.js';
import { isDerived } from '../../site/fault-bus.js';
import { ultimateSources } from '../../site/inputs.js';
import { servicePlaceRun, unitOf } from '../../site/premises.js';
import { about } from '../../model/message.js';
import type { PlannedSettled } from '../../model/plan.js';
import { isUnstated } from '../../model/settled.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import { sayBonds, sayGroundings, type Say } from './default-groundings.js';
import { noteOtherThanDefault, settledAt, settledUses } from './settled.js';

const NOT_KNOWN = reason('default-value/not-known');
const NO_BACKFEED = reason('default-value/no-backfeed');
const BY_CATEGORY = reason('default-value/by-category');

/** Why a default is to be confirmed: what it decides. */
const DECIDES = {
  codeAndDcLimit: reason('default-decides/code-and-dc-limit'),
  voltageToGround: reason('default-decides/voltage-to-ground'),
  surgeCurrent: reason('default-decides/surge-current'),
  exposure: reason('default-decides/exposure'),
  riskLevel: reason('default-decides/risk-level'),
  worthProtecting: reason('default-decides/worth-protecting'),
  type: reason('default-decides/type'),
  enclosureAndRuns: reason('default-decides/enclosure-and-runs'),
  coldVoltageTable: reason('default-decides/cold-voltage-table'),
  withstand: reason('default-decides/withstand'),
  overcurrent: reason('default-decides/overcurrent'),
  buildingLeftOut: reason('default-decides/building-left-out'),
  buildingAsked: reason('default-decides/building-asked'),
} as const;

/** Defaults to confirm, and those that the company settled. */
interface DefaultsUsed {
  readonly notes: readonly PlacedNote[];
  readonly settled: PlannedSettled[];
}

/**
 * Every default that decides something, to be confirmed: one line for each field and value, with the rows that it stands in for;
 * and what the company settled in their place.
 * @param selected the placements with their parts
 */
export function defaultsUsed(job: JobContext, selected: readonly Selected[]): DefaultsUsed {
  const { site } = job;
  const uses = settledUses(job);
  noteOtherThanDefault(job, uses);
  const { facts } = site.list;
  const notes: PlacedNote[] = [];
  const say: Say = (field, value, of, why, isMade = true) => {
    const rows = unique(job, of).filter((row) => !isMade || !uses.note(settledAt(row, field), [row.tag]));
    const first = rows[0];
    if (!first) return;
    const tags = rows.map((r) => r.tag);
    notes.push(about(PLACE_MESSAGES.defaultsUsed, { field, value, rows: tags, why }, first.tag, field));
  };
  const sayJob = (
    field:
      'occupancy' | 'earthing' | 'lightning_protection' | 'flash_density' | 'surroundings' | 'lv_overhead_km',
    value: string | Reason,
    why: Reason,
  ): void => {
    if (uses.note(facts[field], [])) return;
    notes.push(about(PLACE_MESSAGES.defaultsUsed, { field, value, rows: [], why }, '', field));
  };
  if (isUnstated(facts.basis) && !uses.note(facts.basis, []))
    notes.push(about(PLACE_MESSAGES.basisDefault, { basis: site.basis.value }, '', 'basis'));
  const nec = isNec(site.basis.value);
  const placed: SitePort[] = [];
  const power: SitePort[] = [];
  for (const { placement, requirement } of selected) {
    placed.push(...placement.ports);
    if (requirement.circuit === 'power') power.push(...placement.ports);
  }
  const kinds = new Set<Kind>();
  for (const { kind } of site.equipments) kinds.add(kind);
  const has = (some: readonly Kind[]): boolean => some.some((kind) => kinds.has(kind));
  if (isUnstated(facts.occupancy) && has(['service', 'panel', 'array'])) {
    sayJob('occupancy', site.occupancy.value, DECIDES.codeAndDcLimit);
  }
  if (isUnstated(facts.earthing) && !nec && power.length > 0)
    sayJob('earthing', site.earthing.value, DECIDES.voltageToGround);
  if (isUnstated(facts.lightning_protection) && placed.length > 0) {
    sayJob('lightning_protection', 'none', DECIDES.surgeCurrent);
  }
  // With iec the rules that compare it say so themselves.
  if (!job.exposure.flashDensity && nec && has(['service', 'array'])) {
    sayJob('flash_density', NOT_KNOWN, DECIDES.exposure);
  }
  if (job.exposure.riskDecides) {
    if (isUnstated(facts.surroundings)) sayJob('surroundings', 'rural', DECIDES.riskLevel);
    const km = job.exposure.kmAssumed;
    if (km > 0) {
      const value = reason('default-value/overhead-lines', { length: { value: km, unit: 'km' } });
      sayJob('lv_overhead_km', value, DECIDES.riskLevel);
    }
  }
  say('worth_protecting', 'yes', worthByDefault(selected), DECIDES.worthProtecting);
  say(
    'ahead_of_disconnect',
    'no',
    power
      .filter(
        (p) =>
          nec &&
          (FIRST_DISCONNECTS.has(p.equipment.kind) || isDerived(p)) &&
          isUnstated(p.equipment.facts.ahead_of_disconnect),
      )
      .map((p) => p.equipment),
    DECIDES.type,
  );
  for (const isOut of [true, false]) {
    say(
      'outdoors',
      isOut ? 'yes' : 'no',
      [...placed.map((p) => p.equipment), ...(isOut ? [] : indoorsByDefault(job))].filter(
        (e) => isUnstated(e.facts.outdoors) && e.outdoors.value === isOut,
      ),
      DECIDES.enclosureAndRuns,
    );
  }
  sayOccupancies(job, say);
  if (facts.lowest_temp)
    say('module_technology', 'crystalline', tableUsed(selected), DECIDES.coldVoltageTable);
  sayGroundings(job, selected, power, uses, say);
  sayBonds(selected, nec, uses, say);
  say(
    'impulse_withstand',
    BY_CATEGORY,
    selected
      .filter((s) => s.requirement.withstand?.assumed)
      .flatMap((s) => s.placement.ports.map((p) => p.equipment)),
    DECIDES.withstand,
  );
  const backfeeds: SiteEquipment[] = [];
  for (const { overcurrent } of selected)
    for (const { current } of overcurrent) if (current) backfeeds.push(...current.assumed);
  say('backfeed_a', NO_BACKFEED, backfeeds, DECIDES.overcurrent);
  return { notes, settled: uses.list() };
}

/** Where the first overcurrent device of a service, a building or a separately derived system may stand. */
const FIRST_DISCONNECTS: ReadonlySet<Kind> = new Set<Kind>(['service', 'panel', 'generator']);

/** What the building of a panel holds decides whether 215.18 and 225.42 ask. */
function sayOccupancies(job: JobContext, say: Say): void {
  if (!since(job.site.basis.value, 'nec-2023')) return;
  const panels = job.site.equipments
    .filter((e) => e.kind === 'panel' && !standsAtService(job, e))
    .map((equipment) => ({ equipment, unit: unitOf(job.site, equipment) }));
  const others = panels.filter(({ unit }) => unit.otherBuilding && unit.occupancy.byDefault);
  const why = DECIDES.buildingLeftOut;
  say(
    'building_occupancy',
    'other',
    others.map((p) => p.equipment),
    why,
  );
  const asJob = panels.filter(({ unit }) => unit.occupancyOfJob);
  const value = job.site.occupancy.value;
  const decides = DECIDES.buildingAsked;
  say(
    'building_occupancy',
    value,
    asJob.map((p) => p.equipment),
    decides,
    false,
  );
}

/** A panel at the service has the service's protector, whatever its building holds. */
function standsAtService(job: JobContext, panel: SiteEquipment): boolean {
  const limit = job.settings.thresholds.servicePlaceRun;
  return panel.ports.some((port) => servicePlaceRun(port, limit) !== undefined);
}

/** Ends of runs that would be long ones if they were out of doors. */
function indoorsByDefault(job: JobContext): readonly SiteEquipment[] {
  const ends: SiteEquipment[] = [];
  for (const { from, to, outdoors, betweenBuildings, length } of job.site.runs) {
    if (outdoors || betweenBuildings || length === undefined || length <= job.longRunLimit) continue;
    ends.push(from.equipment, to.equipment);
  }
  return ends;
}

/** So many rows are put in order faster than they are found among all of a site. */
const FEW = 8;

/** Each row once, in natural order of tags, which is that of the site. */
function unique(job: JobContext, rows: readonly SiteEquipment[]): readonly SiteEquipment[] {
  if (rows.length < 2) return rows;
  if (rows.length <= FEW)
    return rows.filter((row, i) => rows.indexOf(row) === i).sort((a, b) => byNaturalOrder(a.tag, b.tag));
  const named = new Set(rows);
  return job.site.equipments.filter((e) => named.has(e));
}

/** Rows whose protectors rest on common practice alone, and that don't say whether they are worth it. */
function worthByDefault(selected: readonly Selected[]): readonly SiteEquipment[] {
  const rows: SiteEquipment[] = [];
  for (const { placement } of selected) {
    if (placement.strength === 'required') continue;
    for (const { equipment } of placement.ports) {
      if (equipment.kind !== 'service' && isUnstated(equipment.facts.worth_protecting)) rows.push(equipment);
    }
  }
  return rows;
}

/** Arrays whose cold voltage rests on the table for crystalline modules, and that state no technology. */
function tableUsed(selected: readonly Selected[]): readonly SiteEquipment[] {
  const arrays: SiteEquipment[] = [];
  for (const { placement, requirement } of selected) {
    if (requirement.circuit !== 'array') continue;
    for (const port of placement.ports) arrays.push(...ultimateSources(port));
  }
  return arrays.filter(
    (a) =>
      a.kind === 'array' &&
      isUnstated(a.facts.module_technology) &&
      !a.facts.voc_coefficient &&
      !a.facts.open_circuit_voltage &&
      a.facts.voc_stc !== undefined,
  );
}
