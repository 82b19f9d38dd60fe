import type { RangeFault } from '../model/messages/register.js';

/** Serials that are looked for. */
export type SerialTest =
  | {
      readonly by: 'range';
      /** All digits, of one length. */
      readonly from: string;
      readonly to: string;
    }
  | { readonly by: 'list'; readonly serials: ReadonlySet<string> };

/** What a serial is to a test: `unlike`: it can't be told from serials of that form, `unknown`: there is none. */
export type SerialFit = 'meant' | 'other' | 'unlike' | 'unknown';

const DIGITS = /^[0-9]+$/;

/**
 * A range of serials as typed: `FROM..TO`, both included.
 * @returns the test, or why there is none: only where both are digits of one length every serial between them is known
 */
export function serialRange(text: string): SerialTest | RangeFault {
  const parts = text.split('..');
  const [from, to] = parts.map((part) => part.trim());
  if (parts.length !== 2 || from === undefined || to === undefined || from === '' || to === '')
    return 'no-range';
  if (!DIGITS.test(from) || !DIGITS.test(to)) return 'not-digits';
  if (from.length !== to.length) return 'lengths';
  return from <= to ? { by: 'range', from, to } : 'backwards';
}

/**
 * A list of serials: letters' case and blanks around don't count.
 * @param serials as they stand in a file
 */
export function serialList(serials: Iterable<string>): SerialTest {
  return { by: 'list', serials: new Set(Array.from(serials, sameSerial).filter((one) => one !== '')) };
}

const sameSerial = (serial: string): string => serial.trim().toLowerCase();

/**
 * What a serial is to a test.
 * @param serial as recorded; `` or `none` where there is none
 */
export function serialFit(serial: string, test: SerialTest): SerialFit {
  const own = sameSerial(serial);
  if (own === '' || own === 'none') return 'unknown';
  if (test.by === 'list') return test.serials.has(own) ? 'meant' : 'other';
  if (!DIGITS.test(own) || own.length !== test.from.length) return 'unlike';
  return test.from <= own && own <= test.to ? 'meant' : 'other';
}
