import { UL_1449_ED5_NOMINAL_CURRENTS, UL_1449_ED5_VPR } from '../model/ratings.js';

const VPR_SET: ReadonlySet<number> = new Set(UL_1449_ED5_VPR);
const IN_SET: ReadonlySet<number> = new Set(UL_1449_ED5_NOMINAL_CURRENTS);

/**
 * Whether a voltage is a VPR that UL 1449 assigns; another figure comes from an older edition's suppressed-voltage rating or
 * from elsewhere, and can't be compared.
 * @param volts V
 * Source: UL 1449 ed. 5, value from memory.
 */
export function isStandardVpr(volts: number): boolean {
  return VPR_SET.has(volts);
}

/**
 * Whether a current is a nominal discharge current that UL 1449 knows.
 * @param amperes A
 * Source: UL 1449 ed. 5, value from memory.
 */
export function isStandardNominalCurrent(amperes: number): boolean {
  return IN_SET.has(amperes);
}
