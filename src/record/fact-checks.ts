import { RECORD_MESSAGES } from '../model/messages/record.js';
import type { OpenItem } from '../model/open-item.js';
import type { RecordFact } from '../model/record.js';
import type { FactAnew, FoundOtherwise } from './anew.js';
import { sameText } from './entries.js';
import { itemOf } from './items.js';

/** A figure may be written otherwise. */
function sameValue(a: string, b: string): boolean {
  if (sameText(a, b)) return true;
  const [x, y] = [Number(a.replace(',', '.')), Number(b.replace(',', '.'))];
  return a.trim() !== '' && b.trim() !== '' && x === y;
}

/** Whether an assumption was verified, and is otherwise. */
export function otherwise({ assumed, found }: RecordFact): boolean {
  return found !== '' && !sameValue(assumed, found);
}

/** An assumption that is a sentence has blanks: it holds, or it doesn't. */
const isField = (fact: string): boolean => /^[a-z][a-z0-9_]*$/.test(fact);

/** What planning anew tells of an assumption; `no-field`: it is a sentence, `untold`: nothing could be planned anew. */
export type FactTold = FactAnew | 'not-understood' | 'no-field' | 'untold';

/**
 * The checks of assumptions that were found otherwise.
 * @param told plans anew; null: of no field of the list
 */
export function factChecks(
  others: readonly RecordFact[],
  told: (fact: FoundOtherwise | null) => FactTold,
): OpenItem[] {
  return others.map((one) => {
    const { fact, tag, assumed, found, origin } = one;
    const ofField = isField(fact);
    const result = told(
      ofField ? { tag, field: fact, text: found, file: origin.file, line: origin.line } : null,
    );
    if (result === 'not-understood')
      return itemOf(
        RECORD_MESSAGES.cellWrong,
        { heading: 'found', text: found, cellFault: 'fact' },
        origin,
        'found',
        tag,
      );
    const changes = typeof result === 'string' ? [] : result.changes;
    const isFine = typeof result !== 'string' && changes.length === 0 && result.holdBack.length === 0;
    const kind = isFine ? RECORD_MESSAGES.factOther : RECORD_MESSAGES.factDecides;
    return itemOf(kind, { fact, tag, assumed, found, changes }, origin, 'found', tag);
  });
}
