import { hundredths, hundredthsOr } from '../../model/rounding.js';
import { FIELDS, type FieldType } from '../../model/fields.js';
import type { Fact, Stated } from '../../model/fact.js';
import type { JobFacts, RowFacts, RowField } from '../../model/list.js';
import type { Plan, PlannedEquipment, PlannedRun } from '../../model/plan.js';
import type { Site, SiteEquipment, SiteRun } from '../../model/site.js';
import type { JobContext } from '../context/job-context.js';

type PlannedFact = Plan['facts'][number];

const UNITS: { readonly [T in Exclude<FieldType, object>]?: string } = {
  voltage: 'V',
  current: 'A',
  length: 'm',
  lengths: 'm',
  temperature: '°C',
  kilometres: 'km',
};

const UNIT_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(FIELDS).map(([field, { type }]) => [
    field,
    typeof type === 'string' ? (UNITS[type] ?? '') : '',
  ]),
);

/** The place of a field in the order of names. */
const RANK_OF: ReadonlyMap<string, number> = new Map(
  Object.keys(FIELDS)
    .sort()
    .map((field, rank) => [field, rank]),
);

/** V, A, m and degrees are rounded to 0.01, as the contract has it; a count, a density or km isn't. */
function inUnit<T extends string | number | boolean>(value: T, unit: string): T | number {
  return typeof value === 'number' && unit !== '' && unit !== 'km' ? hundredths(value) : value;
}

function plannedFact(field: keyof typeof FIELDS, fact: Fact<unknown>): PlannedFact {
  // One length for all is a figure; several stand as they were typed.
  const value: unknown = Array.isArray(fact.value) && fact.value.length === 1 ? fact.value[0] : fact.value;
  const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  const unit = UNIT_OF.get(field) ?? '';
  return {
    field,
    text: fact.text,
    value: plain ? inUnit(value, unit) : fact.text.trim(),
    unit: plain ? unit : '',
    origin: fact.origin.from === 'rule' ? { from: 'rule', id: fact.origin.id } : fact.origin,
  };
}

function factsOf(facts: Stated<RowFacts> | Stated<JobFacts>, but: ReadonlySet<string>): PlannedFact[] {
  const stated: { readonly [F in string]?: Fact<unknown> } = facts;
  const found: PlannedFact[] = [];
  for (const field in stated) {
    const fact = stated[field];
    if (fact && !but.has(field)) insert(found, plannedFact(field as RowField, fact));
  }
  return found;
}

/** Puts a fact to its place in the order of names: the few facts of a row are sorted so at a fraction of what a sort costs. */
function insert(found: PlannedFact[], fact: PlannedFact): void {
  const rank = RANK_OF.get(fact.field) ?? 0;
  let at = found.length;
  found.push(fact);
  for (; at > 0; at -= 1) {
    const before = found[at - 1];
    if (!before || (RANK_OF.get(before.field) ?? 0) <= rank) break;
    found[at] = before;
  }
  found[at] = fact;
}

const SHOWN_APART: ReadonlySet<string> = new Set([
  'tag',
  'kind',
  'maker',
  'model',
  'description',
  'quantity',
]);

const NONE: ReadonlySet<string> = new Set();

/** Facts of the job as the plan keeps them. */
export function plannedJobFacts(site: Site): PlannedFact[] {
  return factsOf(site.list.facts, NONE);
}

function plannedEquipment(e: SiteEquipment): PlannedEquipment {
  return {
    tag: e.tag,
    kind: e.kind,
    maker: e.facts.maker?.value ?? '',
    model: e.facts.model?.value ?? '',
    description: e.facts.description?.value ?? '',
    place: e.place,
    building: e.building,
    outdoors: e.outdoors.value,
    worthProtecting: e.worthProtecting.value,
    file: e.row.sheet.file,
    line: e.row.line,
    ports: e.ports.map((p) => p.name),
    facts: factsOf(e.facts, SHOWN_APART),
  };
}

function plannedRun(job: JobContext, run: SiteRun): PlannedRun {
  return {
    from: { equipment: run.from.equipment.tag, port: run.from.name },
    to: { equipment: run.to.equipment.tag, port: run.to.name },
    row: run.legs.at(-1)?.row.tag ?? '',
    through: [...run.through],
    length: hundredthsOr(run.length),
    outdoors: run.outdoors,
    betweenBuildings: run.betweenBuildings,
    long: (run.outdoors || run.betweenBuildings) && run.length !== undefined && run.length > job.longRunLimit,
  };
}

/** The site as the plan keeps it, so that documents and `why` need nothing else. */
export function plannedSite(job: JobContext): Plan['site'] {
  return {
    equipments: job.site.equipments.map(plannedEquipment),
    runs: job.site.runs.map((run) => plannedRun(job, run)),
  };
}
