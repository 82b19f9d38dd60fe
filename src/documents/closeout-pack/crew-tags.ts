import { byNaturalOrder } from '../../model/natural-order.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import { tagList } from '../../words/tag-list.js';

/**
 * Tags as a crew's pages name them: `P-1, P-2`; from four in a row on as a span, `P-5 a P-30`.
 * @param tags each once, in any order
 */
export function crewTags(tags: readonly string[], { span }: Pick<CrewPackWords, 'span'>): string {
  return tagList([...tags].sort(byNaturalOrder), span);
}
