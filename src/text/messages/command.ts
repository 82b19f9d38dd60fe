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
  noSuchRule: {
    code: 'command/no-such-rule',
    severity: 'conflict',
    title: 'No rule has that id',
    message: (p: { id: string; near: string }) => `No rule is called ${p.id}.`,
    found: (p) => p.id,
    expected: (p) => (p.near === '' ? 'the id of a rule' : `the id of a rule, such as ${p.near}`),
    hint: 'Run "shuntbook rules" for all of them.',
    who: 'office',
  } satisfies MessageEntry<{ id: string; near: string }>,
  noSuchPlan: {
    code: 'command/no-such-plan',
    severity: 'conflict',
    title: 'No plan can be read there',
    message: (p: { path: string; because: string }) => `No plan can be read from ${p.path}: ${p.because}.`,
    found: (p) => p.path,
    expected: "a job's folder, a plan.json, or a list of one job",
    hint: 'Name the folder of a job in your --out, or run "shuntbook plan" first.',
    who: 'office',
  } satisfies MessageEntry<{ path: string; because: string }>,
  whichJob: {
    code: 'command/which-job',
    severity: 'conflict',
    title: 'A command needs one job of a list of several',
    message: (p: { path: string; jobs: readonly string[] }) =>
      `One job of ${p.path} is asked for; it has ${p.jobs.slice(0, 8).join(', ')}${p.jobs.length > 8 ? ' and more' : ''}.`,
    expected: '--job with one of them',
    hint: (p) => `Add --job ${p.jobs[0] ?? 'JOB'}.`,
    who: 'office',
  } satisfies MessageEntry<{ path: string; jobs: readonly string[] }>,
  noSuchPort: {
    code: 'command/no-such-port',
    severity: 'conflict',
    title: 'The plan has no such equipment, port or protector',
    message: (p: { wanted: string; job: string; known: string }) =>
      `The plan of ${p.job} has no ${p.wanted}.`,
    found: (p) => p.wanted,
    expected: (p) => `TAG or TAG:PORT; it has ${p.known}`,
    hint: 'Correct it, or leave it out for all of the job.',
    who: 'office',
  } satisfies MessageEntry<{ wanted: string; job: string; known: string }>,
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
