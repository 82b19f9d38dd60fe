import { about } from '../model/message.js';
import { PLACE_MESSAGES } from '../model/messages/place.js';
import { reason } from '../model/reason.js';
import { isNec, type Basis } from '../model/editions.js';
import type { PlacementReason } from './placement-facts.js';
import { asked } from './place/asked.js';
import { service } from './place/service.js';
import { requiredBy, type Waived } from './waiving.js';

/** A service at which the list waives protection, and what stands at the panels that it feeds. */
export interface WaivedService {
  readonly basis: Basis;
  readonly tag: string;
  readonly reasons: readonly PlacementReason[];
  /** Of each next panel: whether it has a protector. */
  readonly nextPanels: readonly boolean[];
}

const NO = reason('asked/no');
const NO_BY_EXCEPTION = reason('asked/no-by-exception');

/**
 * `protect` `no` on a service: what isn't required goes; what NEC 230.67 requires goes only by the exception of 230.67(B),
 * where each next level of distribution equipment has a protector.
 */
export function waivedService({ basis, tag, reasons, nextPanels }: WaivedService): Waived {
  const rules = requiredBy(reasons);
  if (rules.length === 0) {
    return { reasons: [], withheld: { rule: asked, because: NO, waived: true }, notes: [] };
  }
  const excepted =
    isNec(basis) &&
    rules.every((rule) => rule === service.id) &&
    nextPanels.length > 0 &&
    nextPanels.every((hasProtector) => hasProtector);
  if (!excepted) {
    const note = about(PLACE_MESSAGES.cannotWaive, { tag, rules }, tag, 'protect');
    return { reasons, withheld: undefined, notes: [note] };
  }
  return {
    reasons: [],
    withheld: { rule: asked, because: NO_BY_EXCEPTION, waived: true },
    notes: [about(PLACE_MESSAGES.waivedByException, { tag }, tag, 'protect')],
  };
}
