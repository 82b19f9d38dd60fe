import { RECORD_MESSAGES, type ChangedHousing } from '../../model/messages/record.js';
import type { Quantity } from '../../model/quantity.js';
import type { Decided } from '../../model/record-change.js';
import type { RecordCheck } from '../../model/record.js';
import type { Reason } from '../../model/reason.js';
import { quantity } from '../figures.js';
import { says } from '../message-kit.js';
import { say } from '../reasons/say.js';

/** The words of a word; of one that has none the word itself. */
const word = (table: Readonly<Record<string, string>>, of: string): string => table[of] ?? of;

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
  return `${tag}: ${what.map((one) => `${word(DECIDED, one.of)} was ${orNone(one.before)} and is ${orNone(one.now)}`).join(', ')}`;
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

const orSite = (tag: string): string => (tag === '' ? 'the site' : tag);

/** Words of the messages of model/messages/record.ts about what was found otherwise than planned. */
export const RECORD_CHECK_WORDS = [
  says(RECORD_MESSAGES.otherPlan, {
    title: 'A record of another plan',
    message: (p) =>
      `The form was given out for plan ${orNone(p.given)}, and the plan of today is ${p.now}: ${p.changes === null ? 'what differs isn’t known any more' : p.changes.length === 0 ? 'no line differs' : changesText(p.changes)}.`,
    found: (p) => orNone(p.given),
    expected: (p) => p.now,
    hint: 'Hold the lines that differ against what was done; then fill in the forms of today’s plan, or pack the list that was built from.',
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
];
