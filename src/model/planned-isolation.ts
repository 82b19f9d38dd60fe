import { z } from 'zod';
import { saidSchema } from './said.js';

/** One thing to do, and the equipment that it is done to; none: everything. */
const actSchema = z.object({ does: saidSchema, tags: z.array(z.string()) });

const stepSchema = z.object({ number: z.number().int(), acts: z.array(actSchema) });

/** How a part of the site that hangs together is made dead, and live again. */
const partSchema = z.object({
  number: z.number().int(),
  /** Equipment of which the list doesn't say what feeds it: find the sources before you start. */
  unknown: z.array(z.string()),
  /** By their number, in order; those that the part has. */
  steps: z.array(stepSchema),
  /** From the highest number down. */
  back: z.array(stepSchema),
});

/** The isolation of a site: one part, or several that no cable of power joins. */
export const siteIsolationSchema = z.object({ parts: z.array(partSchema) });

/** Which of those steps one housing needs, and what stays live there after them. */
export const boxIsolationSchema = z.object({
  /** Null: the list joins it to nothing. */
  part: z.number().int().nullable(),
  steps: z.array(z.number().int()),
  /** `here`: true where the protector's own conductors stay live. */
  live: z.array(z.object({ what: saidSchema, who: saidSchema, here: z.boolean() })),
  /** True where not all that can feed it is on the list. */
  unknown: z.boolean(),
});
export type IsolationStep = z.infer<typeof stepSchema>;
export type IsolationPart = z.infer<typeof partSchema>;
export type BoxIsolation = z.infer<typeof boxIsolationSchema>;
