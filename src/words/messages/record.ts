import { RECORD_MESSAGES, type CellFault, type RefusedFor } from '../../model/messages/record.js';
import { list } from '../figures.js';
import { says } from '../message-kit.js';

/** The words of a word; of one that has none the word itself. */
const word = (table: Readonly<Record<string, string>>, of: string): string => table[of] ?? of;

const CELL_FAULTS: { readonly [F in CellFault]: string } = {
  number: 'it is no figure',
  'two-ways': 'it can be read two ways: 1,234 may be 1.234 or 1234',
  shortened: 'a spreadsheet shortened it to a power of ten',
  unit: 'its unit isn’t one of this column',
  negative: 'it is below zero',
  date: 'it is no date',
  'date-two-ways': 'day and month can be read two ways',
  time: 'it is no time of day',
  outcome: 'it is none of the words of this column',
  look: 'it says neither lit, dark nor flickers, nor of a flag good or used',
  check: 'it names no check',
  'too-long': 'it has more than 4000 characters',
  fact: 'it is nothing that this fact can be',
};

const EXPECTED: Readonly<Record<string, string>> = {
  outcome: 'fitted, moved, not fitted, kept, replaced or removed',
  lead_length: 'a length with its unit, such as 0.4 m or 16 in',
  device_volts: 'volts, such as 240 V',
  device_interrupting_ka: 'a current in kA, such as 10',
  fault_current: 'a current with its unit, such as 5 kA',
  date: 'YYYY-MM-DD',
  time: 'HH:MM, such as 14:30',
  check: 'outcome, part, place, lead, fault_current, volts, light, flag, serial, torque, fact or plan',
  found: 'volts with their sign, such as -52.1; or lit, dark, flickers; of a flag good or used',
};

const PDF_FAULTS = {
  'no-pdf': 'it is no PDF',
  locked: 'it is locked with a password',
  broken: 'it is broken off or damaged',
  'no-form': 'it holds no fields of ours: it was printed or scanned, or a program dropped them',
  'too-large': 'it is larger than a form can be',
} as const;

/** A column in the words of the trade. */
const HEADINGS: Readonly<Record<string, string>> = {
  serial: 'serial',
  date_code: 'date code',
  torque: 'torque',
  outcome: 'outcome',
  place: 'place to which it was moved',
  lead_length: 'lead length',
  date: 'date',
  name: 'name of who did it',
};
const heading = (of: string): string => HEADINGS[of] ?? of;

const orNone = (text: string): string => (text === '' ? 'none' : text);
const orSite = (tag: string): string => (tag === '' ? 'the site' : tag);

const REFUSED: { readonly [R in RefusedFor]: string } = {
  unsigned: 'it has no name, or no date',
  before: 'it is dated before the record that it is about',
  'needs-paper':
    'a failed rating or a missing required protector is cleared by the authority alone, and it names no paper of it',
  nothing: 'nothing there is otherwise',
};

