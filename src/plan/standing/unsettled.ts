import type { Said } from '../../model/reason.js';
import { isNec, type Basis } from '../../model/words.js';
import {
  CLAMPING_RULE,
  INDICATION_RULE,
  LISTING_RULE,
  SHORT_CIRCUIT_RULE,
  TYPE_RULE,
} from '../../rules/rulebook.js';
import type { Candidate } from '../choose/choose.js';
import type { Requirement } from '../rate/rate.js';

/** A rule that the part at a place fails, or that can't be said to be met there, and why. */
interface Unsettled {
  readonly rule: string;
  readonly because: Said;
  /** True where the part is known to fail; false where a person has to confirm. */
  readonly fails: boolean;
}

/**
 * What of the rules about parts can't be called met at a place: failures of a part that stays all the same (chosen by hand, or
 * there already), its shortfalls, and what nobody states: the fault current, the withstand behind it, its own indicator or type,
 * and with `iec` the class of a part that is listed to UL 1449 alone.
 * @param held how the part holds against the rules
 */
export function unsettledOf(basis: Basis, requirement: Requirement, held: Candidate): readonly Unsettled[] {
  const { part } = held;
  const found: Unsettled[] = [
    ...held.failures.map(({ rule, because }) => ({ rule, because, fails: true })),
    ...held.shortfalls.map(({ rule, says }) => ({ rule, because: says, fails: false })),
  ];
  const confirm = (rule: string, because: Said): void => {
    found.push({ rule, because, fails: false });
  };
  if (requirement.sccrState === 'unknown') confirm(SHORT_CIRCUIT_RULE.id, requirement.sccrBecause);
  if (requirement.withstand === undefined) confirm(CLAMPING_RULE.id, 'the withstand behind it isn’t known');
  if (requirement.circuit === 'turbine' && requirement.current === 'ac')
    confirm(
      LISTING_RULE.id,
      'the phases of a turbine float: whether it must be listed for that isn’t settled',
    );
  if (isNec(basis)) {
    if (part.indicator === null) confirm(INDICATION_RULE.id, 'its indicator isn’t stated');
    if (part.type === null) confirm(TYPE_RULE.id, 'its type isn’t stated');
  } else if (part.iecClass === null) {
    for (const rule of [LISTING_RULE.id, TYPE_RULE.id]) confirm(rule, 'its part states no IEC class');
  }
  return found;
}
