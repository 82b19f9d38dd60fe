import { COMMAND_MESSAGES } from '../../model/messages/command.js';
import { says } from '../message-kit.js';

/** Words of the messages of model/messages/command.ts. */
export const COMMAND_WORDS = [
  says(COMMAND_MESSAGES.wrongCommandLine, {
    title: 'The command line is wrong',
    message: (p) => `The command line is wrong: ${p.problem.replace(/[.\s]+$/, '')}.`,
    expected: 'a command with its lists and options',
    hint: (p) =>
      `Run "shuntbook ${p.command === '' ? '' : `${p.command} `}--help" for what it takes, with an example.`,
  }),
  says(COMMAND_MESSAGES.givenTwice, {
    title: 'An option is given twice',
    message: (p) => `The option --${p.option} is given twice.`,
    expected: 'each option once',
    hint: 'Leave one of the two out.',
  }),
  says(COMMAND_MESSAGES.emptyValue, {
    title: 'An option or a list is empty',
    message: (p) => `${p.what} is empty.`,
    found: () => '',
    expected: 'a name',
    hint: 'Give its name, or leave it out.',
  }),
  says(COMMAND_MESSAGES.noSuchDate, {
    title: 'A date that no calendar has',
    message: (p) => `${p.from} holds no date that a calendar has.`,
    found: (p) => p.found,
    expected: (p) =>
      p.from === 'SOURCE_DATE_EPOCH'
        ? 'seconds since 1970, a whole number'
        : 'a date as YYYY-MM-DD, such as 2026-03-31',
    hint: 'Correct it, or leave it out for today.',
  }),
  says(COMMAND_MESSAGES.noSuchWorkers, {
    title: 'A number of workers that cannot be',
    message: () => 'The number of workers must be a whole number from 1 to 64.',
    found: (p) => p.found,
    expected: 'a whole number from 1 to 64',
    hint: 'Correct --workers, or leave it out.',
  }),
  says(COMMAND_MESSAGES.noSuchValue, {
    title: 'An option has a value that is none of its own',
    message: (p) => `The option --${p.option} has no value ${p.found}.`,
    found: (p) => p.found,
    expected: (p) => p.expected,
    hint: 'Correct it, or leave it out: what is not stated is found out.',
  }),
  says(COMMAND_MESSAGES.nothingToCheck, {
    title: 'A command is given neither a catalogue nor a library',
    message: () => 'Neither a catalogue nor an equipment library is named.',
    expected: 'a catalogue FILE, --library FILE, or both',
    hint: 'Run "shuntbook catalogue --help" for an example.',
  }),
  says(COMMAND_MESSAGES.noSuchField, {
    title: 'No field or column has that name',
    message: (p) => `No field of the list and no column of the catalogue is called ${p.name}.`,
    found: (p) => p.name,
    expected: (p) => (p.near === '' ? 'the name of a field' : `the name of a field, such as ${p.near}`),
    hint: 'Run "shuntbook fields" for all of them.',
  }),
  says(COMMAND_MESSAGES.noSuchRule, {
    title: 'No rule has that id',
    message: (p) => `No rule is called ${p.id}.`,
    found: (p) => p.id,
    expected: (p) => (p.near === '' ? 'the id of a rule' : `the id of a rule, such as ${p.near}`),
    hint: 'Run "shuntbook rules" for all of them.',
  }),
  says(COMMAND_MESSAGES.noSuchPlan, {
    title: 'No plan can be read there',
    message: (p) => `No plan can be read from ${p.path}: ${p.because}.`,
    found: (p) => p.path,
    expected: 'a job’s folder, a plan.json, or a list of one job',
    hint: 'Name the folder of a job in your --out, or run "shuntbook plan" first.',
  }),
  says(COMMAND_MESSAGES.whichJob, {
    title: 'A command needs one job of a list of several',
    message: (p) =>
      `One job of ${p.path} is asked for; it has ${p.jobs.slice(0, 8).join(', ')}${p.jobs.length > 8 ? ' and more' : ''}.`,
    expected: '--job with one of them',
    hint: (p) => `Add --job ${p.jobs[0] ?? 'JOB'}.`,
  }),
  says(COMMAND_MESSAGES.noSuchPort, {
    title: 'The plan has no such equipment, port or protector',
    message: (p) => `The plan of ${p.job} has no ${p.wanted}.`,
    found: (p) => p.wanted,
    expected: (p) => `TAG or TAG:PORT; it has ${p.known}`,
    hint: 'Correct it, or leave it out for all of the job.',
  }),
  says(COMMAND_MESSAGES.whichFile, {
    title: 'A catalogue or library stands beside the lists in two forms',
    message: (p) =>
      `Beside the lists stand ${p.names.join(' and ')}: which of them is to be read isn’t known.`,
    found: (p) => p.names.join(', '),
    expected: (p) => `one ${p.option}`,
    hint: (p) => `Name one with --${p.option}, or move the other away.`,
  }),
  says(COMMAND_MESSAGES.alreadyThere, {
    title: 'A file to write is there already',
    message: (p) => `${p.path} is there already, and nothing of yours is overwritten.`,
    found: (p) => p.path,
    expected: 'a path where nothing is yet',
    hint: 'Name another file, or move that one away.',
  }),
  says(COMMAND_MESSAGES.fault, {
    title: 'A fault of the program',
    message: (p) => `shuntbook met a fault of its own: ${p.what.replace(/[.\s]+$/, '')}.`,
    expected: 'no fault',
    hint: 'Run it again with --verbose, and report what it prints.',
  }),
];
