import { message } from '../message.js';

/** Messages about the machine that a run happens on. */
export const MACHINE_MESSAGES = {
  ranOut: message<{ because: string }>('machine/ran-out', 'conflict', 'office'),
  notTold: message<{ stream: string; because: string }>('machine/not-told', 'conflict', 'office'),
} as const;
