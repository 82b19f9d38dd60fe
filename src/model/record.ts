import { z } from 'zod';
import { openItemSchema } from './plan.js';
import { protectorSchema } from './planned-protector.js';
import { OUTCOMES } from './site-form-headings.js';
import { STATES } from './words.js';

export const RECORD_STATES = ['planned', 'record open', 'as built', 'as built with deviations'] as const;
export type RecordState = (typeof RECORD_STATES)[number];

/** What can be held against a plan once the work is done, as `check` of `deviations.csv` names it. */
export const RECORD_CHECKS = [
  'plan',
  'outcome',
  'part',
  'place',
  'lead',
  'fault_current',
  'volts',
  'light',
  'flag',
  'serial',
  'torque',
  'fact',
] as const;
export type RecordCheck = (typeof RECORD_CHECKS)[number];

/** Where a row of a form stood: of a table its line, of a PDF form line 0. */
const originSchema = z.object({
  file: z.string(),
  line: z.number().int(),
  /** What the file calls the column of a heading, where that is another word; of a PDF form its field. */
  columns: z.record(z.string(), z.string()).optional(),
});
export type RecordOrigin = z.infer<typeof originSchema>;

const photoSchema = z.object({
  file: z.string(),
  /** `` where the photo isn't there. */
  sha256: z.string(),
});

const entrySchema = z.object({
  /** Null: not recorded. */
  outcome: z.enum(OUTCOMES).nullable(),
  /** As it was recorded, else of what is fitted the part that was planned; `` not known. */
  partFitted: z.string(),
  /** One a cartridge; `none` where the part has none. */
  serials: z.array(z.object({ serial: z.string(), dateCode: z.string() })),
  serialRemoved: z.array(z.string()),
  place: z.string(),
  /** m, line and ground lead together; null: not recorded. */
  leadLength: z.number().nullable(),
  leadGauge: z.string(),
  device: z.object({
    fitted: z.string(),
    /** V. */
    volts: z.number().nullable(),
    /** A. */
    interrupting: z.number().nullable(),
    position: z.string(),
  }),
  torque: z.string(),
  instrument: z.string(),
  groundPoint: z.string(),
  /** A. */
  faultCurrent: z.number().nullable(),
  photos: z.array(photoSchema),
  change: z.string(),
  reason: z.string(),
  /** `YYYY-MM-DD`; `` not recorded. */
  date: z.string(),
  /** `HH:MM`; `` not recorded. */
  time: z.string(),
  name: z.string(),
  licence: z.string(),
  origin: originSchema,
});
export type RecordEntry = z.infer<typeof entrySchema>;

const readingSchema = z.object({
  tag: z.string(),
  /** Null: between conductors that have no channel. */
  channel: z.number().int().nullable(),
  conductor: z.string(),
  kind: z.enum(['volts', 'light', 'flag']),
  from: z.string(),
  to: z.string(),
  state: z.enum(STATES),
  /** V. */
  low: z.number().nullable(),
  high: z.number().nullable(),
  /** What is in order, joined by `; `; of volts the sign, where it tells something. */
  expected: z.string(),
  /** A number of V with its sign, or a word for how a light looks; `` not read. */
  found: z.string(),
  whyNot: z.string(),
  /** True: it couldn't be seen that day, and is to be looked at later. */
  due: z.boolean(),
  date: z.string(),
  name: z.string(),
  origin: originSchema,
});
export type RecordReading = z.infer<typeof readingSchema>;

const factSchema = z.object({
  assumption: z.string(),
  tag: z.string(),
  /** A field of the contract, or the code of what is assumed. */
  fact: z.string(),
  assumed: z.string(),
  /** `` not verified. */
  found: z.string(),
  by: z.string(),
  date: z.string(),
  photos: z.array(photoSchema),
  origin: originSchema,
});
export type RecordFact = z.infer<typeof factSchema>;

const deviationSchema = z.object({
  protector: z.string(),
  check: z.enum(RECORD_CHECKS),
  by: z.string(),
  date: z.string(),
  reason: z.string(),
  /** Of the authority, where it cleared what nobody else can accept. */
  paper: z.string(),
});
export type RecordDeviation = z.infer<typeof deviationSchema>;

/** `record.json`: what came back from the work on one job, held against its plan. Volts, amperes, metres. */
export const RecordSchema = z.object({
  version: z.literal(1),
  job: z.string(),
  jobName: z.string(),
  address: z.string(),
  /** Fingerprint of the decisions of the plan that it is held against. */
  plan: z.string(),
  state: z.enum(RECORD_STATES),
  /** Files that it was made of, in the order in which they were taken. */
  files: z.array(z.object({ file: z.string(), sha256: z.string(), taken: z.string() })),
  housings: z.array(
    z.object({
      tag: z.string(),
      partPlanned: z.string(),
      maker: z.string(),
      place: z.string(),
      ports: z.array(z.object({ equipment: z.string(), port: z.string() })),
      conductors: z.array(z.string()),
      /** V; voltage protection level with the leads as they are; null: not known. */
      level: z.number().nullable(),
      /** Index of the entry that counts; -1: none. */
      current: z.number().int(),
      /** Earlier ones first. */
      entries: z.array(entrySchema),
    }),
  ),
  /** The first look; those of later days behind it. */
  readings: z.array(readingSchema),
  facts: z.array(factSchema),
  /** What is open or to be confirmed. */
  items: z.array(openItemSchema),
  /** What contradicts the plan and somebody accepted. */
  accepted: z.array(openItemSchema).optional(),
  deviations: z.array(deviationSchema),
  /** Readings that are to be taken, and regular looks; `on` `YYYY-MM-DD`, ``: as soon as it can be seen. */
  due: z.array(
    z.object({
      protector: z.string(),
      kind: z.enum(['volts', 'light', 'flag', 'look']),
      state: z.enum([...STATES, '']),
      on: z.string(),
    }),
  ),
  /** What there is now, planned anew: one a housing, by its tag; those that aren't there are missing. */
  asBuilt: z.object({ protectors: z.array(protectorSchema) }),
});
export type SiteRecord = z.infer<typeof RecordSchema>;
