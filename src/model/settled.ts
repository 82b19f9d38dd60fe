import { z } from 'zod';
import type { Fact, Stated } from './fact.js';
import { FIELDS, type FieldType } from './fields.js';
import type { JobFacts, JobField, JobList, ListRow, RowFacts, RowField } from './list.js';
import { KINDS, OCCUPANCIES, OUTDOORS_BY_DEFAULT, type Kind, type Occupancy } from './words.js';

/** What a default can be settled for: kinds of which the field has one; `all`: any kind; `job`: it is of the job. */
const SETTLED_FOR = {
  basis: 'job',
  occupancy: 'job',
  earthing: 'job',
  lightning_protection: 'job',
  flash_density: 'job',
  surroundings: 'job',
  lv_overhead_km: 'job',
  worth_protecting: KINDS.filter((kind) => !['service', 'disconnect', 'transfer-switch'].includes(kind)),
  outdoors: 'all',
  ahead_of_disconnect: ['service', 'panel', 'generator'],
  building_occupancy: ['panel', 'load'],
  module_technology: ['array'],
  dc_inputs: ['charge-controller'],
  isolated: ['transformer'],
  system_grounding: 'all',
  dc_grounding: 'all',
  n_pe_link: 'all',
  impulse_withstand: 'all',
} as const satisfies { readonly [F in JobField | RowField]?: 'job' | 'all' | readonly Kind[] };

type SettledField = keyof typeof SETTLED_FOR;

/** The fields of which a company can settle the default. */
const SETTLED_FIELDS = Object.keys(SETTLED_FOR) as readonly SettledField[];

/** Fields that decide what the occupancy is, or before it is known. */
const BEFORE_OCCUPANCY: ReadonlySet<SettledField> = new Set<SettledField>(['basis', 'occupancy']);

/**
 * Row facts that are used as if the row stated them. The others stand in at the very place of their default: what a row has of
 * those may be stated by another row, which goes before.
 */
const AS_STATED: ReadonlySet<SettledField> = new Set<SettledField>([
  'worth_protecting',
  'outdoors',
  'ahead_of_disconnect',
  'module_technology',
  'isolated',
  'impulse_withstand',
]);

const YES_NO: ReadonlyMap<unknown, boolean> = new Map<unknown, boolean>([
  [true, true],
  ['yes', true],
  [false, false],
  ['no', false],
]);

const isPositive = (value: unknown): value is number => typeof value === 'number' && value > 0;
const isFigure = (value: unknown): value is number => typeof value === 'number' && value >= 0;

/**
 * The value of a settled default as the rules take it.
 * @param value as the settings have it; V, km, flashes per km2 and year
 * @returns undefined where it can't be of that field
 */
function valueFor(field: SettledField, value: unknown): string | number | boolean | undefined {
  const type: FieldType = FIELDS[field].type;
  if (typeof type === 'object') return type.words.find((word) => word === value);
  switch (type) {
    case 'yesno':
      return YES_NO.get(value);
    case 'count':
      return isPositive(value) && Number.isInteger(value) && value <= 1000 ? value : undefined;
    case 'voltage':
      return isPositive(value) && value <= 1e6 ? value : undefined;
    case 'text':
      return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
    default:
      return isFigure(value) && value <= 1e6 ? value : undefined;
  }
}

/** What a value of the field looks like in the settings. */
function expectedOf(field: SettledField): string {
  const { type, expected } = FIELDS[field];
  if (type === 'voltage') return 'a number of volts, such as 2500';
  if (type === 'kilometres') return 'a number of km, such as 0.5';
  return type === 'number' ? `a number: ${expected}` : expected;
}

/** Whether the day is on the calendar. */
function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

const entrySchema = z.strictObject({
  /** A field of the equipment list that has a default. */
  field: z.enum(SETTLED_FIELDS, {
    error: `a field that has a default to settle: ${SETTLED_FIELDS.join(', ')}`,
  }),
  /** As a cell of that field has it; figures in V and km. */
  value: z.union([z.string(), z.number(), z.boolean()]),
  /** None: all kinds of which the field has a default. */
  kinds: z.array(z.enum(KINDS, { error: `a kind: ${KINDS.join(', ')}` })).default([]),
  /** None: all. */
  occupancy: z.enum(OCCUPANCIES, { error: OCCUPANCIES.join(', ') }).optional(),
  /** Who settled it, as papers name them. */
  by: z.string().trim().min(1, 'the name of who settled it').max(200),
  /** `YYYY-MM-DD`. */
  date: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, { error: 'a date as YYYY-MM-DD', abort: true })
    .refine(isDay, 'a day of the calendar, as YYYY-MM-DD'),
});

/** A default that a company settled once: where it would decide, its value stands in. */
export type Settled = z.infer<typeof entrySchema>;

/** The list of settled defaults of a settings file. */
export const settledSchema = z.array(entrySchema).superRefine((entries, context) => {
  entries.forEach((entry, i) => {
    const wrong = (key: keyof Settled, message: string): void => {
      context.addIssue({ code: 'custom', path: [i, key], message });
    };
    const { field, kinds, occupancy } = entry;
    if (valueFor(field, entry.value) === undefined)
      wrong('value', `a value of ${field}: ${expectedOf(field)}`);
    const settledFor: 'job' | 'all' | readonly Kind[] = SETTLED_FOR[field];
    if (settledFor === 'job') {
      if (kinds.length > 0) wrong('kinds', `none: ${field} is of the job, not of a kind`);
      if (occupancy !== undefined && BEFORE_OCCUPANCY.has(field))
        wrong('occupancy', `none: ${field} is settled before the occupancy is known`);
    } else if (settledFor !== 'all' && kinds.some((kind) => !settledFor.includes(kind)))
      wrong('kinds', `kinds of which ${field} has a default: ${settledFor.join(', ')}`);
    const other = entries.findIndex((before, j) => j < i && contradicts(before, entry));
    if (other >= 0)
      wrong(
        'value',
        `the value of entry ${other + 1}, which settles ${field} for some of the same kinds and occupancies`,
      );
  });
});

