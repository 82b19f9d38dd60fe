import { itemAt, note, type MessageKind } from '../model/message.js';
import type { OpenItem } from '../model/open-item.js';
import type { RecordOrigin } from '../model/record.js';
import { cellPlace, type AnyHeading } from '../model/site-form-rows.js';

/**
 * An item about a cell of a form.
 * @param origin of the row
 * @param heading of the cell
 * @param tag of the protector, or the equipment; `` the job
 */
export function itemOf<P extends object>(
  kind: MessageKind<P>,
  values: P,
  { file, line, columns }: RecordOrigin,
  heading: AnyHeading,
  tag: string,
): OpenItem {
  return itemAt(note(kind, values), cellPlace({ file, line, columns: columns ?? {} }, heading), tag, heading);
}
