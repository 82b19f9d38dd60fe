import type { Fact } from '../../model/fact.js';
import type { Field } from '../../model/list.js';
import { note } from '../../model/message.js';
import { KIND_CONTRADICTS } from '../../model/messages/list.js';
import type { Note } from '../../model/open-item.js';
import { visible } from '../../words/visible.js';

/** Facts while a row is read. */
export type RowInHand = { [F in Field]?: Fact<unknown> };

/** What the word of a kind states beside the kind: `rapid shutdown` is a disconnect, and its `rapid_shutdown` is yes. */
export interface AlsoStated {
  readonly field: Field;
  readonly value: unknown;
}

/**
 * Takes what the word of a row's kind states beside the kind, unless the row states that field itself.
 * @param facts of the row; what the word states is added
 * @param unreadable fields whose cells an item stands for already
 * @param also what the word states
 * @param name of the row in a note: its tag, in a library its maker and model
 * @returns a note, and the field that it is about, where the row states otherwise and both can't be so
 */
export function takeAlsoStated(
  facts: RowInHand,
  unreadable: ReadonlySet<Field>,
  also: AlsoStated,
  name: string,
): Note | null {
  const { field, value } = also;
  const { kind } = facts;
  const own = facts[field];
  if (kind === undefined || unreadable.has(field)) return null;
  if (own === undefined) {
    facts[field] = { value, origin: kind.origin, text: kind.text };
    return null;
  }
  // A box of that name that is none, or isn't any more: the row may say so.
  if (own.value === value || field === 'rapid_shutdown') return null;
  return note(KIND_CONTRADICTS, {
    tag: visible(name),
    word: visible(kind.text),
    field,
    text: visible(own.text),
  });
}
