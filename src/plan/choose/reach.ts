import { reachFigures } from '../../electrical/reach.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';

/**
 * How far along the cable a level with its leads covers.
 * @param up V; the level
 * @param leads V; the voltage of its leads
 * @param withstand V, of the equipment that is to be covered
 * @param run m, of the run that it is asked for; undefined: none, or not stated
 * @returns m; null: not limited within its run; undefined: not known
 */
export function reachWith(
  job: JobContext,
  up: number,
  leads: number,
  withstand: number | undefined,
  run: number | undefined,
): number | null | undefined {
  if (withstand === undefined) return undefined;
  const t = job.settings.thresholds;
  const reach = reachFigures({
    up,
    leads,
    withstand,
    slope: t.reachSlope,
    leastReach: t.leastReach,
    limit: job.longRunLimit,
  });
  if (reach.kind !== 'unlimited') return reach.distance;
  return run !== undefined && run > job.longRunLimit ? job.longRunLimit : null;
}

/** The longest run at a placement's ports, m; undefined where none is stated. */
export function longestRun(placement: Placement): number | undefined {
  let longest: number | undefined;
  for (const port of placement.ports) {
    for (const run of port.runs) {
      if (run.length !== undefined) longest = Math.max(longest ?? 0, run.length);
    }
  }
  return longest;
}