/** Two entries of one rank that differ. */
function contradicts(a: Settled, b: Settled): boolean {
  const share = <T>(x: readonly T[], y: readonly T[]): boolean =>
    x.length === 0 || y.length === 0 || x.some((one) => y.includes(one));
  const of = ({ occupancy }: Settled): readonly Occupancy[] => (occupancy ? [occupancy] : []);
  if (a.field !== b.field || !share(a.kinds, b.kinds) || !share(of(a), of(b))) return false;
  return valueFor(a.field, a.value) !== valueFor(b.field, b.value);
}

const facts = new WeakMap<Settled, Fact<unknown>>();

/** The fact that an entry makes, one and the same each time. */
function factOf(entry: Settled): Fact<unknown> {
  let fact = facts.get(entry);
  if (!fact) {
    const value = valueFor(entry.field, entry.value);
    fact = { value, origin: { from: 'setting', name: 'settled' }, text: textOf(entry) };
    facts.set(entry, fact);
  }
  return fact;
}

/** The value of an entry as a cell of a list would have it. */
export function textOf({ field, value }: Pick<Settled, 'field' | 'value'>): string {
  const known = valueFor(field, value);
  if (typeof known === 'boolean') return known ? 'yes' : 'no';
  const { type } = FIELDS[field];
  const unit = type === 'voltage' ? ' V' : type === 'kilometres' ? ' km' : '';
  return `${known ?? value}${unit}`;
}

/**
 * The entry that a fact was made from; undefined for one that the list or the library states, and for none at all.
 * @param settled the entries of the settings that the job is planned with
 */
export function entryOf(settled: readonly Settled[], fact: Fact<unknown> | undefined): Settled | undefined {
  if (fact?.origin.from !== 'setting') return undefined;
  return settled.find((entry) => factOf(entry) === fact);
}

/** True for a fact that nobody states of the job at hand: it isn't there, or the company settled it for all jobs. */
export function isUnstated(fact: Fact<unknown> | undefined): boolean {
  return fact === undefined || fact.origin.from === 'setting';
}

/** The basis of a job that states none: as settled, else that of the settings. */
export function unstatedBasis<B extends string>(settings: {
  readonly basis: B;
  readonly settled: readonly Settled[];
}): B {
  const entry = settings.settled.find(({ field }) => field === 'basis');
  return entry ? (factOf(entry).value as B) : settings.basis;
}

/**
 * A job with what the company settled for facts of the job that nothing states.
 * @param list the job as it was read; it is left as it is
 * @returns the same list where nothing is settled for it
 */
export function withSettledFacts(list: JobList, settled: readonly Settled[]): JobList {
  if (settled.length === 0) return list;
  let made: Stated<JobFacts> = list.facts;
  const add = (entry: Settled): void => {
    const { field } = entry;
    if (SETTLED_FOR[field] !== 'job' || list.unreadable.has(field)) return;
    if ((made as Partial<Record<SettledField, unknown>>)[field] === undefined)
      made = { ...made, [field]: factOf(entry) };
  };
  for (const entry of settled) if (BEFORE_OCCUPANCY.has(entry.field)) add(entry);
  const occupancy = made.occupancy?.value ?? 'dwelling';
  for (const entry of settled) if (isForOccupancy(entry, occupancy)) add(entry);
  return made === list.facts ? list : { ...list, facts: made };
}

function isForOccupancy(entry: Settled, occupancy: Occupancy): boolean {
  return entry.occupancy === undefined || entry.occupancy === occupancy;
}

/**
 * True where the default of a kind is the other one: who settles what most kinds have doesn't mean arrays that stand indoors, nor a
 * link of N at every panel. Such a kind has to be named.
 */
function isAgainstKind(entry: Settled, kind: Kind): boolean {
  const { value } = factOf(entry);
  if (entry.field === 'outdoors') return value === false && OUTDOORS_BY_DEFAULT.has(kind);
  return entry.field === 'n_pe_link' && value !== (kind === 'service' || kind === 'transformer');
}

/**
 * A row with what the company settled for its kind and for the occupancy of its job, where neither list nor library states it.
 * @param row of a kind; it is left as it is
 * @param occupancy of the job
 */
export function withSettled(row: ListRow, settled: readonly Settled[], occupancy: Occupancy): ListRow {
  const kind = row.facts.kind?.value;
  if (settled.length === 0 || kind === undefined) return row;
  const asStated: { [F in SettledField]?: Fact<unknown> } = {};
  const atDefault: { [F in SettledField]?: Fact<unknown> } = {};
  for (const entry of settled) {
    const { field, kinds } = entry;
    const settledFor: 'job' | 'all' | readonly Kind[] = SETTLED_FOR[field];
    if (settledFor === 'job' || (settledFor !== 'all' && !settledFor.includes(kind))) continue;
    const isMeant = kinds.length > 0 ? kinds.includes(kind) : !isAgainstKind(entry, kind);
    if (!isMeant || !isForOccupancy(entry, occupancy)) continue;
    if (row.facts[field as RowField] !== undefined || row.unreadable.has(field)) continue;
    const mine = AS_STATED.has(field) ? asStated : atDefault;
    mine[field] ??= factOf(entry);
  }
  return {
    ...row,
    facts: { ...row.facts, ...(asStated as Stated<RowFacts>) },
    settled: atDefault as Stated<RowFacts>,
  };
}
