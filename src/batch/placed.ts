import { z } from 'zod';
import type { Plan } from '../model/plan.js';

/** A protector as the report of a batch lists it and finds it. */
export const placedSchema = z.object({
  tag: z.string(),
  /** `` where no part is chosen. */
  part: z.string(),
  /** `` where the list doesn't say. */
  place: z.string(),
  /** Tags of the equipment that it guards. */
  guards: z.array(z.string()),
});
export type Placed = z.infer<typeof placedSchema>;

/** The protectors of a plan, in its order. */
export function placedIn(plan: Plan): Placed[] {
  return plan.protectors.map(({ tag, part, place, ports }) => ({
    tag,
    part: part ?? '',
    place,
    guards: [...new Set(ports.map(({ equipment }) => equipment))],
  }));
}
