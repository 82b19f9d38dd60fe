import type { Read } from './figures.js';

const pad = (n: number): string => String(n).padStart(2, '0');

/** A day of the calendar; undefined: there is no such day. */
function day(year: number, month: number, date: number): string | undefined {
  const full = year < 100 ? 2000 + year : year;
  const at = new Date(Date.UTC(full, month - 1, date));
  const isThere = at.getUTCFullYear() === full && at.getUTCMonth() === month - 1 && at.getUTCDate() === date;
  return isThere ? `${String(full)}-${pad(month)}-${pad(date)}` : undefined;
}

const fault = { fault: 'date' } as const;
const orFault = (text: string | undefined): Read<string> => (text === undefined ? fault : { value: text });

/**
 * Reads a date as a person or a spreadsheet writes it: `2025-03-14`, `14.03.2025`, `3/14/2025`, a time behind it.
 * @returns `YYYY-MM-DD`; one whose day and month can be read two ways is a fault
 */
export function readDay(text: string): Read<string> {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ T]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?Z?)?$/.exec(text);
  if (iso) return orFault(day(Number(iso[1]), Number(iso[2]), Number(iso[3])));
  const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})(?: .*)?$/.exec(text);
  if (dotted) return orFault(day(Number(dotted[3]), Number(dotted[2]), Number(dotted[1])));
  const stroke = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d{2})(?: .*)?$/.exec(text);
  if (!stroke) return fault;
  const [a, b, year] = [Number(stroke[1]), Number(stroke[2]), Number(stroke[3])];
  if (a > 12) return orFault(day(year, b, a));
  if (b > 12 || a === b) return orFault(day(year, a, b));
  return { fault: 'date-two-ways' };
}

/**
 * Reads a time of day: `9:05`, `09:05:30`, `14.30`, `2:30 PM`, `14 h 30`; a date before it doesn't count.
 * @returns `HH:MM`
 */
export function readTime(text: string): Read<string> {
  const read =
    /^(?:\d{4}-\d{2}-\d{2}[ T])?(\d{1,2})\s?[:.h]\s?(\d{2})(?::\d{2}(?:\.\d+)?)?\s*(am|pm|a\.m\.|p\.m\.)?$/i.exec(
      text,
    );
  if (!read) return { fault: 'time' };
  const half = (read[3] ?? '').slice(0, 1).toLowerCase();
  const stated = Number(read[1]);
  const minutes = Number(read[2]);
  if (half !== '' && (stated < 1 || stated > 12)) return { fault: 'time' };
  const hours = half === '' ? stated : (stated % 12) + (half === 'p' ? 12 : 0);
  return hours > 23 || minutes > 59 ? { fault: 'time' } : { value: `${pad(hours)}:${pad(minutes)}` };
}
