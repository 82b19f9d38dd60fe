import { isNec, type Basis } from '../../model/editions.js';
import { amperes } from '../../model/quantity.js';
import { reason, type Reason } from '../../model/reason.js';

/** Against what someone is dressed who opens a live enclosure. */
export interface ClothingNeeded {
  /** True where it is settled before anything else. */
  readonly first: boolean;
  readonly says: Reason;
}

/**
 * Shock and arc-flash protection of whoever opens a live enclosure: everywhere; settled first of all where the fault current is over
 * the limit, or one of the enclosure isn't known. A control circuit has none to speak of.
 * @param f basis of the job; A, undefined where it isn't known; A, then the highest of those that are; whether the place is a control circuit; A, the setting `clothingFaultCurrent`
 * Source: NFPA 70E 130.5 and 130.7 (values from memory); the limit: common practice, no source.
 */
export function clothingNeeded(f: {
  readonly basis: Basis;
  readonly faultCurrent: number | undefined;
  readonly known?: number | undefined;
  readonly isControl: boolean;
  readonly limit: number;
}): ClothingNeeded {
  const { faultCurrent, known, isControl, limit } = f;
  const practice = isNec(f.basis) ? 'nec' : 'iec';
  if (isControl || (faultCurrent !== undefined && faultCurrent <= limit)) {
    return { first: false, says: reason('clothing/as-usual', { practice }) };
  }
  const values = {
    practice,
    most: amperes(limit),
    faultCurrent: faultCurrent === undefined ? null : amperes(faultCurrent),
    known: faultCurrent !== undefined || known === undefined ? null : amperes(known),
  } as const;
  return { first: true, says: reason('clothing/settle-first', values) };
}
