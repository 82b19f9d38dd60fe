import type { FileLine } from '../model/fact.js';
import type { ListRow } from '../model/list.js';

/** Where a row stands. */
export function lineOf({ sheet, line }: ListRow): FileLine {
  return { file: sheet.file, line };
}
