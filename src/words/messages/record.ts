import {
  RECORD_MESSAGES,
  type CellFault,
  type ChangedHousing,
  type RefusedFor,
} from '../../model/messages/record.js';
import type { Quantity } from '../../model/quantity.js';
import type { Decided } from '../../model/record-change.js';
import type { RecordCheck } from '../../model/record.js';
import type { Reason } from '../../model/reason.js';
import { list, quantity } from '../figures.js';
import { says } from '../message-kit.js';
import { say } from '../reasons/say.js';

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

const DECIDED: { readonly [D in Decided]: string } = {
  ports: 'what it guards',
  place: 'its place',
  part: 'its part',
  conductors: 'its conductors',
};

const orNone = (text: string): string => (text === '' ? 'none' : text);

function changedHousing({ tag, is, what }: ChangedHousing): string {
  if (is === 'gone') return `${tag} isn’t planned any more`;
  if (is === 'new') return `${tag} is new`;
  return `${tag}: ${what.map((one) => `${DECIDED[one.of]} was ${orNone(one.before)} and is ${orNone(one.now)}`).join(', ')}`;
}

const changesText = (changes: readonly ChangedHousing[]): string => changes.map(changedHousing).join('; ');

const all = (reasons: readonly Reason[]): string => reasons.map((one) => say(one)).join('; ');
const or = (of: Quantity | null): string => (of === null ? 'not known' : quantity(of));
const reachText = (reach: Quantity | 'unknown' | 'unlimited'): string =>
  reach === 'unknown' ? 'not known' : reach === 'unlimited' ? 'not limited by oscillation' : quantity(reach);

const leadText = (p: {
  readonly level: Quantity | null;
  readonly margin: Quantity | null;
  readonly reach: Quantity | 'unknown' | 'unlimited';
}): string =>
  `the level with them is ${or(p.level)}, the margin ${or(p.margin)}, the reach ${reachText(p.reach)}`;

/** What is to be done with what somebody may accept. */
const accept = (check: RecordCheck): string =>
  `or have it accepted by name and date: a line of deviations.csv with check ${check}`;
const cleared = (check: RecordCheck): string =>
  `nobody here can accept it; where the authority having jurisdiction clears it, a line of deviations.csv with check ${check} names who, when and which paper`;

const bandText = (low: Quantity | null, high: Quantity | null): string =>
  low === null
    ? `at most ${or(high)}`
    : high === null
      ? `at least ${quantity(low)}`
      : `${quantity(low)} to ${quantity(high)}`;

const REFUSED: { readonly [R in RefusedFor]: string } = {
  unsigned: 'it has no name, or no date',
  before: 'it is dated before the record that it is about',
  'needs-paper':
    'a failed rating or a missing required protector is cleared by the authority alone, and it names no paper of it',
  nothing: 'nothing there is otherwise',
};

const SITE = 'the site';
const orSite = (tag: string): string => (tag === '' ? SITE : tag);

