import { message } from '../message.js';

/** Messages of writing: the output folder, its lock, its disk. */
export const OUTPUT_MESSAGES = {
  held: message<{ out: string; holder: string }>('output/held', 'conflict', 'office'),
  notWritten: message<{ path: string; because: string }>('output/not-written', 'conflict', 'office'),
  link: message<{ path: string }>('output/link', 'conflict', 'office'),
  notAFile: message<{ path: string; because: string }>('output/not-a-file', 'conflict', 'office'),
  noAnswer: message<{ path: string; seconds: number }>('output/no-answer', 'conflict', 'office'),
} as const;
