import { z } from 'zod';
import { CONDUCTORS } from './words.js';

/** A conductor of a protector. */
export const wireSchema = z.object({
  /** The port that it belongs to, on a protector that several share; null: there is one port. */
  port: z.string().nullable(),
  name: z.enum(CONDUCTORS),
  /** True on the second channel of a conductor. */
  doubled: z.boolean(),
});
export type Wire = Readonly<z.infer<typeof wireSchema>>;
