import { z } from 'zod';
import { pageMark } from '../../model/page-mark.js';

export const ContentsSchema = z.object({
  heading: z.string(),
  entries: z.array(
    z.object({
      id: z.string().describe('Of the section that it leads to'),
      name: z.string(),
      mark: z.string().describe('Stands where the number of its page is put in when it is printed'),
    }),
  ),
});
export type ContentsView = z.infer<typeof ContentsSchema>;

/** Marks have two digits. */
const MOST = 100;

/**
 * A table of contents.
 * @param sections by id and name, in their order
 */
export function contentsView(
  heading: string,
  sections: readonly (readonly [id: string, name: string])[],
): ContentsView {
  const entries = sections.slice(0, MOST).map(([id, name], index) => ({ id, name, mark: pageMark(index) }));
  return { heading, entries };
}
