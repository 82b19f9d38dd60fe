import type { Said } from '../../model/reason.js';
import type { PlacedNote } from '../../model/message.js';
import type { PlacementDecision } from '../../model/rule.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Strength } from '../../model/words.js';
import type { AnyPlacementRule, PlacementFacts } from '../../rules/placement-facts.js';
import { EXEMPTION_RULE, PLACEMENT_RULES } from '../../rules/rulebook.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { memo } from './memo.js';
import { placementFacts, type JobContext } from './job-context.js';

/** One rule's reason for a placement. */
export interface PlacementReason {
  readonly rule: AnyPlacementRule;
  readonly strength: Strength;
  readonly because: Said;
}

/** A decided place: one port, or several that share a protector, with every reason. */
export interface Placement {
  readonly ports: readonly SitePort[];
  /** The row whose `existing`, `protector` and lead length count; of a control circuit's other end: the control circuit. */
  readonly subject: SiteEquipment;
  readonly reasons: readonly PlacementReason[];
  readonly strength: Strength;
}

/** Why a rule put nothing at a port. */
export interface Refusal {
  readonly port: SitePort;
  readonly rule: string;
  readonly because: Said;
  /** True where a fact that decides isn't known. */
  readonly open?: boolean;
}

/** What the rules said about one port. */
export interface Verdict {
  readonly port: SitePort;
  reasons: PlacementReason[];
  readonly refusals: Refusal[];
}

/** Does a rule look at this port under the job's basis? */
export function looksAt(
  rule: AnyPlacementRule,
  facts: Pick<PlacementFacts, 'basis' | 'port' | 'kind'>,
): boolean {
  return (
    rule.strength[facts.basis] !== undefined &&
    rule.looksAt.ports.includes(facts.port) &&
    rule.looksAt.kinds.includes(facts.kind)
  );
}

const looking = memo<readonly AnyPlacementRule[]>();

/** The placement rules that look at such a port: found once for each basis, class of port and kind. */
function rulesLookingAt(facts: PlacementFacts): readonly AnyPlacementRule[] {
  return looking(PLACEMENT_RULES, `${facts.basis}|${facts.port}|${facts.kind}`, () =>
    PLACEMENT_RULES.filter((rule) => looksAt(rule, facts)),
  );
}

export function strongest(reasons: readonly PlacementReason[]): Strength {
  if (reasons.some((r) => r.strength === 'required')) return 'required';
  return reasons.some((r) => r.strength === 'recommended') ? 'recommended' : 'optional';
}

/**
 * What every placement rule that the site alone decides says about one port, merged: reasons together, and what is waived gone.
 * @param notes collects what the rules have to say
 */
export function judge(job: JobContext, port: SitePort, notes: PlacedNote[]): Verdict {
  const facts = placementFacts(job, port);
  const verdict: Verdict = { port, reasons: [], refusals: [] };
  for (const rule of rulesLookingAt(facts)) {
    const decision = rule.decide(facts);
    take(verdict, rule, decision, notes);
  }
  waive(verdict, facts, notes);
  return verdict;
}

/** True where a fact that decides isn't known. */
export function isOpen(decision: PlacementDecision): boolean {
  return decision.outcome === 'not-placed' && decision.open === true;
}

function take(
  verdict: Verdict,
  rule: AnyPlacementRule,
  decision: PlacementDecision,
  notes: PlacedNote[],
): void {
  if (decision.outcome !== 'waived') notes.push(...(decision.notes ?? []));
  if (decision.outcome === 'placed') {
    verdict.reasons.push({ rule, strength: decision.strength, because: decision.because });
  } else {
    const { because } = decision;
    verdict.refusals.push({ port: verdict.port, rule: rule.id, because, open: isOpen(decision) });
  }
}

/** The rules behind reasons, as a sentence names them. */
export const names = (reasons: readonly PlacementReason[]): string =>
  reasons.map((r) => r.rule.id).join(' and ');

/** What the list waives, and what holds nothing worth protecting, goes unless a rule requires it. */
export function waive(verdict: Verdict, facts: PlacementFacts, notes: PlacedNote[]): void {
  if (verdict.reasons.length === 0) return;
  const { tag } = facts;
  const required = verdict.reasons.filter((r) => r.strength === 'required');
  const exempt = EXEMPTION_RULE.decide(facts);
  if (exempt.outcome === 'waived') {
    if (required.length > 0) {
      const p = { tag, rules: names(required) };
      notes.push(about(PLACE_MESSAGES.nothingWorth, p, tag, 'worth_protecting'));
    } else {
      verdict.reasons = verdict.reasons.filter((r) => r.rule.id === 'place/asked');
      verdict.refusals.unshift({ port: verdict.port, rule: EXEMPTION_RULE.id, because: exempt.because });
    }
  }
  // A service of 230.67 is settled once it is known what stands at the next panels.
  if (facts.protect !== false || facts.kind === 'service') return;
  if (required.length > 0) {
    notes.push(about(PLACE_MESSAGES.cannotWaive, { tag, rules: names(required) }, tag, 'protect'));
  } else verdict.reasons = [];
}
