import type { DueCheck, RegisterLine } from '../model/register.js';
import { checkTitle } from '../words/due-checks.js';
import { counted, printable, textTable } from './text-table.js';

/** The sums of a register. */
export interface RegisterSums {
  readonly jobs: readonly { readonly state: string; readonly hanging: number }[];
  readonly checks: number;
  readonly overdue: number;
}

/**
 * What was put into the register, in two lines.
 * @param sums of all jobs
 * @param states in the order in which they are told
 */
export function registerText({ jobs, checks, overdue }: RegisterSums, states: readonly string[]): string {
  const hanging = jobs.reduce((all, job) => all + job.hanging, 0);
  const each = states
    .map((state) => ({ state, count: jobs.filter((job) => job.state === state).length }))
    .filter(({ count }) => count > 0)
    .map(({ state, count }) => `${String(count)} ${state}`);
  const of = each.length === 0 ? '' : ` (${each.join(', ')})`;
  const late = overdue === 0 ? '' : `, ${String(overdue)} of them overdue`;
  return `register.csv: ${counted(hanging, 'protector')} of ${counted(jobs.length, 'job')} with a record${of}.\nchecks-due.csv, checks-due.ics: ${counted(checks, 'check')} due${late}.\n`;
}

/**
 * Who has what was asked for.
 * @param lines of the register
 * @param untold of the part, whose serial doesn't say whether they are meant
 * @returns a table; a sentence where there is none
 */
export function holdersText(lines: readonly RegisterLine[], untold: readonly RegisterLine[]): string {
  const all = [
    ...lines.map((line) => ({ line, sure: true })),
    ...untold.map((line) => ({ line, sure: false })),
  ];
  if (all.length === 0) return 'No record names such a protector.\n';
  return textTable(
    ['serial', 'part', 'job', 'name', 'address', 'place', 'protector', 'fitted', 'state'].map((heading) => ({
      heading,
    })),
    all.map(({ line, sure }) => [
      line.serial === '' ? 'not recorded' : line.serial,
      line.part,
      line.job,
      line.jobName,
      line.address,
      line.place,
      line.protector,
      line.dateFitted,
      stateOf(line, sure),
    ]),
  );
}

function stateOf({ replacedOn, replacedBy }: RegisterLine, sure: boolean): string {
  const where =
    replacedOn === '' ? 'hangs there' : `${replacedBy.length === 0 ? 'removed' : 'replaced'} ${replacedOn}`;
  return sure ? where : `${where}; untold`;
}

/**
 * What is due.
 * @param checks soonest first
 * @param date `YYYY-MM-DD` of the run
 */
export function checksText(checks: readonly DueCheck[], date: string): string {
  if (checks.length === 0) return 'Nothing is due.\n';
  return textTable(
    ['due', 'job', 'name', 'address', 'place', 'what'].map((heading) => ({ heading })),
    checks.map((check) => [
      `${check.due}${check.due < date ? ' overdue' : ''}`,
      check.job,
      check.jobName,
      check.address,
      check.place,
      printable(checkTitle(check)),
    ]),
  );
}
