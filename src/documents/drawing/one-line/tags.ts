import { byNaturalOrder } from '../../../model/natural-order.js';
import { tagList } from '../../../words/tag-list.js';

/** Spans that are named; the schedule names all. */
const MOST_SPANS = 16;

/**
 * Tags in few words: `P-5 to P-30`, `ARR-E, ARR-W`.
 * @param tags in any order; one that comes twice is named once
 */
export function tagsInShort(tags: readonly string[]): string {
  const sorted = [...new Set(tags)].sort(byNaturalOrder);
  const spans = tagList(sorted).split(', ');
  if (spans.length <= MOST_SPANS) return spans.join(', ');
  return `${spans.slice(0, MOST_SPANS - 1).join(', ')} and others (see the schedule)`;
}
