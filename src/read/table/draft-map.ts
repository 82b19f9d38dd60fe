import { FIELD_NAMES } from '../../model/fields.js';
import type { Field } from '../../model/list.js';
import type { ColumnMap } from './column-map.js';
import { isUnsettled, mapKey } from './headings.js';
import type { Understood } from './table.js';

type Meaning = NonNullable<ColumnMap['columns']>[string];

/** A question that a draft leaves open: what was meant is for whoever corrects the map to say. */
const asked = (nearest: string | null): string => (nearest === null ? '?' : `? ${nearest}`);

const fieldOf = (name: string | null): Field | null => FIELD_NAMES.find((f) => f === name) ?? null;

/** What a draft says of one heading. */
function meaningOf({ field, how, unit, nearest }: Understood['columns'][number]): Meaning {
  const known = fieldOf(field);
  if (how === 'left-out') return null;
  if (known === null || how === 'refused') return asked(known ?? nearest);
  return unit === null ? known : { field: known, unit };
}

/**
 * A column map to correct by hand: every heading of a list as it was understood, and every word of its kinds, systems and yes/no columns
 * that wasn't; what isn't known is a question, `?` or `? nearest`, which is read as if the map said nothing of it.
 * @param understood how a list was understood
 * @param before a map that was there already: what it settles stays as it is
 */
export function draftColumnMap(understood: Understood, before: ColumnMap = {}): ColumnMap {
  const columns = new Map<string, readonly [string, Meaning]>();
  for (const [heading, meaning] of Object.entries(before.columns ?? {}))
    columns.set(mapKey(heading), [heading, meaning]);
  const seen = new Map<string, number>();
  for (const reading of understood.columns) {
    const occurrence = (seen.get(mapKey(reading.heading)) ?? 0) + 1;
    seen.set(mapKey(reading.heading), occurrence);
    const heading = occurrence > 1 ? `${reading.heading} #${occurrence}` : reading.heading;
    const known = columns.get(mapKey(heading));
    if (known === undefined || isUnsettled(known[1]))
      columns.set(mapKey(heading), [known?.[0] ?? heading, meaningOf(reading)]);
  }
  const { encoding, delimiter, headingLine, decimal } = understood;
  const mark = decimal === '.' || decimal === ',' ? { decimal } : {};
  const written = {
    ...(encoding === null ? {} : { encoding }),
    ...(delimiter === null ? {} : { delimiter }),
  };
  const words = wordsOf(understood, before);
  return {
    ...before,
    dialect: { ...written, headingLine, ...mark, ...before.dialect },
    columns: Object.fromEntries(columns.values()),
    ...(Object.keys(words).length === 0 ? {} : { words }),
  };
}

function wordsOf({ words }: Understood, before: ColumnMap): NonNullable<ColumnMap['words']> {
  const all: { [F in Field]?: { [word: string]: string } } = {};
  for (const field of FIELD_NAMES) {
    const mine = new Map(Object.entries(before.words?.[field] ?? {}));
    for (const { field: of, text, means, nearest } of words)
      if (of === field && means === null && !mine.has(text)) mine.set(text, asked(nearest));
    if (mine.size > 0) all[field] = Object.fromEntries(mine);
  }
  return all;
}
