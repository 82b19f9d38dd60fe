import { itemAt, note } from '../../model/message.js';
import { DECIMAL_UNSURE } from '../../model/messages/list-file.js';
import { CELL_WRONG } from '../../model/messages/list.js';
import type { OpenItem } from '../../model/open-item.js';
import type { JobDraft } from './job-drafts.js';

/** The values of an item of a wrong cell, as far as they are looked at. */
interface Looked {
  readonly text?: unknown;
  readonly problem?: unknown;
}

/**
 * One item for each file of which several figures can be read two ways: what is to be settled is its decimal mark, not each of them.
 * @param drafts the jobs as read
 */
export function decimalsUnsure(drafts: Iterable<JobDraft>): OpenItem[] {
  const byFile = new Map<string, OpenItem[]>();
  for (const { items } of drafts) {
    for (const item of items) {
      if (item.code !== CELL_WRONG.code || (item.values as Looked).problem !== 'two-ways') continue;
      const mine = byFile.get(item.file);
      if (mine) mine.push(item);
      else byFile.set(item.file, [item]);
    }
  }
  return [...byFile.values()].flatMap((items) => {
    const [first] = items;
    if (first === undefined || items.length < 2) return [];
    const { file, line, column } = first;
    const { text } = first.values as Looked;
    const found = typeof text === 'string' ? text : '';
    return [itemAt(note(DECIMAL_UNSURE, { count: items.length, found }), { file, line, column })];
  });
}
