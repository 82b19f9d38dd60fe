import { told } from '../src/words/messages/told.js';
import type { MessageTold } from '../src/words/message-kit.js';

/** What an item says; of none, nothing. */
export function saidOf(
  item: { readonly code: string; readonly values: object } | null | undefined,
): Partial<MessageTold> {
  return item ? told(item) : {};
}
