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
    title: 'A file couldn’t be written',
    message: (p) => `${p.path} couldn’t be written: ${p.because}.`,
    found: (p) => p.because,
    expected: 'a folder that can be written to, on a disk with room',
    hint: 'Make room or give yourself the right to write there, or name another folder with --out.',
  }),
  says(OUTPUT_MESSAGES.link, {
    title: 'A folder of ours is a link',
    message: (p) => `${p.path} is a link, and nothing is written through a link below the output folder.`,
    found: (p) => p.path,
    expected: 'a folder, or nothing there yet',
    hint: 'Take the link away, or name the folder that it leads to with --out.',
  }),
  says(OUTPUT_MESSAGES.notAFile, {
    title: 'Something else stands where a file of ours belongs',
    message: (p) => `${p.path} can’t be used: ${p.because}.`,
    found: (p) => p.path,
    expected: 'a file, or nothing there yet',
    hint: 'Take it away: the packs that it tells of are made again.',
  }),
  says(OUTPUT_MESSAGES.noAnswer, {
    title: 'A disk doesn’t answer',
    message: (p) => `The disk with ${p.path} hasn’t answered for ${p.seconds} seconds.`,
    found: (p) => p.path,
    expected: 'a disk that reads and writes',
    hint: 'See that the disk or its network is there, and run the same command again.',
  }),
];
