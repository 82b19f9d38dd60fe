import { REGISTER_MESSAGES, type RangeFault, type RecordFault } from '../../model/messages/register.js';
import { says } from '../message-kit.js';

const RECORD_FAULTS: { readonly [F in RecordFault]: string } = {
  'no-file': 'it is a link, a folder, or larger than a record can be',
  unreadable: 'it can’t be read',
  'no-json': 'it is no JSON: cut off, or written by something else',
  'no-record': 'it isn’t as shuntbook writes records',
};

const RANGE_FAULTS: { readonly [F in RangeFault]: string } = {
  'no-range': 'it isn’t FROM..TO',
  'not-digits': 'it holds something other than the digits 0 to 9, and which serials lie between isn’t known',
  lengths: 'its ends have different numbers of digits, and which serials lie between isn’t known',
  backwards: 'its end comes before its beginning',
};

/** Words of the messages of model/messages/register.ts. */
export const REGISTER_WORDS = [
  says(REGISTER_MESSAGES.recordNotRead, {
    title: 'A job’s record can’t be read',
    message: (p) =>
      `The record ${p.record} can’t be taken into the register: ${RECORD_FAULTS[p.recordFault]}. What hangs at that job isn’t in register.csv, nor what is due there.`,
    found: (p) => RECORD_FAULTS[p.recordFault],
    expected: 'a record.json that shuntbook wrote',
    hint: 'Take it from a backup, or run "shuntbook record" with the files that the crew filled in; then run this again.',
  }),
  says(REGISTER_MESSAGES.jobTwice, {
    title: 'Two folders hold a record of one job',
    message: (p) =>
      `${p.kept} and ${p.folder} both hold a record of job ${p.job}: the register has it from ${p.kept} alone.`,
    found: (p) => p.folder,
    expected: 'one folder a job',
    hint: 'Move the folder that is no longer used out of the output folder.',
  }),
  says(REGISTER_MESSAGES.serialTwice, {
    title: 'One serial hangs at two places',
    message: (p) =>
      `Serial ${p.serial} of ${[p.maker, p.part].filter((word) => word !== '').join(' ')} hangs at ${p.places.map(({ job, protector }) => `${protector} of ${job}`).join(' and ')}: one of the records is wrong.`,
    found: (p) => p.serial,
    expected: 'a serial of a maker’s part at one place',
    hint: 'Look at both housings, and hand in the record that was wrong anew; a protector that moved is recorded as removed where it was.',
  }),
  says(REGISTER_MESSAGES.serialsUntold, {
    title: 'Protectors whose serials don’t say whether they are meant',
    message: (p) =>
      `${p.protectors === 1 ? 'One protector' : `${p.protectors} protectors`} of ${p.part} ${p.protectors === 1 ? 'has' : 'have'} no serial on record, or one of another form: whether ${p.protectors === 1 ? 'it is' : 'they are'} among those looked for isn’t known.`,
    found: (p) => String(p.protectors),
    expected: 'a serial of the form that was asked for',
    hint: 'They are listed as untold: ask who fitted them, or have them looked at.',
  }),
  says(REGISTER_MESSAGES.rangeNotTold, {
    title: 'A range of serials that can’t be told',
    message: (p) => `--serial ${p.found} can’t be told: ${RANGE_FAULTS[p.rangeFault]}.`,
    found: (p) => p.found,
    expected: 'FROM..TO, both of digits alone and of one length, such as 004100..004199',
    hint: 'Write the serials that are meant into a file, one a line, and hand it over by --serials FILE.',
  }),
  says(REGISTER_MESSAGES.noSerials, {
    title: 'A file of serials holds none',
    message: (p) => `${p.path} ${p.unread ? 'can’t be read' : 'holds no serial'}.`,
    found: (p) => p.path,
    expected: 'a file of text of at most 50 MB with one serial a line',
    hint: 'Name another file with --serials.',
  }),
  says(REGISTER_MESSAGES.noFolder, {
    title: 'The output folder is not there',
    message: (p) => `There is no folder ${p.out} of packs and records.`,
    found: (p) => p.out,
    expected: 'the --out of "shuntbook pack" and "shuntbook record"',
    hint: 'Correct --out.',
  }),
];
