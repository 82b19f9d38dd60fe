import { z } from 'zod';
import type { Plan } from '../../../model/plan.js';
import { AS_BUILT_EN } from '../../../words/languages/as-built-en.js';
import type { Changed } from '../../../words/languages/as-built-words.js';
import { tagList } from '../../../words/tag-list.js';
import type { AsBuilt, Change } from '../../parts/as-built.js';
import { ChangeColumnsSchema, changeRows } from '../../parts/change-rows.js';
import { runsOf, RunsSchema } from '../../parts/contents/runs.js';
import { DEFERENCE } from '../../parts/limits.js';
import { PermitNotesSchema } from './notes.js';

/** What changed against the permit sheets. */
export const AddendumSchema = z.object({
  title: z.string(),
  columns: ChangeColumnsSchema,
  rows: z.array(
    z.object({
      tags: z.string(),
      what: z.string(),
      planned: RunsSchema,
      found: RunsSchema,
      result: RunsSchema,
      fails: z.boolean(),
      accepted: z.string(),
    }),
  ),
  notes: PermitNotesSchema,
});
export type Addendum = z.infer<typeof AddendumSchema>;

/** What a reading of the day found is no matter of the permit. */
const NOT_OF_PERMIT: ReadonlySet<Changed> = new Set(['volts', 'light']);

/** What changed of what the permit sheets say. */
export function permitChanges({ changes }: AsBuilt): Change[] {
  return changes.filter(({ what }) => !NOT_OF_PERMIT.has(what));
}

/** Each who fitted something, with licence and days. */
function crewNotes({ housings }: AsBuilt): string[] {
  const days = new Map<string, Set<string>>();
  for (const { name, licence, date } of housings.values()) {
    if (name === '') continue;
    const who = licence === '' ? name : `${name}, licence ${licence}`;
    const known = days.get(who) ?? new Set();
    days.set(who, date === '' ? known : known.add(date));
  }
  return Array.from(days, ([who, on]) => `Fitted by ${[who, ...[...on].sort()].join(', ')}.`);
}

/**
 * What stands on the addendum.
 * @param sheets numbers of the permit sheets that it belongs to
 */
export function addendumView(plan: Plan, built: AsBuilt, sheets: readonly string[]): Addendum {
  const runs = runsOf(plan);
  const { columns } = AS_BUILT_EN.changed;
  const named = sheets.length > 1 ? `sheets ${tagList(sheets)}` : `sheet ${sheets.join('')}`;
  const revision = plan.revision === '' ? '0' : plan.revision;
  const notes = [
    `This sheet lists only what changed. All else stands as on ${named}, revision ${revision}.`,
    'What changed was held against the rules and the code of those sheets anew, levels and reaches with the leads as found.',
    ...crewNotes(built),
    ...(built.made === 'open'
      ? ['The record of the work is open: something is missing, or in conflict and not cleared.']
      : []),
    DEFERENCE,
  ];
  return {
    title: 'Changes from the permit sheets, as built',
    columns: { ...columns },
    rows: changeRows(plan, permitChanges(built), AS_BUILT_EN).map((row) => ({
      ...row,
      tags: row.tags.length === 0 ? AS_BUILT_EN.open.job : tagList(row.tags),
      planned: runs(row.planned),
      found: runs(row.found),
      result: runs(row.result),
    })),
    notes: { title: 'Notes', rows: notes.map((text) => ({ text: runs(text), fill: false })) },
  };
}
