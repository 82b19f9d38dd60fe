import { z } from 'zod';
import { STATES } from './words.js';

export const RECORD_STATES = ['planned', 'record open', 'as built', 'as built with deviations'] as const;
export type RecordState = (typeof RECORD_STATES)[number];

const entrySchema = z.object({
  outcome: z.enum(['fitted', 'moved', 'not fitted', 'kept', 'replaced', 'removed']),
  partFitted: z.string(),
  serials: z.array(z.object({ serial: z.string(), dateCode: z.string() })),
  serialRemoved: z.array(z.string()),
  place: z.string(),
  leadLength: z.number().nullable(),
  photos: z.array(z.object({ file: z.string(), sha256: z.string() })),
  reason: z.string(),
  date: z.string(),
  time: z.string(),
  name: z.string(),
});

export const RecordSchema = z.object({
  version: z.literal(1),
  job: z.string(),
  jobName: z.string(),
  address: z.string(),
  plan: z.string(),
  state: z.enum(RECORD_STATES),
  housings: z.array(
    z.object({
      tag: z.string(),
      maker: z.string(),
      place: z.string(),
      ports: z.array(z.object({ equipment: z.string(), port: z.string() })),
      conductors: z.array(z.string()),
      level: z.number().nullable(),
      entries: z.array(entrySchema),
    }),
  ),
  readings: z.array(
    z.object({
      tag: z.string(),
      channel: z.number(),
      conductor: z.string(),
      kind: z.enum(['volts', 'light', 'flag']),
      state: z.enum(STATES),
      expected: z.string(),
      found: z.string(),
      due: z.boolean(),
      date: z.string(),
    }),
  ),
});
export type SiteRecord = z.infer<typeof RecordSchema>;
