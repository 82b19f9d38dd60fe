import { OUTPUT_MESSAGES } from '../../model/messages/output.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/output.ts. */
export const OUTPUT_WORDS = [
  says(OUTPUT_MESSAGES.held, {
    title: 'Another run holds the output folder',
    message: (p) => `Another run is writing to ${p.out}: ${p.holder}.`,
    found: (p) => p.holder,
    expected: 'an output folder that no other run holds',
    hint: 'Wait until it is done, or give this run another folder with --out.',
  }),
  says(OUTPUT_MESSAGES.notWritten, {
    title: "A file couldn't be written",
    message: (p) => `${p.path} couldn't be written: ${p.because}.`,
    found: (p) => p.because,
    expected: 'a folder that can be written to, on a disk with room',
    hint: 'Make room or give yourself the right to write there, or name another folder with --out.',
  }),
];
