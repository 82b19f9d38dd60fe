import type { MessageEntry } from '../message-kit.js';

/** Messages about the command line itself. */
export const COMMAND_MESSAGES = {
  wrongCommandLine: {
    code: 'command/wrong-command-line',
    severity: 'conflict',
    title: 'The command line is wrong',
    message: (p: { problem: string }) => `The command line is wrong: ${p.problem.replace(/[.\s]+$/, '')}.`,
    expected: 'a command with its lists and options',
    hint: (p) =>
      `Run "shuntbook ${p.command === '' ? '' : `${p.command} `}--help" for what it takes, with an example.`,
    who: 'office',
  } satisfies MessageEntry<{ problem: string; command: string }>,
  givenTwice: {
    code: 'command/given-twice',
    severity: 'conflict',
    title: 'An option is given twice',
    message: (p: { option: string }) => `The option --${p.option} is given twice.`,
    expected: 'each option once',
    hint: 'Leave one of the two out.',
    who: 'office',
  } satisfies MessageEntry<{ option: string }>,
  emptyValue: {
    code: 'command/empty-value',
    severity: 'conflict',
    title: 'An option or a list is empty',
    message: (p: { what: string }) => `${p.what} is empty.`,
    found: () => '',
    expected: 'a name',
    hint: 'Give its name, or leave it out.',
    who: 'office',
  } satisfies MessageEntry<{ what: string }>,
  noSuchDate: {
    code: 'command/no-such-date',
    severity: 'conflict',
    title: 'A date that no calendar has',
    message: (p: { from: string; found: string }) => `${p.from} holds no date that a calendar has.`,
    found: (p) => p.found,
    expected: (p) =>
      p.from === 'SOURCE_DATE_EPOCH'
        ? 'seconds since 1970, a whole number'
        : 'a date as YYYY-MM-DD, such as 2026-03-31',
    hint: 'Correct it, or leave it out for today.',
    who: 'office',
  } satisfies MessageEntry<{ from: string; found: string }>,
  noSuchWorkers: {
    code: 'command/no-such-workers',
    severity: 'conflict',
    title: 'A number of workers that can not be',
    message: () => 'The number of workers must be a whole number from 1 to 64.',
    found: (p: { found: string }) => p.found,
    expected: 'a whole number from 1 to 64',
    hint: 'Correct --workers, or leave it out.',
    who: 'office',
  } satisfies MessageEntry<{ found: string }>,
  fault: {
    code: 'command/fault',
    severity: 'conflict',
    title: 'A fault of the program',
    message: (p: { what: string }) => `shuntbook met a fault of its own: ${p.what.replace(/[.\s]+$/, '')}.`,
    expected: 'no fault',
    hint: 'Run it again with --verbose, and report what it prints.',
    who: 'office',
  } satisfies MessageEntry<{ what: string }>,
} as const;
