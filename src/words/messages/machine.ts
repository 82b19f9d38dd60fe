import { MACHINE_MESSAGES } from '../../model/messages/machine.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/machine.ts. */
export const MACHINE_WORDS = [
  says(MACHINE_MESSAGES.ranOut, {
    title: 'The machine ran out of something that every run needs',
    message: (p) => `The machine can’t go on: ${p.because}.`,
    found: (p) => p.because,
    expected: 'at least 1024 open files (ulimit -n) and some hundred MB of memory',
    hint: 'Raise the limit, or end other programs, and run the same command again.',
  }),
  says(MACHINE_MESSAGES.notTold, {
    title: 'What a command tells could not be written',
    message: (p) => `${p.stream} can’t be written to: ${p.because}.`,
    found: (p) => p.because,
    expected: 'a screen, a file or a program that takes what is told',
    hint: 'Make room there; files in --out are written all the same.',
  }),
];
