import { z } from 'zod';
import { isNec } from '../../model/editions.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import type { Plan } from '../../model/plan.js';
import { crewNoteWords } from '../../words/crew-notes.js';
import type { AsBuiltWords } from '../../words/languages/as-built-words.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import type { AsBuilt, BuiltDue, BuiltVolts } from '../parts/as-built.js';
import { ChangeColumnsSchema, changeRows } from '../parts/change-rows.js';
import { crewTags } from './crew-tags.js';
import { crewWire } from '../parts/crew-wire.js';

/** What came back from the work, deviations first. */
export const AsBuiltSchema = z.object({
  changed: z.object({
    heading: z.string(),
    none: z.string(),
    columns: ChangeColumnsSchema,
    rows: z.array(
      z.object({
        tags: z.string(),
        what: z.string(),
        planned: z.string(),
        found: z.string(),
        result: z.string(),
        fails: z.boolean(),
        accepted: z.string(),
      }),
    ),
  }),
  /** Absent: nothing is. */
  open: z
    .object({
      heading: z.string(),
      how: z.string(),
      columns: z.object({ tag: z.string(), missing: z.string(), conflict: z.string() }),
      rows: z.array(z.object({ tags: z.string(), missing: z.string(), conflict: z.string() })),
    })
    .nullable(),
  due: z.object({
    heading: z.string(),
    none: z.string(),
    columns: z.object({ tag: z.string(), what: z.string(), on: z.string() }),
    rows: z.array(z.object({ tags: z.string(), what: z.string(), on: z.string() })),
  }),
});
export type AsBuiltView = z.infer<typeof AsBuiltSchema>;

/** Rows with their tags; those that differ in nothing else are one. */
function shared<R extends object>(
  rows: readonly (R & { readonly tag: string })[],
  tagsText: (tags: readonly string[]) => string,
): (R & { readonly tags: string })[] {
  const found = new Map<string, { readonly row: R; readonly tags: string[] }>();
  for (const { tag, ...rest } of rows) {
    const row = rest as unknown as R;
    const key = JSON.stringify(row);
    const known = found.get(key) ?? { row, tags: [] };
    found.set(key, known);
    if (!known.tags.includes(tag)) known.tags.push(tag);
  }
  return Array.from(found.values(), ({ row, tags }) => ({ ...row, tags: tagsText(tags) }));
}

function openView(
  { open }: AsBuilt,
  words: AsBuiltWords['open'],
  tagsText: (tags: readonly string[]) => string,
): AsBuiltView['open'] {
  if (open.length === 0) return null;
  const tags = [...new Set(open.map(({ tag }) => tag))].sort(byNaturalOrder);
  const named = (tag: string, severity: 'missing' | 'conflict'): string => {
    const own = open.filter((item) => item.tag === tag && item.severity === severity);
    return [...new Set(own.map(({ what }) => words.lacked[what]))].join(', ');
  };
  const { heading, how, columns } = words;
  const rows = tags.map((tag) => ({
    tag,
    missing: named(tag, 'missing'),
    conflict: named(tag, 'conflict'),
  }));
  return { heading, how, columns: { ...columns }, rows: shared(rows, tagsText) };
}

function dueText({ reading }: BuiltDue, words: CrewPackWords, { due, changed }: AsBuiltWords): string {
  if (reading === null) return due.check;
  const { kind, state } = reading;
  const what = kind === 'volts' ? changed.what.volts : changed.what.light;
  const { states } = crewNoteWords(words.language);
  return state === '' || state === 'ground-fault device open' ? what : due.reading(what, states[state]);
}

/**
 * What came back from the work, as the pack tells it.
 * @param plan whose lengths' unit counts
 */
export function asBuiltView(
  plan: Plan,
  built: AsBuilt,
  words: CrewPackWords,
  own: AsBuiltWords,
): AsBuiltView {
  const { changed, due } = own;
  const tagsText = (tags: readonly string[]): string => {
    const named = tags.filter((tag) => tag !== '');
    return named.length === 0 ? own.open.job : crewTags(named, words);
  };
  const ground = words.record.ground[isNec(plan.basis) ? 'nec' : 'iec'];
  const at = ({ wire, to }: Pick<BuiltVolts, 'wire' | 'to'>): string =>
    `${crewWire(wire, words)}/${to === null ? ground : crewWire(to, words)}`;
  return {
    changed: {
      heading: changed.heading,
      none: changed.none,
      columns: { ...changed.columns },
      rows: changeRows(plan, built.changes, own, at).map((row) => ({ ...row, tags: tagsText(row.tags) })),
    },
    open: openView(built, own.open, tagsText),
    due: {
      heading: due.heading,
      none: due.none,
      columns: { ...due.columns },
      rows: shared(
        built.due.map((one) => ({
          tag: one.tag,
          what: dueText(one, words, own),
          on: one.reading === null && one.on !== '' ? one.on : due.whenSeen,
        })),
        tagsText,
      ),
    },
  };
}
