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
 * there already), its shortfalls, and a fault current that nobody states.
 * @param held how the part holds against the rules; undefined: no part, or nothing to hold it against
 */
export function unsettledOf(requirement: Requirement, held: Candidate | undefined): readonly Unsettled[] {
  if (!held) return [];
  const found: Unsettled[] = [
    ...held.failures.map(({ rule, because }) => ({ rule, because, fails: true })),
    ...held.shortfalls.map(({ rule, says }) => ({ rule, because: says, fails: false })),
  ];
  if (requirement.sccrState === 'unknown') {
    found.push({ rule: 'rate/short-circuit', because: requirement.sccrBecause, fails: false });
  }
  return found;
}
