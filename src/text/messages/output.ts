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
  link: {
    code: 'output/link',
    severity: 'conflict',
    title: 'A folder of ours is a link',
    message: (p: { path: string }) =>
      `${p.path} is a link, and nothing is written through a link below the output folder.`,
    found: (p) => p.path,
    expected: 'a folder, or nothing there yet',
    hint: 'Take the link away, or name the folder that it leads to with --out.',
    who: 'office',
  } satisfies MessageEntry<{ path: string }>,
  notAFile: {
    code: 'output/not-a-file',
    severity: 'conflict',
    title: 'Something else stands where a file of ours belongs',
    message: (p: { path: string; because: string }) => `${p.path} can't be used: ${p.because}.`,
    found: (p) => p.path,
    expected: 'a file, or nothing there yet',
    hint: 'Take it away: the packs that it tells of are made again.',
    who: 'office',
  } satisfies MessageEntry<{ path: string; because: string }>,
  noAnswer: {
    code: 'output/no-answer',
    severity: 'conflict',
    title: "A disk doesn't answer",
    message: (p: { path: string; seconds: number }) =>
      `The disk with ${p.path} hasn't answered for ${p.seconds} seconds.`,
    found: (p) => p.path,
    expected: 'a disk that reads and writes',
    hint: 'See that the disk or its network is there, and run the same command again.',
    who: 'office',
  } satisfies MessageEntry<{ path: string; seconds: number }>,
};
