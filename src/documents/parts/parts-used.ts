import type { Plan } from '../../model/plan.js';

/** The parts that a job's protectors take, each once, in the order of the schedule. */
export function partsUsed(plan: Plan): string[] {
  return [...new Set(plan.protectors.flatMap((p) => (p.part === null ? [] : [p.part])))];
}
