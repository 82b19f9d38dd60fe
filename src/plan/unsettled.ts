import { isNec, type Basis } from '../model/words.js';
import type { Candidate } from './choose.js';
import type { Requirement } from './rate.js';

/** A rule that the part at a place fails, or that can't be said to be met there, and why. */
export interface Unsettled {
  readonly rule: string;
  readonly because: string;
  /** True where the part is known to fail; false where a person has to confirm. */
  readonly fails: boolean;
}

/**
 * What of the rules about parts can't be called met at a place: failures of a part that stays all the same (chosen by hand, or
 * there already), its shortfalls, a fault current that nobody states, and with `iec` a part
 * that is listed to UL 1449 alone.
 * @param held how the part holds against the rules; undefined: no part, or nothing to hold it against
 */
export function unsettledOf(
  basis: Basis,
  requirement: Requirement,
  held: Candidate | undefined,
): readonly Unsettled[] {
  if (!held) return [];
  const found: Unsettled[] = [
    ...held.failures.map(({ rule, because }) => ({ rule, because, fails: true })),
    ...held.shortfalls.map(({ rule, says }) => ({ rule, because: says, fails: false })),
  ];
  if (requirement.sccrState === 'unknown') {
    found.push({ rule: 'rate/short-circuit', because: requirement.sccrBecause, fails: false });
  }
  if (!isNec(basis) && held.part.iecClass === null) {
    found.push({ rule: 'rate/listing', because: 'its part states no IEC class', fails: false });
  }
  return found;
}