/** Words of the messages of model/messages/record.ts. */
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
    message: (p) => `${p.path} can’t be read as a record: ${PDF_FAULTS[p.because]}.`,
    found: (p) => PDF_FAULTS[p.because],
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
    message: (p) => `“${p.text}” in ${p.heading} can’t be used: ${CELL_FAULTS[p.fault]}. It counts as blank.`,
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
  says(RECORD_MESSAGES.otherPlan, {
    title: 'A record of another plan',
    message: (p) =>
      `The form was given out for plan ${orNone(p.given)}, and the plan of today is ${p.now}: ${p.changes === null ? 'what differs isn’t known any more' : p.changes.length === 0 ? 'no line differs' : changesText(p.changes)}.`,
    found: (p) => orNone(p.given),
    expected: (p) => p.now,
    hint: 'Hold the lines that differ against what was done; then fill in the forms of today’s plan, or pack the list that was built from.',
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
  says(RECORD_MESSAGES.factOther, {
    title: 'An assumption found otherwise that changes nothing',
    message: (p) =>
      `${p.fact} of ${orSite(p.tag)} was assumed as ${orNone(p.assumed)} and found as ${p.found}: planned anew with it, nothing else is decided.`,
    found: (p) => p.found,
    expected: (p) => orNone(p.assumed),
    hint: 'Put it on the list, so that the next plan rests on it.',
  }),
  says(RECORD_MESSAGES.factDecides, {
    title: 'An assumption found otherwise that decides something',
    message: (p) =>
      `${p.fact} of ${orSite(p.tag)} was assumed as ${orNone(p.assumed)} and found as ${p.found}: ${p.changes.length > 0 ? `planned anew with it, ${changesText(p.changes)}` : 'what that changes has to be decided'}.`,
    found: (p) => p.found,
    expected: (p) => orNone(p.assumed),
    hint: `Put it on the list, pack anew and have the work corrected; ${cleared('fact')}.`,
  }),
  says(RECORD_MESSAGES.partOther, {
    title: 'Another part than planned, which holds',
    message: (p) =>
      `${p.tag}: ${p.fitted} is fitted where ${orNone(p.planned)} was planned; held against every rule, it may hang there.`,
    found: (p) => p.fitted,
    expected: (p) => orNone(p.planned),
    hint: 'Confirm that it is the part that hangs there.',
  }),
  says(RECORD_MESSAGES.partFails, {
    title: 'The part that is fitted doesn’t do',
    message: (p) =>
      `${p.tag}: ${p.fitted} is fitted where ${orNone(p.planned)} was planned, and doesn’t do there: ${all(p.fails)}.`,
    found: (p) => p.fitted,
    expected: (p) => orNone(p.planned),
    hint: `Have it replaced; ${cleared('part')}.`,
  }),
  says(RECORD_MESSAGES.partUnknown, {
    title: 'The part that is fitted isn’t in the catalogue',
    message: (p) =>
      `${p.tag}: ${p.fitted} is fitted where ${orNone(p.planned)} was planned, and the catalogue of the last pack doesn’t have it: nobody can say whether it does.`,
    found: (p) => p.fitted,
    expected: (p) => orNone(p.planned),
    hint: `Correct part_fitted, put the part into the catalogue and name it with --catalogue, or have it replaced; ${cleared('part')}.`,
  }),
  says(RECORD_MESSAGES.leadOther, {
    title: 'Leads longer than planned',
    message: (p) =>
      `${p.tag}: its leads are ${quantity(p.lead)} in all, planned were ${quantity(p.planned)}; ${leadText(p)}.`,
    found: (p) => quantity(p.lead),
    expected: (p) => quantity(p.planned),
    hint: 'Shorten them, or confirm them as they are.',
  }),
  says(RECORD_MESSAGES.leadTooLong, {
    title: 'Leads that are too long',
    message: (p) =>
      `${p.tag}: its leads are ${quantity(p.lead)} in all, planned were ${quantity(p.planned)}: they are too long; ${leadText(p)}.`,
    found: (p) => quantity(p.lead),
    expected: (p) => quantity(p.planned),
    hint: `Shorten them, ${accept('lead')}.`,
  }),
  says(RECORD_MESSAGES.faultCurrent, {
    title: 'More fault current than a rating bears',
    message: (p) =>
      `${p.tag}: a fault current of ${quantity(p.found)} was found, and the ${p.of === 'part' ? 'protector bears' : 'device there interrupts'} ${quantity(p.rating)}.`,
    found: (p) => quantity(p.found),
    expected: (p) => `at most ${quantity(p.rating)}`,
    hint: `Have a part or device fitted that bears it; ${cleared('fault_current')}.`,
  }),
  says(RECORD_MESSAGES.aboveMcov, {
    title: 'Volts above the MCOV of the part',
    message: (p) =>
      `${p.tag}: ${quantity(p.volts)} from ${p.from} to ${p.to} is above the MCOV of the part, ${quantity(p.mcov)}.`,
    found: (p) => quantity(p.volts),
    expected: (p) => `at most ${quantity(p.mcov)}`,
    hint: `A protector there may burn: have it disconnected by who fitted it until this is settled; ${cleared('volts')}.`,
  }),
  says(RECORD_MESSAGES.wrongSign, {
    title: 'Volts of the wrong sign',
    message: (p) =>
      `${p.tag}: ${quantity(p.volts)} from ${p.from} to ${p.to}, where a ${p.expected} reading is in order.`,
    found: (p) => quantity(p.volts),
    expected: (p) => p.expected,
    hint: `Have the poles looked at by who fitted it, ${accept('volts')}.`,
  }),
  says(RECORD_MESSAGES.outsideBand, {
    title: 'Volts outside their band',
    message: (p) =>
      `${p.tag}: ${quantity(p.volts)} from ${p.from} to ${p.to}, where ${bandText(p.low, p.high)} is in order.`,
    found: (p) => quantity(p.volts),
    expected: (p) => bandText(p.low, p.high),
    hint: 'Confirm the reading, or have it taken again.',
  }),
  says(RECORD_MESSAGES.lookOther, {
    title: 'A light or flag that isn’t as it should be',
    message: (p) =>
      `${p.tag}: the ${p.kind}${p.channel === null ? '' : ` of channel ${p.channel}`} is ${p.found} (${p.state}), where it should be ${p.expected.join(' or ')}.`,
    found: (p) => p.found,
    expected: (p) => p.expected.join(' or '),
    hint: (p) => `Have the protector replaced or its wiring looked at, ${accept(p.kind)}.`,
  }),
  says(RECORD_MESSAGES.requiredGone, {
    title: 'A required protector isn’t there',
    message: (p) => `${p.tag} is required, and is ${p.is}.`,
    found: (p) => p.is,
    expected: 'fitted',
    hint: `Have it fitted; ${cleared('outcome')}.`,
  }),
  says(RECORD_MESSAGES.gone, {
    title: 'A recommended protector isn’t there',
    message: (p) => `${p.tag} is ${p.is}: what it would guard has no protector.`,
    found: (p) => p.is,
    expected: 'fitted',
    hint: 'Confirm that it is left out.',
  }),
  says(RECORD_MESSAGES.movedAway, {
    title: 'A required protector was moved out of reach',
    message: (p) =>
      `${p.tag} was moved from ${orNone(p.from)} to ${p.to}: ${p.distance === null ? 'how far that is along the cable isn’t known' : `that is ${quantity(p.distance)} along the cable`}, and its reach is ${reachText(p.reach)}. What it is required for may be without a protector.`,
    found: (p) => p.to,
    expected: (p) => orNone(p.from),
    hint: `Have it moved back, or put the place on the list and plan anew; ${cleared('place')}.`,
  }),
  says(RECORD_MESSAGES.moved, {
    title: 'A protector was moved',
    message: (p) =>
      `${p.tag} was moved from ${orNone(p.from)} to ${p.to}: ${p.distance === null ? 'how far that is along the cable isn’t known' : `that is ${quantity(p.distance)} along the cable`}, and its reach is ${reachText(p.reach)}.`,
    found: (p) => p.to,
    expected: (p) => orNone(p.from),
    hint: 'Confirm that it guards from there what it was planned for.',
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
    message: (p) => `The line about ${p.check} of ${orSite(p.tag)} doesn’t count: ${REFUSED[p.because]}.`,
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
