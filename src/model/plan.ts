import { z } from 'zod';
import { SURENESSES } from './fact.js';
import {
  BASES,
  EARTHINGS,
  INDICATOR_CAUSES,
  KINDS,
  OCCUPANCIES,
  SEVERITIES,
  SHOWS,
  STANDINGS,
  STATES,
  STRENGTHS,
  WHOS,
} from './words.js';

/** Figures: V, A, m, C, rounded to 0.01 where nothing else is said; null is "unknown". */
const figure = z.number().nullable();

const originSchema = z.union([
  z.object({
    from: z.enum(['list', 'library', 'catalogue', 'job-facts']),
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

const stepSchema = z.object({
  symbol: z.string(),
  says: z.string(),
  formula: z.string(),
  substituted: z.string(),
  value: z.number(),
  unit: z.string(),
  sure: z.enum(SURENESSES),
  source: z.string(),
});

/** One calculation of a protector: what it computes, by which rule, and its steps; the last step is the result. */
const calculationSchema = z.object({
  rule: z.string(),
  title: z.string(),
  steps: z.array(stepSchema),
});

/** A clause (or common practice) behind a rule that fired, under the job's own basis. */
const clauseSchema = z.object({
  rule: z.string(),
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

const portRefSchema = z.object({ equipment: z.string(), port: z.string() });

const indicatorSchema = z.object({
  state: z.enum(STATES),
  shows: z.enum(SHOWS),
  because: z.string(),
  cause: z.enum(INDICATOR_CAUSES),
});

const channelSchema = z.object({
  channel: z.number().int(),
  /** `positive`, `negative`, `L1`, `L2`, `L3`, `N`; ` (doubled)` after it; the port before it on a shared protector. */
  conductor: z.string(),
  /** `ground`, or `N` in a 3+1 part. */
  to: z.string(),
  /** Colour of the conductor by the settings, a word. */
  colour: z.string(),
  indicator: z.array(indicatorSchema),
});

/** What to measure at a conductor with the sources on, before connecting: the range to expect, and the figure at which to stop. */
const measurementSchema = z.object({
  conductor: z.string(),
  /** Null: whether it is alternating or direct isn't known. */
  current: z.enum(['ac', 'dc']).nullable(),
  /** Where to measure to: `ground`, or `N` in a 3+1 part. */
  to: z.string().default('ground'),
  /** V; what a sound system shows in the stated condition. */
  expected: z.string(),
  /**
   * V; at or above this figure: stop, don't connect. The MCOV of the channel (without a part the MCOV required), or what the
   * converter on it bears, where that is less. Null: unknown, or in words.
   */
  stopAt: figure,
  /** What else to stop at, in words: of a grounded conductor any steady voltage; `` nothing. */
  stopWords: z.string().default(''),
});

const wiringSchema = z.object({
  groundTo: z.string(),
  sourcesToOpen: z.array(z.string()),
  fedFromTwoSupplies: z.boolean(),
  measurements: z.array(measurementSchema),
  /** m; longest total lead length (IEC 60364-5-53 cl. 534.4.8), and what a further 0.1 m adds at most, as far as 1 m, in V. */
  leadLengthLimit: z.number(),
  leadLengthPlanned: z.number(),
  voltsPerTenCentimetres: figure,
  smallestLead: z.string(),
  leadGauge: z.string(),
  overcurrent: z.string(),
  torque: z.string(),
  wireRange: z.string(),
  notes: z.array(z.string()),
  /** Conductors that have no channel, and why. */
  unprotected: z.array(z.object({ conductor: z.string(), because: z.string() })),
});

const protectorSchema = z.object({
  tag: z.string(),
  part: z.string().nullable(),
  /** What the list says is there already; null: new. */
  existing: z.string().nullable(),
  /** True where the list's `protector` chose the part. */
  byHand: z.boolean(),
  serial: z.string(),
  /** Which housing of how many of its placement. */
  housing: z.object({ number: z.number().int(), of: z.number().int() }),
  place: z.string(),
  building: z.string(),
  outdoors: z.boolean(),
  /** One line: what it guards. */
  protects: z.string(),
  /** Where in or at the equipment it sits (nearest to the incoming feed, at the input terminals...). */
  position: z.string(),
  ports: z.array(portRefSchema),
  strength: z.enum(STRENGTHS),
  reasons: z.array(
    z.object({
      rule: z.string(),
      strength: z.enum(STRENGTHS),
      because: z.string(),
      sources: z.array(z.string()),
    }),
  ),
  /** AC system (`120/240`), `three-phase` of a turbine, or `dc`. */
  system: z.string(),
  grounding: z.string(),
  required: z.object({
    current: z.enum(['dc', 'ac']).nullable(),
    mcov: figure,
    in: figure,
    sccr: figure,
    /** UL types that may stand here; empty: not asked. */
    types: z.array(z.number()),
    /** NEMA types that may stand here; empty: indoors, not asked. */
    enclosures: z.array(z.string()),
    /** Number of conductors that must have a channel. */
    conductors: z.number().int(),
    listedFor: z.string().nullable(),
  }),
  figures: z
    .object({
      mcov: figure,
      up: figure,
      upBasis: z.string().nullable(),
      leadVoltage: figure,
      leadVoltageAtHalfMetre: figure,
      leadVoltageAtOneMetre: figure,
      impulseWithstand: figure,
      /** True where the withstand is assumed by overvoltage category. */
      withstandAssumed: z.boolean(),
      /** V; withstand less Up less lead voltage. */
      margin: figure,
      in: figure,
      imax: figure,
      sccr: figure,
      reach: figure,
    })
    .nullable(),
  /** The chosen part as the catalogue has it; null: no part. */
  partDetails: z
    .object({
      maker: z.string(),
      description: z.string(),
      channels: z.number().int(),
      type: z.number().nullable(),
      iecClass: z.string().nullable(),
      connection: z.string(),
      enclosure: z.string(),
      listing: z.string(),
      listingFile: z.string(),
      indicator: z.string().nullable(),
      indicatorColor: z.string(),
      indicatorMinVoltage: figure,
      /** A; four significant digits. */
      leakage: figure,
    })
    .nullable(),
  channels: z.array(channelSchema),
  wiring: wiringSchema,
  calculations: z.array(calculationSchema),
  rejected: z.array(z.object({ part: z.string(), rule: z.string(), because: z.string() })),
});

const notPlacedSchema = z.object({
  equipment: z.string(),
  port: z.string(),
  rule: z.string(),
  because: z.string(),
  /** True where a fact that decides isn't known; plans of before don't say. */
  open: z.boolean().default(false),
});

const standingSchema = z.object({
  rule: z.string(),
  standing: z.enum(STANDINGS),
  /** Tags of protectors, or `EQUIPMENT port`; empty: the whole site. */
  at: z.array(z.string()),
  /** `` where it is met. */
  because: z.string(),
});

const openItemSchema = z.object({
  code: z.string(),
  severity: z.enum(SEVERITIES),
  message: z.string(),
  equipment: z.string(),
  file: z.string(),
  line: z.number().int(),
  column: z.string(),
  found: z.string(),
  expected: z.string(),
  hint: z.string(),
  who: z.enum(WHOS),
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
  version: z.literal(1),
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
  notPlaced: z.array(notPlacedSchema),
  openItems: z.array(openItemSchema),
  orders: z.array(z.object({ part: z.string(), quantity: z.number().int() })),
  clauses: z.array(clauseSchema),
  /** Those of the other rules that `standings` names; plans of before had none. */
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
export type PlanItem = Plan['openItems'][number];
export type Calculation = PlannedProtector['calculations'][number];
export type Clause = Plan['clauses'][number];
