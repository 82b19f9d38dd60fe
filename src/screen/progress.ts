import { printable } from './text-table.js';

/** How far a batch is, as far as a screen shows it. */
export interface Advance {
  readonly done: number;
  readonly all: number;
  readonly job: string;
  readonly status: string;
  /** s since the first job was begun. */
  readonly seconds: number;
  /** s; null: not known yet. */
  readonly secondsLeft: number | null;
}

const BAR = 24;
/** Plain lines of progress in one run, at most. */
const MOST_LINES = 20;

/**
 * One line of progress for a terminal: bar, count, rate, time left, the job that was finished last.
 * @param now how far the batch is
 * @returns one line without its end
 */
export function progressBar(now: Advance): string {
  const filled = now.all === 0 ? BAR : Math.floor((BAR * now.done) / now.all);
  const bar = `${'='.repeat(filled)}${' '.repeat(BAR - filled)}`;
  const rate = now.seconds > 0 ? `, ${(now.done / now.seconds).toFixed(1)} jobs/s` : '';
  const left = now.secondsLeft === null ? '' : `, ${duration(now.secondsLeft)} left`;
  return `[${bar}] ${String(now.done)} of ${String(now.all)}${rate}${left}  ${printable(now.job, 30)}`;
}

/**
 * A plain line of progress, for a log: not for every job of a big batch, but for the last always.
 * @param now how far the batch is
 * @returns a line with its end; `` where this job has none
 */
export function progressLine(now: Advance): string {
  const step = Math.max(1, Math.ceil(now.all / MOST_LINES));
  if (now.done % step !== 0 && now.done !== now.all) return '';
  return `${String(now.done)} of ${String(now.all)}  ${printable(now.job, 60)}: ${now.status}\n`;
}

function duration(seconds: number): string {
  const whole = Math.ceil(seconds);
  return whole < 60 ? `${String(whole)} s` : `${String(Math.floor(whole / 60))} min ${String(whole % 60)} s`;
}
