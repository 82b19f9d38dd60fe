import { z } from 'zod';
import type { DueCheck, RegisteredJob, RegisterLine } from '../model/register.js';
import { soonestFirst } from '../register/due-order.js';
import { counted } from '../screen/text-table.js';
import { checkTitle } from '../words/due-checks.js';

/** Jobs whose record came back: their state, what is due there, and what was replaced. */
export const recordsSchema = z.object({
  /** `5 checks due, 2 of them overdue`; `` where no job has a record. */
  summary: z.string(),
  jobs: z.array(
    z.object({
      job: z.string(),
      href: z.string(),
      state: z.string(),
      hanging: z.string(),
      /** `2026-03-14`; `` nothing is due. */
      soonest: z.string(),
      overdue: z.boolean(),
      checks: z.array(z.object({ due: z.string(), overdue: z.boolean(), says: z.string() })),
      /** `and 12 more: see checks-due.csv`; `` for none. */
      more: z.string(),
      history: z.array(z.string()),
    }),
  ),
});
type Records = z.infer<typeof recordsSchema>;

/** The tables beside the page that are made of records. */
export const REGISTER_TABLES = [
  { file: 'register.csv', what: 'what hangs where, for the office', whole: false },
  { file: 'checks-due.csv', what: 'what is to be looked at, soonest first', whole: false },
  { file: 'checks-due.ics', what: 'the same for a calendar', whole: false },
];

/** Checks of one job that are named before the rest is counted. */
const MOST = 8;

/**
 * The records of a batch's jobs as the report shows them.
 * @param jobs of the report, in its order, with the place of each within the page
 * @param date `YYYY-MM-DD` of the run
 */
export function recordsView(
  jobs: readonly { readonly record: RegisteredJob; readonly href: string }[],
  date: string,
): Records {
  const all = jobs.flatMap(({ record }) => record.checks);
  const late = all.filter(({ due }) => due < date).length;
  const checks = `${counted(all.length, 'check')} due`;
  const summary = late === 0 ? checks : `${checks}, ${String(late)} of them overdue`;
  return {
    summary: jobs.length === 0 ? '' : summary,
    jobs: jobs.map(({ record, href }) => {
      const due = [...record.checks].sort(soonestFirst);
      const soonest = due[0]?.due ?? '';
      return {
        job: record.job,
        href,
        state: record.state,
        hanging: counted(record.hanging, 'protector'),
        soonest,
        overdue: soonest !== '' && soonest < date,
        checks: due.slice(0, MOST).map((check) => checkView(check, date)),
        more: due.length > MOST ? `and ${String(due.length - MOST)} more: see checks-due.csv` : '',
        history: record.replaced.map(historyText),
      };
    }),
  };
}

const checkView = (check: DueCheck, date: string): Records['jobs'][number]['checks'][number] => ({
  due: check.due,
  overdue: check.due < date,
  says: [checkTitle(check), check.place].filter((part) => part !== '').join(', '),
});

/** `P-3: WK-TEASEL 0012, fitted 2025-03-14, replaced 2027-06-01 by 0048: surge`. */
function historyText(line: RegisterLine): string {
  const what = [line.part, line.serial].filter((part) => part !== '').join(' ');
  const fitted = line.dateFitted === '' ? '' : `, fitted ${line.dateFitted}`;
  const deed = line.replacedBy.length === 0 ? 'removed' : 'replaced';
  const by = line.replacedBy.length === 0 ? '' : ` by ${line.replacedBy.join('; ')}`;
  const why = line.reason === '' ? '' : `: ${line.reason}`;
  return `${line.protector}: ${what === '' ? 'a protector' : what}${fitted}, ${deed} ${line.replacedOn}${by}${why}`;
}
