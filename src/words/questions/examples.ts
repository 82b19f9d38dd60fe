import { FIELD_GUIDE } from '../../model/field-guide.js';
import type { Field } from '../../model/list.js';
import type { Kind } from '../../model/words.js';

/**
 * An answer that would be taken: it shows how to write, not what.
 * @param field a list may state
 * @param kind of the row, where it is known
 * @returns undefined for a field that no answer can state: what a row is called, and the job that it is of
 */
export function exampleOf(field: Field, kind: Kind | undefined): string | undefined {
  if (field === 'job' || field === 'tag') return undefined;
  // Where a quantity is asked about, one row is one equipment.
  if (field === 'quantity') return '1';
  return field === 'mounting' && kind === 'panel' ? 'surface' : FIELD_GUIDE[field].example;
}