/** Words of the messages of model/messages/record.ts about files, rows and what isn't recorded. */
export const RECORD_WORDS = [
  says(RECORD_MESSAGES.noForm, {
    title: 'A file is none of the crew’s forms',
    message: (p) =>
      `${p.path} is no record, readings, facts or deviations of a job: its headings aren’t theirs.`,
    found: (p) => list(p.headings),
    expected: 'the headings of site-record.csv, site-readings.csv, site-facts.csv or deviations.csv',
    hint: 'Hand in the file that "shuntbook pack" put into the job’s folder, filled in; its columns may stand in any order.',
  }),
  says(RECORD_MESSAGES.noPdfForm, {
    title: 'A PDF that is no filled-in form of ours',
    message: (p) => `${p.path} can’t be read as a record: ${word(PDF_FAULTS, p.pdfFault)}.`,
    found: (p) => word(PDF_FAULTS, p.pdfFault),
    expected: 'site-record.pdf of a pack, its fields filled in and saved as a form',
    hint: 'Save it as a form, not as a print; or fill in site-record.csv and site-readings.csv.',
  }),
  says(RECORD_MESSAGES.nothingToRead, {
    title: 'A folder holds no form',
    message: (p) => `${p.path} holds no file of the crew’s forms.`,
    found: (p) => p.path,
    expected: 'a folder with site-record.csv, site-readings.csv, site-facts.csv or site-record.pdf',
    hint: 'Name the files, or the folder that they lie in.',
  }),
  says(RECORD_MESSAGES.cellWrong, {
    title: 'A cell of a form can’t be understood',
    message: (p) =>
      `“${p.text}” in ${p.heading} can’t be used: ${word(CELL_FAULTS, p.cellFault)}. It counts as blank.`,
    found: (p) => p.text,
    expected: (p) => EXPECTED[p.heading] ?? 'a text',
    hint: 'Correct the cell, and hand the file in again.',
  }),
  says(RECORD_MESSAGES.noSuchJob, {
    title: 'A record of a job that isn’t there',
    message: (p) =>
      `The output folder holds no pack of job ${orNone(p.job)}: nothing of this line was taken.`,
    found: (p) => p.job,
    expected: 'the id of a job that "shuntbook pack" made a pack of in this --out',
    hint: 'Correct job, or name the --out that its pack is in.',
  }),
  says(RECORD_MESSAGES.noPlan, {
    title: 'A job without a plan that can be read',
    message: (p) => `${p.plan} of job ${p.job} can’t be read: its record was not taken.`,
    found: (p) => p.plan,
    expected: 'a plan.json that shuntbook wrote',
    hint: 'Run "shuntbook pack" with the job’s list, then this again.',
  }),
  says(RECORD_MESSAGES.notRead, {
    title: 'A record that is there can’t be read',
    message: (p) =>
      `${p.record} of job ${p.job} can’t be read, and was left as it is: nothing new was taken.`,
    found: (p) => p.record,
    expected: 'a record.json that shuntbook wrote',
    hint: 'Take it from a backup, or move it away and hand in all files of the job again.',
  }),
  says(RECORD_MESSAGES.noSuchProtector, {
    title: 'A record of a protector that the plan doesn’t have',
    message: (p) => `The plan has no protector ${orNone(p.tag)}: nothing of this line was taken.`,
    found: (p) => p.tag,
    expected: (p) => (p.there.length === 0 ? 'a plan with protectors' : `one of ${list(p.there)}`),
    hint: 'Correct protector; where one more was fitted, put it on the list as existing and plan anew.',
  }),
  says(RECORD_MESSAGES.noSuchReading, {
    title: 'A reading that the plan doesn’t ask for',
    message: (p) =>
      `The plan asks for no ${p.kind === '' ? 'reading' : p.kind} at ${orNone(p.tag)}, channel ${orNone(p.channel)}, state ${orNone(p.state)}: nothing of this line was taken.`,
    found: (p) => [p.tag, p.channel, p.kind, p.state].filter((word) => word !== '').join(', '),
    expected: 'a line of the site-readings.csv of this plan',
    hint: 'Correct protector, channel, kind, from, to and state.',
  }),
  says(RECORD_MESSAGES.noSuchFact, {
    title: 'An assumption that the plan doesn’t make',
    message: (p) =>
      `The plan has no assumption ${orNone(p.assumption)} about ${orSite(p.tag)}: nothing of this line was taken.`,
    found: (p) => [p.assumption, p.tag].filter((word) => word !== '').join(', '),
    expected: 'a line of the site-facts.csv of this plan',
    hint: 'Correct assumption, tag and fact.',
  }),
  says(RECORD_MESSAGES.twoAtOnce, {
    title: 'Two records of one housing at one time',
    message: (p) =>
      `${p.tag} has more than one record of ${[p.date, p.time].filter((word) => word !== '').join(' ') || 'an unknown day'}, or one without a date: the one that was read last of the latest counts, the others stay in the history.`,
    found: (p) => [p.date, p.time].filter((word) => word !== '').join(' '),
    expected: 'one record of a housing at a time',
    hint: 'Confirm that the one that counts is right, or hand it in with its true date and time.',
  }),
  says(RECORD_MESSAGES.serialTwice, {
    title: 'A serial stands twice',
    message: (p) =>
      `Serial ${p.serial} of ${[p.maker, p.part].filter((word) => word !== '').join(' ')} stands at ${list(p.places.map(({ job, protector }) => `${protector} of ${job}`))}.`,
    found: (p) => p.serial,
    expected: 'a serial of a maker’s part at one place',
    hint: 'Look at both housings and correct the wrong record; one that was taken away is recorded as removed where it was.',
  }),
  says(RECORD_MESSAGES.nothingRecorded, {
    title: 'Nothing was recorded of a protector',
    message: (p) => `Nothing came back of ${p.tag}.`,
    expected: 'a line of site-record.csv, filled in',
    hint: 'Have the form filled in once the work is done.',
  }),
  says(RECORD_MESSAGES.lacks, {
    title: 'A record lacks something',
    message: (p) => `The record of ${p.tag} has no ${heading(p.heading)}.`,
    expected: (p) =>
      EXPECTED[p.heading] ?? `the ${heading(p.heading)}; of a part without a serial “none” and its date code`,
    hint: 'Ask who fitted it, fill it in and hand the file in again.',
  }),
  says(RECORD_MESSAGES.notSaid, {
    title: 'A record doesn’t say something that papers show',
    message: (p) =>
      `The record of ${p.tag} has no ${heading(p.heading)}: papers and register leave it blank.`,
    expected: (p) => EXPECTED[p.heading] ?? `the ${heading(p.heading)}`,
    hint: 'Fill it in and hand the file in again, or confirm that it isn’t known.',
  }),
  says(RECORD_MESSAGES.noReading, {
    title: 'A reading wasn’t taken',
    message: (p) =>
      `${p.tag}: no ${p.kind === 'volts' ? `volts from ${p.from} to ${p.to}` : `${p.kind}${p.channel === null ? '' : ` of channel ${p.channel}`}`} (${p.state}) came back.`,
    expected: 'a reading; or why it couldn’t be taken that day, in why_not',
    hint: 'Have it read, or say in why_not why it couldn’t be seen that day.',
  }),
  says(RECORD_MESSAGES.photoNotThere, {
    title: 'A photo of a record isn’t there',
    message: (p) => `The photo ${p.photo} lies neither beside the form nor in --photos.`,
    found: (p) => p.photo,
    expected: 'the file of that name beside the form, or in the job’s folder of --photos',
    hint: 'Put it beside the form and hand the form in again.',
  }),
  says(RECORD_MESSAGES.notPlannedAnew, {
    title: 'What is otherwise couldn’t be planned anew',
    message: (p) =>
      `What hangs otherwise than planned${p.tags.length === 0 ? '' : ` (${list(p.tags)})`} couldn’t be held against the rules: ${p.because === 'company-gone' ? 'catalogue and settings of the last pack aren’t known any more' : p.because === 'job-too-large' ? 'the job is beyond the limits' : 'planned from its plan.json, the job comes out otherwise than it was planned'}. Levels, reaches and margins there aren’t known.`,
    found: (p) => list(p.tags),
    expected: 'the catalogue and settings of the last pack',
    hint: 'Name them with --catalogue and --settings, or run "shuntbook pack" with the lists again, then this.',
  }),
  says(RECORD_MESSAGES.notPrinted, {
    title: 'The as-built papers weren’t printed',
    message: (p) =>
      `The papers of ${p.folder} weren’t made as built: settings and catalogue of the last pack aren’t known any more.`,
    expected: 'the settings and the catalogue of the last pack',
    hint: 'Name them with --settings and --catalogue, or run "shuntbook pack" with the lists again: it takes the record with it.',
  }),
  says(RECORD_MESSAGES.deviationRefused, {
    title: 'A deviation that can’t be accepted so',
    message: (p) =>
      `The line about ${p.check} of ${orSite(p.tag)} doesn’t count: ${word(REFUSED, p.because)}.`,
    found: (p) => p.check,
    expected:
      'name and date of who accepts it; of a failed rating or a missing required protector those of the authority, and its paper',
    hint: 'Complete the line, or have the work corrected.',
  }),
  says(RECORD_MESSAGES.deviationIdle, {
    title: 'A deviation of something that is as planned',
    message: (p) =>
      `Nothing about ${p.check} of ${orSite(p.tag)} is otherwise than planned: the line was passed over.`,
    found: (p) => p.check,
    expected: 'a line for each thing in record-items.csv that somebody accepts',
    hint: 'Correct protector and check, or take the line out.',
  }),
];
