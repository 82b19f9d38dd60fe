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

const SHOWN_APART: ReadonlySet<string> = new Set([
  'tag',
  'kind',
  'maker',
  'model',
  'description',
  'quantity',
]);

/** A field as it is printed. */
interface PrintedField {
  readonly unit: string;
  /** Its place in the order of names. */
  readonly rank: number;
  /** True where an equipment of the plan has it by itself. */
  readonly apart: boolean;
}

const PRINTED: ReadonlyMap<string, PrintedField> = new Map(
  Object.entries(FIELDS)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([field, { type }], rank) => {
      const unit = typeof type === 'string' ? (UNITS[type] ?? '') : '';
      return [field, { unit, rank, apart: SHOWN_APART.has(field) }];
    }),
);
const UNKNOWN_FIELD: PrintedField = { unit: '', rank: 0, apart: false };

/** V, A, m and degrees are rounded to 0.01, as the contract has it; a count, a density or km isn't. */
function inUnit<T extends string | number | boolean>(value: T, unit: string): T | number {
  return typeof value === 'number' && unit !== '' && unit !== 'km' ? hundredths(value) : value;
}

function plannedFact(field: keyof typeof FIELDS, fact: Fact<unknown>, unit: string): PlannedFact {
  // One length for all is a figure; several stand as they were typed.
  const value: unknown = Array.isArray(fact.value) && fact.value.length === 1 ? fact.value[0] : fact.value;
  const plain = typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return {
    field,
    text: fact.text,
    value: plain ? inUnit(value, unit) : fact.text.trim(),
    unit: plain ? unit : '',
    origin: fact.origin.from === 'rule' ? { from: 'rule', id: fact.origin.id } : fact.origin,
  };
}

/** @param all also what an equipment of the plan has by itself */
function factsOf(facts: Stated<RowFacts> | Stated<JobFacts>, all: boolean): PlannedFact[] {
  const stated: { readonly [F in string]?: Fact<unknown> } = facts;
  const found: PlannedFact[] = [];
  const ranks: number[] = [];
  for (const field in stated) {
    const fact = stated[field];
    if (!fact) continue;
    const { unit, rank, apart } = PRINTED.get(field) ?? UNKNOWN_FIELD;
    if (all || !apart) insert(found, ranks, plannedFact(field as RowField, fact, unit), rank);
  }
  return found;
}

/** Puts a fact to its place in the order of names: the few facts of a row are sorted so at a fraction of what a sort costs. */
function insert(found: PlannedFact[], ranks: number[], fact: PlannedFact, rank: number): void {
  let at = found.length;
  found.push(fact);
  ranks.push(rank);
  for (; at > 0; at -= 1) {
    const before = found[at - 1];
    const its = ranks[at - 1];
    if (!before || its === undefined || its <= rank) break;
    found[at] = before;
    ranks[at] = its;
  }
  found[at] = fact;
  ranks[at] = rank;
}

/** Facts of the job as the plan keeps them. */
export function plannedJobFacts(site: Site): PlannedFact[] {
  return factsOf(site.list.facts, true);
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
    facts: factsOf(e.facts, false),
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
