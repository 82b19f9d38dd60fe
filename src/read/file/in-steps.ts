import { setImmediate as pause } from 'node:timers/promises';

/** Work that can be left between its steps. */
export type InSteps<T> = Generator<undefined, T, undefined>;

/** Characters or bytes that are walked through between two pauses: some hundredths of a second. */
export const STEP = 1_000_000;
/** Rows that are read between two pauses. */
export const ROWS_A_STEP = 1000;

/** Carries out work at one go. */
export function atOneGo<T>(work: InSteps<T>): T {
  let step = work.next();
  while (step.done !== true) step = work.next();
  return step.value;
}

/**
 * Carries out work with a pause after each step, so that signals are heard meanwhile.
 * @param signal ends the work at its next pause; undefined: nothing does
 * @throws the signal's reason where it ended the work
 */
export async function withPauses<T>(work: InSteps<T>, signal?: AbortSignal): Promise<T> {
  let step = work.next();
  while (step.done !== true) {
    await pause();
    signal?.throwIfAborted();
    step = work.next();
  }
  return step.value;
}
