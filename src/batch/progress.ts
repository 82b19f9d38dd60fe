import type { Progress } from './batch-options.js';
import type { MadeJob } from './make-job.js';

/**
 * Follows a batch.
 * @param all number of jobs
 * @param now ms of any clock
 * @returns a function that takes each job as it is finished and gives how far the batch is
 */
export function progressOf(all: number, now: () => number): (made: MadeJob) => Progress {
  const begun = now();
  let done = 0;
  let worked = 0;
  return ({ line }) => {
    done += 1;
    // Unchanged packs take no time, and come in any order: they say nothing of how long the rest will take.
    if (line.done !== 'unchanged') worked += 1;
    const seconds = (now() - begun) / 1000;
    const secondsLeft = worked === 0 ? null : (seconds / worked) * (all - done);
    return { done, all, job: line.job, status: line.status, did: line.done, seconds, secondsLeft };
  };
}
