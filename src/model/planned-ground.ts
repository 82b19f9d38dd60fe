import { z } from 'zod';
import { saidSchema } from './said.js';

/** A ground terminal that is fitted in an enclosure without a ground bar. */
export const groundTerminalSchema = z.object({
  fit: saidSchema,
  /** What lands on it, in this order. */
  lands: z.array(saidSchema),
  /** What never does alone. */
  never: saidSchema,
  /** What the crew is asked to look at. */
  ask: saidSchema,
});
