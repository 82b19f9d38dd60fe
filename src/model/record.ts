import { z } from 'zod';
import { openItemSchema } from './plan.js';
import { protectorSchema } from './planned-protector.js';

export const RECORD_STATES = ['planned', 'record open', 'as built', 'as built with deviations'] as const;
export type RecordState = (typeof RECORD_STATES)[number];

export const OUTCOMES = ['fitted', 'moved', 'not fitted', 'kept', 'replaced', 'removed'] as const;

const photoSchema = z.object({ file: z.string(), sha256: z.string() });

const entrySchema = z.object({
  outcome: z.enum(OUTCOMES).nullable(),
  partFitted: z.string(),
  serials: z.array(z.object({ serial: z.string(), dateCode: z.string() })),
  serialRemoved: z.string(),
  place: z.string(),
  /** m. */
  leadLength: z.number().nullable(),
  leadGauge: z.string(),
  device: z.object({
    fitted: z.string(),
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
  date: z.string(),
  time: z.string(),
  name: z.string(),
  licence: z.string(),
});

const readingSchema = z.object({
  tag: z.string(),
  channel: z.number().nullable(),
  conductor: z.string(),
  kind: z.enum(['volts', 'light', 'flag']),
  from: z.string(),
  to: z.string(),
  state: z.string(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  expected: z.string(),
  found: z.string(),
  whyNot: z.string(),
  due: z.boolean(),
  date: z.string(),
  name: z.string(),
});

export const RecordSchema = z.object({
  version: z.literal(1),
  job: z.string(),
  plan: z.string(),
  state: z.enum(RECORD_STATES),
  housings: z.array(z.object({ tag: z.string(), current: z.number().int(), entries: z.array(entrySchema) })),
  readings: z.array(readingSchema),
  facts: z.array(
    z.object({
      assumption: z.string(),
      tag: z.string(),
      fact: z.string(),
      assumed: z.string(),
      found: z.string(),
      by: z.string(),
      date: z.string(),
    }),
  ),
  items: z.array(openItemSchema),
  deviations: z.array(
    z.object({
      protector: z.string(),
      check: z.string(),
      by: z.string(),
      date: z.string(),
      reason: z.string(),
      paper: z.string(),
    }),
  ),
  due: z.array(z.object({ protector: z.string(), kind: z.string(), state: z.string(), on: z.string() })),
  asBuilt: z.object({ protectors: z.array(protectorSchema) }),
});
export type SiteRecord = z.infer<typeof RecordSchema>;
