import type { MessageEntry } from '../message-kit.js';

/** Messages of writing: the output folder, its lock, its disk. */
export const OUTPUT_MESSAGES = {
  held: {
    code: 'output/held',
    severity: 'conflict',
    title: 'Another run holds the output folder',
    message: (p: { out: string; holder: string }) => `Another run is writing to ${p.out}: ${p.holder}.`,
    found: (p) => p.holder,
    expected: 'an output folder that no other run holds',
    hint: 'Wait until it is done, or give this run another folder with --out.',
    who: 'office',
  } satisfies MessageEntry<{ out: string; holder: string }>,
  notWritten: {
    code: 'output/not-written',
    severity: 'conflict',
    title: "A file couldn't be written",
    message: (p: { path: string; because: string }) => `${p.path} couldn't be written: ${p.because}.`,
    found: (p) => p.because,
    expected: 'a folder that can be written to, on a disk with room',
    hint: 'Make room or give yourself the right to write there, or name another folder with --out.',
    who: 'office',
  } satisfies MessageEntry<{ path: string; because: string }>,
};
