import type { PlacedNote } from '../model/open-item.js';
import { about } from '../model/message.js';
import { PLACE_MESSAGES } from '../model/messages/place.js';
import type { PlacementFacts, PlacementReason, Withheld } from './placement-facts.js';
import { asked } from './place/asked.js';
import { farEndExempt } from './place/far-end-exempt.js';

/** What is left of the reasons at a port once what the list waives is gone. */
export interface Waived {
  readonly reasons: readonly PlacementReason[];
  /** Said before what the rules refuse. */
  readonly withheld: Withheld | undefined;
  readonly notes: readonly PlacedNote[];
}

/**
 * What the list waives, and what holds nothing worth protecting, goes unless a rule requires it; what the list itself asks for
 * stays where nothing is worth protecting.
 * @param reasons what the rules placed at the port
 */
export function afterWaiving(facts: PlacementFacts, reasons: readonly PlacementReason[]): Waived {
  const { tag } = facts;
  const notes: PlacedNote[] = [];
  const rules = requiredBy(reasons);
  const exempt = farEndExempt.decide(facts);
  let left = reasons;
  let withheld: Withheld | undefined;
  if (exempt.outcome === 'waived') {
    if (rules.length > 0) {
      notes.push(about(PLACE_MESSAGES.nothingWorth, { tag, rules }, tag, 'worth_protecting'));
    } else {
      left = reasons.filter((r) => r.rule.id === asked.id);
      withheld = { rule: farEndExempt, because: exempt.because, waived: true };
    }
  }
  // A service of 230.67 is settled once it is known what stands at the next panels.
  if (facts.protect === false && facts.kind !== 'service') {
    if (rules.length > 0) notes.push(about(PLACE_MESSAGES.cannotWaive, { tag, rules }, tag, 'protect'));
    else left = [];
  }
  return { reasons: left, withheld, notes };
}

/**
 * Why the list takes away what is only recommended at a port.
 * @returns undefined where it doesn't
 */
export function waivedByList(facts: PlacementFacts): Withheld | undefined {
  for (const rule of [asked, farEndExempt]) {
    const decision = rule.decide(facts);
    if (decision.outcome === 'waived') return { rule, because: decision.because, waived: true };
  }
  return undefined;
}

/** The ids of the rules that require one there. */
export function requiredBy(reasons: readonly PlacementReason[]): readonly string[] {
  return reasons.filter((r) => r.strength === 'required').map((r) => r.rule.id);
}
