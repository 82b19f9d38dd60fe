import type { SystemState } from '../model/words.js';

/** States that a crew can't bring about on the day of the work: what is to be seen in them is due without a word of why. */
export const SYSTEM_STATES_UNSEEN: ReadonlySet<SystemState> = new Set([
  'night',
  'turning',
  'still',
  'source off',
  'sun',
  'sun, inverter on',
]);
