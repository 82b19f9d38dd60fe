import type { Fact } from '../../model/fact.js';
import { FIELDS } from '../../model/fields.js';
import { valueOf, type Field, type JobList, type ListRow, type Sheet } from '../../model/list.js';
import { isNec } from '../../model/editions.js';
import type { Plan, PlannedEquipment } from '../../model/plan.js';
import type { Settings } from '../../model/settings.js';
import { readCell } from '../cell/cells.js';
import { unitOf, type Unit } from '../cell/units.js';

type KeptFact = Plan['facts'][number];
/** Facts by field; whoever reads them knows their types by the field. */
type FactsByField = Record<string, Fact<unknown>>;

/** Fields of whose value the plan keeps the cell alone. */
const KEPT_AS_TYPED: ReadonlySet<unknown> = new Set([
  'lengths',
  'coefficient',
  'connection',
  'control-voltage',
]);

const isField = (field: string): field is Field => Object.hasOwn(FIELDS, field);

/** The unit in a heading, `run_length (ft)`. */
function headingUnit(column: string): Unit | null {
  const bracket = /[([]([^()[\]]{1,30})[)\]]\s*$/.exec(column)?.[1];
  return bracket === undefined ? null : unitOf(bracket);
}

/** What a kept fact's cell says, read once more; undefined: nothing that the field understands. */
function readAnew(field: Field, text: string, column: string, feet: boolean, settings: Settings): unknown {
  const { temperature } = settings.units;
  const reading = readCell(field, text, {
    mark: 'auto',
    unit: headingUnit(column),
    temperature,
    words: new Map(),
  });
  if (reading.is !== 'value') return undefined;
  return feet && reading.feet !== null ? reading.feet : reading.value;
}

function factOf(kept: KeptFact, feet: boolean, settings: Settings): Fact<unknown> | undefined {
  const { field, text, value, origin } = kept;
  if (!isField(field)) return undefined;
  if (!KEPT_AS_TYPED.has(FIELDS[field].type)) return { value, text, origin };
  if (FIELDS[field].type === 'lengths' && typeof value === 'number') return { value: [value], text, origin };
  const column = 'column' in origin ? origin.column : '';
  const anew = readAnew(field, text, column, feet, settings);
  return anew === undefined ? undefined : { value: anew, text, origin };
}

function factsOf(kept: readonly KeptFact[], feet: boolean, settings: Settings): FactsByField {
  const facts: FactsByField = {};
  for (const one of kept) {
    const fact = factOf(one, feet, settings);
    if (fact) facts[one.field] = fact;
  }
  return facts;
}

/** Equipments that came of one row with a quantity: `TAG-1`, `TAG-2` of one line. */
function groupsOf(equipments: readonly PlannedEquipment[]): PlannedEquipment[][] {
  const groups: PlannedEquipment[][] = [];
  for (const one of equipments) {
    const first = groups.at(-1)?.[0];
    const isSame = first?.file === one.file && first.line === one.line && first.kind === one.kind;
    if (isSame) groups.at(-1)?.push(one);
    else groups.push([one]);
  }
  return groups;
}

/**
 * The job as it was read, told from its plan alone: so that it can be planned anew once its lists are gone.
 * Figures are those of the plan, rounded to 0.01; strings of one array that stood on several lines are one.
 * @param plan of the job
 * @param settings of the company: what a bare length means
 */
export function jobOfPlan(plan: Plan, settings: Settings): JobList {
  const { length } = settings.units;
  const feet = length === 'by-basis' ? isNec(plan.basis) : length === 'ft';
  const sheets = new Map<string, Sheet>();
  const sheetOf = (file: string): Sheet => {
    const known = sheets.get(file) ?? { file, headings: {} };
    sheets.set(file, known);
    return known;
  };
  const rows = groupsOf(plan.site.equipments).map((group): ListRow => rowOf(group, feet, settings, sheetOf));
  const first = plan.site.equipments[0];
  return {
    job: plan.job,
    facts: factsOf(plan.facts, feet, settings),
    unreadable: new Set(),
    rows,
    sheet: sheetOf(first?.file ?? ''),
    line: first?.line ?? 0,
    items: [],
    lost: [],
  };
}

function rowOf(
  group: readonly PlannedEquipment[],
  feet: boolean,
  settings: Settings,
  sheetOf: (file: string) => Sheet,
): ListRow {
  const [first] = group;
  if (first === undefined) throw new Error('a row without equipment');
  const { file, line, kind, maker, model, description, tag } = first;
  const origin = { from: 'list', file, line, column: '' } as const;
  const many = group.length > 1;
  const name = many ? tag.replace(/-1$/, '') : tag;
  const said = (value: string | number): Fact<unknown> => ({ value, text: String(value), origin });
  const facts: FactsByField = factsOf(first.facts, feet, settings);
  facts['tag'] = said(name);
  facts['kind'] = said(kind);
  if (many) facts['quantity'] = said(group.length);
  if (maker !== '') facts['maker'] = said(maker);
  if (model !== '') facts['model'] = said(model);
  if (description !== '') facts['description'] = said(description);
  return { sheet: sheetOf(file), line, facts, unreadable: new Set() };
}

/**
 * A job with one fact otherwise than it was read.
 * @param tag of the equipment; `` for the job itself
 * @param text as a cell of the list would have it
 * @returns undefined where the field doesn't understand it, or no such row is there
 */
export function withFact(
  job: JobList,
  {
    tag,
    field,
    text,
    file,
    line,
  }: {
    readonly tag: string;
    readonly field: string;
    readonly text: string;
    readonly file: string;
    readonly line: number;
  },
  settings: Settings,
): JobList | undefined {
  if (!isField(field)) return undefined;
  const basis = valueOf(job.facts.basis) ?? settings.basis;
  const { length } = settings.units;
  const value = readAnew(field, text, '', length === 'by-basis' ? isNec(basis) : length === 'ft', settings);
  if (value === undefined) return undefined;
  const fact: Fact<unknown> = { value, text, origin: { from: 'list', file, line, column: 'found' } };
  if (FIELDS[field].of === 'job') return { ...job, facts: { ...job.facts, [field]: fact } };
  const rows = job.rows.map((row): ListRow => {
    const own = valueOf(row.facts.tag) ?? '';
    if (own !== tag && !(tag.startsWith(`${own}-`) && (valueOf(row.facts.quantity) ?? 1) > 1)) return row;
    return { ...row, facts: { ...row.facts, [field]: fact } };
  });
  return rows.some((row, i) => row !== job.rows[i]) ? { ...job, rows } : undefined;
}
