import type { Reason } from '../../model/reason.js';
import type { Settings } from '../../model/settings.js';
import type { DoubtFacts } from '../../rules/fit-facts.js';
import { FIT_RULES } from '../../rules/rulebook.js';
import type { Candidate, Specification } from '../choose/choose.js';
import type { Requirement } from '../rate/rate.js';

/** A rule that the part at a place fails, or that can't be said to be met there, and why. */
interface Unsettled {
  readonly rule: string;
  readonly because: Reason;
  /** True where the part is known to fail; false where a person has to confirm. */
  readonly fails: boolean;
}

/**
 * What of the rules about parts can't be called met at a place: failures of a part that stays all the same (chosen by hand, or
 * there already), its shortfalls, and what each rule doubts as nobody states it.
 * @param specification what the place asks of a part
 * @param candidate how the part stands against the rules
 */
export function unsettledOf(
  settings: Settings,
  requirement: Requirement,
  specification: Specification,
  candidate: Candidate,
): readonly Unsettled[] {
  const { part, leadVoltage } = candidate;
  const facts: DoubtFacts = {
    ...specification,
    part,
    leadVoltage,
    thresholds: settings.thresholds,
    sccrUnknown: requirement.sccrState === 'unknown' ? requirement.sccrBecause : undefined,
  };
  return [
    ...candidate.failures.map(({ rule, because }) => ({ rule, because, fails: true })),
    ...candidate.shortfalls.map(({ rule, says }) => ({ rule, because: says, fails: false })),
    ...FIT_RULES.flatMap((rule) => {
      const because = rule.doubt?.(facts);
      return because === undefined ? [] : [{ rule: rule.id, because, fails: false }];
    }),
  ];
}
