import { holdsOf as cellsHold, type Holds } from '../../model/item-causes.js';
import type { Field } from '../../model/list.js';
import { editDistance, nearest } from '../../words/closeness.js';
import { headingKey, type HeadingIndex, type HeadingReading } from './headings.js';
import { holdsOf } from './holds.js';
import { nearByCells } from './near-by-cells.js';

/** A heading as it was found and understood. */
export interface Found<F extends string> {
  readonly heading: string;
  readonly index: number;
  readonly reading: HeadingReading<F>;
}

/** The nearest field of a heading that wasn't understood; `misspelt` where nothing else on the list is that field, and it must be settled. */
export type Near<F extends string> = ReadonlyMap<number, { readonly field: F; readonly misspelt: boolean }>;

/** So many unknown headings are compared with the fields. */
const MOST_COMPARED = 200;
/** A column of indices (`String #`, `Item no.`): it counts nothing, whatever field it looks like. */
const INDEX = /(?:#|\b(?:no|nr|num|number|index|idx|id)\.?)\s*$/i;

/** One slip of the hand, or two in a long word: such a heading may well be that field. */
function isSlip(heading: string, key: string): boolean {
  const most = heading.length < 4 ? 0 : heading.length < 9 ? 1 : 2;
  return most > 0 && editDistance(heading, key, most) <= most;
}

/** A field without which the rows of a list are none. */
const MUST: ReadonlySet<string> = new Set<Field>(['tag', 'kind', 'connects_to']);

/**
 * The field that each heading that wasn't understood comes nearest to: by its cells where these tell, else by its letters, unless its cells
 * can't be of that field.
 * @param found the headings
 * @param index what headings may mean
 * @param taken fields that another heading is
 * @param records of the file
 * @param first index of the first record under the heading that says something; -1: none
 */
export function nearFields<F extends string>(
  found: readonly Found<F>[],
  index: HeadingIndex<F>,
  taken: ReadonlyMap<F, readonly Found<F>[]>,
  records: readonly (readonly string[])[],
  first: number,
): Near<F> {
  const { vocabulary } = index;
  const near = new Map<number, { field: F; misspelt: boolean }>();
  const unknown = found.filter((f) => f.reading.how === 'unknown').slice(0, MOST_COMPARED);
  const fieldOf = (name: string | undefined): F | undefined => vocabulary.fields.find((f) => f === name);
  const tag = fieldOf('tag');
  const tags = (tag === undefined ? undefined : taken.get(tag)?.[0]?.index) ?? -1;
  const byCells =
    vocabulary.mapped === true
      ? nearByCells(
          records,
          first,
          unknown.map((f) => f.index),
          tags,
        )
      : new Map<number, Field>();
  for (const f of unknown) {
    const shown = fieldOf(byCells.get(f.index));
    if (shown !== undefined && !taken.has(shown)) {
      near.set(f.index, { field: shown, misspelt: MUST.has(shown) });
      continue;
    }
    const bare = headingKey(f.heading.replace(/[([][^()[\]]*[)\]]\s*$/, ''));
    const doubtful = index.doubtful.get(bare);
    const key = doubtful === undefined && bare.length > 2 ? nearest(bare, index.byKey.keys()) : null;
    const field = doubtful ?? (key === null ? undefined : index.byKey.get(key)?.field);
    if (field === undefined || (vocabulary.dimension(field) === 'pieces' && INDEX.test(f.heading))) continue;
    const misspelt =
      !taken.has(field) && (key === null ? vocabulary.decides?.(field) === true : isSlip(bare, key));
    if (misspelt || doubtful !== undefined || canHold(field, holdsOf(records, first, f.index)))
      near.set(f.index, { field, misspelt });
  }
  return near;
}

/** Words are no figures: a column of them isn't such a field, however near its heading is. */
function canHold(field: string, holds: Holds): boolean {
  return holds !== 'words' || cellsHold(field) !== 'figures';
}
