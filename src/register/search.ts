import type { DueCheck, RegisterLine } from '../model/register.js';
import { serialFit, type SerialTest } from './serials.js';

/** What is asked of the register; what is undefined isn't asked. */
export interface RegisterQuestion {
  /** Letters' case doesn't count. */
  readonly part?: string | undefined;
  readonly serials?: SerialTest | undefined;
  /** `YYYY-MM-DD`: what is due before that day. */
  readonly dueBefore?: string | undefined;
}

/** What a line of the register is to a question: `untold`: of that part, but its serial doesn't say whether it is meant. */
export type LineFit = 'meant' | 'untold' | 'other';

const samePart = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/**
 * Tells whether a question means a line. One of that part whose serial isn't known, or is of another form than a range,
 * is never passed over: nobody knows that it isn't meant.
 */
export function lineFit(line: RegisterLine, { part, serials }: RegisterQuestion): LineFit {
  if (part !== undefined && !samePart(part, line.part)) return 'other';
  if (serials === undefined) return 'meant';
  const fit = serialFit(line.serial, serials);
  if (fit === 'meant' || fit === 'other') return fit;
  // Asked without a part, every protector without a serial would be told.
  return part === undefined ? 'other' : 'untold';
}

/** Tells whether a question means a check that is due. */
export function checkFits(check: DueCheck, { part, serials, dueBefore }: RegisterQuestion): boolean {
  if (dueBefore !== undefined && check.due >= dueBefore) return false;
  if (part !== undefined && !samePart(part, check.part)) return false;
  return (
    serials === undefined ||
    check.serials.length === 0 ||
    check.serials.some((serial) => serialFit(serial, serials) !== 'other')
  );
}

/** Stands for what a reader shall not see. */
const LEFT_OUT = '';

/** A line without names of people and without addresses; what is said in free words may hold them, and goes too. */
export function lineWithoutNames(line: RegisterLine): RegisterLine {
  return { ...line, jobName: LEFT_OUT, address: LEFT_OUT, by: LEFT_OUT, reason: LEFT_OUT, photos: [] };
}

/** A check without names of people and without addresses. */
export function checkWithoutNames(check: DueCheck): DueCheck {
  return { ...check, jobName: LEFT_OUT, address: LEFT_OUT };
}
