import { z } from 'zod';
import { siteIsolationSchema } from './planned-isolation.js';
import { calculationSchema, portRefSchema, protectorSchema } from './planned-protector.js';
import { figure, saidSchema } from './said.js';
import { BASES } from './editions.js';
import { EARTHINGS, KINDS, OCCUPANCIES, SEVERITIES, STANDINGS, WHOS } from './words.js';

const originSchema = z.union([
  z.object({
    from: z.enum(['list', 'library', 'catalogue', 'job-facts', 'equipment-facts']),
    file: z.string(),
    line: z.number(),
    column: z.string(),
  }),
  z.object({
    from: z.literal('answer'),
    by: z.string(),
    date: z.string(),
    file: z.string(),
    line: z.number(),
    column: z.string(),
  }),
  z.object({ from: z.literal('setting'), name: z.string() }),
  z.object({ from: z.literal('default'), field: z.string() }),
  z.object({ from: z.literal('rule'), id: z.string() }),
  z.object({ from: z.literal('published'), source: z.string() }),
]);

/** A stated fact as the plan keeps it: the field, the cell as typed, the value, its unit and where it came from. */
const statedFactSchema = z.object({
  field: z.string(),
  text: z.string(),
  value: z.union([z.string(), z.number(), z.boolean()]),
  unit: z.string(),
  origin: originSchema,
});

/** A clause (or common practice) behind a rule that fired, under the job's own basis. */
const clauseSchema = z.object({
  rule: z.string(),
  /** What it is about, the same in every basis and edition; `` for common practice, and in plans of before. */
  subject: z.string().default(''),
  title: z.string(),
  /** `` for common practice. */
  standard: z.string(),
  edition: z.string(),
  clause: z.string(),
  says: z.string(),
  commonPractice: z.boolean(),
  /** True where the text wasn't at hand: printed only as "see". */
  memory: z.boolean(),
});

/** A default that the company settled: it stood in for what nobody states, and nobody is asked to confirm it. */
const settledSchema = z.object({
  field: z.string(),
  /** As a cell of the list would have it. */
  value: z.string(),
  /** Tags; none: the job itself. */
  rows: z.array(z.string()),
  by: z.string(),
  /** `YYYY-MM-DD`. */
  date: z.string(),
});

const notPlacedSchema = z.object({
  equipment: z.string(),
  port: z.string(),
  rule: z.string(),
  because: saidSchema,
  /** True where a fact that decides isn't known; plans of before don't say. */
  open: z.boolean().default(false),
});

const standingSchema = z.object({
  rule: z.string(),
  standing: z.enum(STANDINGS),
  /** Tags of protectors, or `EQUIPMENT port`; empty: the whole site. */
  at: z.array(z.string()),
  /** Null where it is met. */
  because: saidSchema.nullable(),
});

export const openItemSchema = z.object({
  code: z.string(),
  severity: z.enum(SEVERITIES),
  /** What its sentences are made of. */
  values: z.custom<object>((value) => typeof value === 'object' && value !== null),
  equipment: z.string(),
  file: z.string(),
  line: z.number().int(),
  column: z.string(),
  who: z.enum(WHOS),
  /** The field that it is about; plans of before don't say. */
  field: z.string().optional(),
});

/** What was to be confirmed, and somebody accepted. */
const acceptedSchema = openItemSchema.extend({
  /** ``: nobody is named. */
  by: z.string(),
  date: z.string(),
});

const siteSchema = z.object({
  equipments: z.array(
    z.object({
      tag: z.string(),
      kind: z.enum(KINDS),
      maker: z.string(),
      model: z.string(),
      description: z.string(),
      place: z.string(),
      building: z.string(),
      outdoors: z.boolean(),
      worthProtecting: z.boolean(),
      file: z.string(),
      line: z.number().int(),
      ports: z.array(z.string()),
      facts: z.array(statedFactSchema),
    }),
  ),
  runs: z.array(
    z.object({
      /** The upstream end first (source before converter, service before panel). */
      from: portRefSchema,
      to: portRefSchema,
      /** The row that owns the run. */
      row: z.string(),
      /** Transfer switches that it passes through. */
      through: z.array(z.string()),
      length: figure,
      outdoors: z.boolean(),
      betweenBuildings: z.boolean(),
      long: z.boolean(),
    }),
  ),
});

/** `plan.json`: everything that the documents, `why` and the orders need of one job. */
export const PlanSchema = z.object({
  version: z.literal(2),
  job: z.string(),
  jobName: z.string(),
  address: z.string(),
  basis: z.enum(BASES),
  earthing: z.enum(EARTHINGS),
  occupancy: z.enum(OCCUPANCIES),
  revision: z.string(),
  ownerLanguage: z.string(),
  submittable: z.boolean(),
  /** Job facts as stated (lowest temperature and its source, flash density, lines, lightning protection). */
  facts: z.array(statedFactSchema),
  site: siteSchema,
  protectors: z.array(protectorSchema),
  /** The order in which the site is made dead and live again; plans of before had none. */
  isolation: siteIsolationSchema.default({ parts: [] }),
  notPlaced: z.array(notPlacedSchema),
  openItems: z.array(openItemSchema),
  /** What the company settled once and this plan rests on; plans of before had none. */
  settled: z.array(settledSchema).default([]),
  /** What people accepted of what was to be confirmed; absent: nothing. */
  accepted: z.array(acceptedSchema).optional(),
  orders: z.array(z.object({ part: z.string(), quantity: z.number().int() })),
  clauses: z.array(clauseSchema),
  /** Those of the other rules that `standings` names, and those that a rule names only where it asks for nothing; plans of before had none. */
  otherClauses: z.array(clauseSchema).default([]),
  /** How the job stands to the rules of its basis, in the rulebook's order; plans of before had none. */
  standings: z.array(standingSchema).default([]),
  /** Calculations about the site as a whole (exposure); empty where its facts aren't known. */
  siteCalculations: z.array(calculationSchema),
});

export type Plan = z.infer<typeof PlanSchema>;
export type PlannedProtector = Plan['protectors'][number];
export type PlannedChannel = PlannedProtector['channels'][number];
export type PlannedIndicator = PlannedChannel['indicator'][number];
export type PlannedEquipment = Plan['site']['equipments'][number];
export type PlannedRun = Plan['site']['runs'][number];
export type NotPlaced = Plan['notPlaced'][number];
export type PlannedStanding = Plan['standings'][number];
export type PlannedSettled = Plan['settled'][number];
export type PlannedAccepted = NonNullable<Plan['accepted']>[number];
export type SiteIsolation = Plan['isolation'];
export type PlanItem = Plan['openItems'][number];
export type Calculation = PlannedProtector['calculations'][number];
export type Clause = Plan['clauses'][number];
