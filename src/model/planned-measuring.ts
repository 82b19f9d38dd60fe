import { z } from 'zod';
import { figure, saidSchema } from './said.js';
import { wireSchema } from './wire.js';

/** Two points that the probes are held to. */
const probesSchema = z.object({
  wire: wireSchema,
  /** Null: ground. */
  to: wireSchema.nullable(),
  /** Of direct current: how `wire` stands to `to`; null: no sign tells anything. */
  sign: z.enum(['+', '-']).nullable(),
});

/** Readings of one band, with the sources on, before anything is connected. */
const bandSchema = z.object({
  between: z.array(probesSchema),
  /** Null: whether it is alternating or direct isn't known. */
  current: z.enum(['ac', 'dc']).nullable(),
  /** V; below it: stop. Null: no low figure, or not known. */
  low: figure,
  /** V; above it: stop. Never above what the plan expects at most; null: not known. */
  high: figure,
  /** What is read, in which state. */
  reads: saidSchema,
  below: saidSchema.nullable(),
  above: saidSchema.nullable(),
  /** How a ground fault shows. */
  fault: saidSchema.nullable(),
  /** When a reading outside is written down, and due again. */
  due: saidSchema.nullable(),
});

const meterSchema = z.object({
  category: z.enum(['CAT III', 'CAT IV']),
  /** V; the least that it is rated for; null: not known. */
  volts: figure,
  current: z.enum(['ac', 'dc']).nullable(),
  says: saidSchema,
});

const clothingSchema = z.object({
  /** A; null: not known. */
  faultCurrent: figure,
  /** True where it is settled first of all. */
  first: z.boolean(),
  says: saidSchema,
});

/** What is measured at one housing, with what, and in what clothing. */
export const measuringSchema = z.object({
  /** What is on, what stays on and what is off; or that nothing is opened. Null in plans of before. */
  state: saidSchema.nullable().default(null),
  bands: z.array(bandSchema),
  /** Null in plans of before. */
  meter: meterSchema.nullable(),
  clothing: clothingSchema.nullable(),
});
export type PlannedBand = z.infer<typeof bandSchema>;
export type Probes = z.infer<typeof probesSchema>;
