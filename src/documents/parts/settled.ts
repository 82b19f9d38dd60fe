import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { settledBy } from '../../words/settled.js';

/** Rows by tag, the most that one line names. */
const NAMED = 12;

export const SettledViewSchema = z.object({
  field: z.string(),
  value: z.string(),
  /** What it stands in for: tags, or the job. */
  rows: z.string(),
  how: z.string(),
});

/** The defaults that the company settled and that this plan rests on. */
export function settledViews(plan: Plan): z.infer<typeof SettledViewSchema>[] {
  return plan.settled.map(({ field, value, rows, by, date }) => {
    const more = rows.length - NAMED;
    const named = rows.slice(0, NAMED).join(', ');
    return {
      field,
      value,
      rows: rows.length === 0 ? 'the job' : more > 0 ? `${named} and ${more} more` : named,
      how: settledBy({ by, date }),
    };
  });
}
