import { note } from '../model/message.js';
import { COMMAND_MESSAGES } from '../model/messages/command.js';
import { WrongCommandLine } from './usage.js';

/**
 * The date of a run: `--date`, else `SOURCE_DATE_EPOCH` in UTC, else today.
 * @param option `YYYY-MM-DD` as typed; undefined: not given
 * @param epoch seconds since 1970 as the environment has them; undefined or empty: not given
 * @param today the moment of the run; its local day counts
 * @returns `YYYY-MM-DD`
 * @throws WrongCommandLine for a date that no calendar has
 */
export function dateOfRun(option: string | undefined, epoch: string | undefined, today: Date): string {
  if (option !== undefined) return dayOf('--date', option);
  if (epoch !== undefined && epoch !== '') {
    const seconds = /^\d{1,12}$/.test(epoch) ? Number(epoch) : Number.NaN;
    const day = new Date(seconds * 1000);
    if (Number.isNaN(day.getTime()) || day.getUTCFullYear() > 9999) throw wrong('SOURCE_DATE_EPOCH', epoch);
    return day.toISOString().slice(0, 10);
  }
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${String(today.getFullYear()).padStart(4, '0')}-${two(today.getMonth() + 1)}-${two(today.getDate())}`;
}

/**
 * The day that an option names.
 * @param option its name, as messages tell it
 * @param text as typed
 * @returns `YYYY-MM-DD`
 * @throws WrongCommandLine for a date that no calendar has
 */
export function dayOf(option: string, text: string): string {
  if (!isDay(text)) throw wrong(option, text);
  return text;
}

function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

function wrong(from: string, found: string): WrongCommandLine {
  return new WrongCommandLine(note(COMMAND_MESSAGES.noSuchDate, { from, found }));
}
