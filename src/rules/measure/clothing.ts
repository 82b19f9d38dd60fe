import { amperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';

const AS_USUAL = reason('clothing/as-usual');

/** Against what someone is dressed who opens a live enclosure. */
export interface ClothingNeeded {
  /** True where it is settled before anything else. */
  readonly first: boolean;
  readonly says: Reason;
}

/**
 * Shock and arc-flash protection of whoever opens a live enclosure: everywhere; settled first of all where the fault current is over
 * the limit, or not known. A control circuit has none to speak of.
 * @param f A, undefined where it isn't known; whether the place is a control circuit; A, the setting `clothingFaultCurrent`
 * Source: NFPA 70E 130.5 and 130.7 (values from memory); the limit: common practice, no source.
 */
export function clothingNeeded(f: {
  readonly faultCurrent: number | undefined;
  readonly isControl: boolean;
  readonly limit: number;
}): ClothingNeeded {
  const { faultCurrent, isControl, limit } = f;
  if (isControl || (faultCurrent !== undefined && faultCurrent <= limit)) {
    return { first: false, says: AS_USUAL };
  }
  const values = {
    most: amperes(limit),
    faultCurrent: faultCurrent === undefined ? null : amperes(faultCurrent),
  };
  return { first: true, says: reason('clothing/settle-first', values) };
}
