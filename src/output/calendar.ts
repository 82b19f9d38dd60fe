import ICAL from 'ical.js';
import { createHash } from 'node:crypto';
import type { DueCheck } from '../model/register.js';
import { checkDetails, checkTitle } from '../words/due-checks.js';

// The library counts the octets of a folded line without the blank that begins it; RFC 5545 section 3.1 counts 75 with it.
ICAL.foldLength = 74;

const PRODUCT = '-//shuntbook//checks due//EN';
/** ms. */
const DAY = 86_400_000;
/** Longer texts help nobody in a calendar, and some calendars refuse them. */
const LONGEST = 2_000;

/**
 * `checks-due.ics`: a calendar (RFC 5545) of what is to be looked at, an all-day event a check. An event keeps its UID however
 * often it is made, so that a calendar that takes the file again moves it and makes no second one.
 * @param checks in the order in which they shall stand
 * @param date `YYYY-MM-DD`, the date of the run, which stamps every event
 * @returns the file in pieces
 */
export function* checksCalendar(checks: Iterable<DueCheck>, date: string): Generator<string> {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', PRODUCT);
  const [begin, end] = calendar.toString().split('END:VCALENDAR');
  yield begin ?? '';
  for (const check of checks) yield `${eventOf(check, date)}\r\n`;
  yield `END:VCALENDAR${end ?? ''}\r\n`;
}

function eventOf(check: DueCheck, date: string): string {
  const event = new ICAL.Component('vevent');
  event.addPropertyWithValue('uid', uidOf(check));
  event.addPropertyWithValue('dtstamp', ICAL.Time.fromDateTimeString(`${date}T00:00:00Z`));
  // A calendar takes an event again where it is of a later run.
  event.addPropertyWithValue('sequence', Math.max(0, Date.parse(`${date}T00:00:00Z`) / DAY));
  event.addPropertyWithValue('dtstart', ICAL.Time.fromDateString(check.due));
  event.addPropertyWithValue('dtend', ICAL.Time.fromDateString(dayAfter(check.due)));
  event.addPropertyWithValue('summary', plain(`${check.job}: ${checkTitle(check)}`));
  const where = [check.jobName, check.address].filter((part) => part !== '').join(', ');
  if (where !== '') event.addPropertyWithValue('location', plain(where));
  event.addPropertyWithValue('description', checkDetails(check).map(plain).join('\n'));
  event.addPropertyWithValue('transp', 'TRANSPARENT');
  return event.toString();
}

/** Of job, protector and check alone: neither the day nor the words change it. */
function uidOf({ job, protector, what, kind, state }: DueCheck): string {
  const key = JSON.stringify([job, protector, what, kind, state]);
  // No name of ours on the net: RFC 2606 keeps `.invalid` for that.
  return `${createHash('sha256').update(key, 'utf8').digest('hex').slice(0, 40)}@shuntbook.invalid`;
}

const dayAfter = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + DAY).toISOString().slice(0, 10);

/** A text on one line: RFC 5545 has no control characters in a text, and a mark that turns text around has no place in a calendar. */
function plain(text: string): string {
  const shown = text
    .replace(/[\t\r\n\u0085\u2028\u2029]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Surrogate}\ufffe\uffff]/gu, '\ufffd');
  return shown.length > LONGEST ? `${Array.from(shown).slice(0, LONGEST).join('')} \u2026` : shown;
}
