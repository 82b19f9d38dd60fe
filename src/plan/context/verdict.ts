import { belongs, type Basis } from '../../model/editions.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { PlacementDecision } from '../../model/rule.js';
import type { SiteEquipment, SitePort } from '../../model/site.js';
import type { Kind, PortClass, Strength } from '../../model/words.js';
import type {
  AnyPlacementRule,
  PlacementFacts,
  PlacementReason,
  Withheld,
} from '../../rules/placement-facts.js';
import { PLACEMENT_RULES } from '../../rules/rulebook.js';
import { afterWaiving, type Waived } from '../../rules/waiving.js';
import type { Fitted } from './fitted-there.js';
import { placementFacts, type JobContext } from './job-context.js';

/** A decided place: one port, or several that share a protector, with every reason. */
export interface Placement {
  readonly ports: readonly SitePort[];
  /** The row whose `existing`, `protector` and lead length count; of a control circuit's other end: the control circuit. */
  readonly subject: SiteEquipment;
  readonly reasons: readonly PlacementReason[];
  readonly strength: Strength;
  /** What hangs there; absent: what is planned. */
  readonly fitted?: Fitted;
}

/** Why a rule put nothing at a port. */
export interface Refusal extends Withheld {
  readonly port: SitePort;
}

/** What the rules said about one port. */
export interface Verdict {
  readonly port: SitePort;
  reasons: readonly PlacementReason[];
  readonly refusals: Refusal[];
}

/** Does a rule look at this port under the job's basis? */
export function looksAt(
  rule: AnyPlacementRule,
  facts: Pick<PlacementFacts, 'basis' | 'port' | 'kind'>,
): boolean {
  return (
    belongs(rule.strength, facts.basis) &&
    rule.looksAt.ports.includes(facts.port) &&
    rule.looksAt.kinds.includes(facts.kind)
  );
}

type Looking = Map<PortClass, Map<Kind, readonly AnyPlacementRule[]>>;

/** By the rules themselves, which tests replace, then by basis. */
const looking = new WeakMap<typeof PLACEMENT_RULES, Map<Basis, Looking>>();

/** The placement rules that look at such a port: found once for each basis, class of port and kind. */
function rulesLookingAt(facts: PlacementFacts): readonly AnyPlacementRule[] {
  const { basis, port, kind } = facts;
  const rules = PLACEMENT_RULES;
  let byBasis = looking.get(rules);
  if (!byBasis) looking.set(rules, (byBasis = new Map<Basis, Looking>()));
  let byPort = byBasis.get(basis);
  if (!byPort) byBasis.set(basis, (byPort = new Map<PortClass, Map<Kind, readonly AnyPlacementRule[]>>()));
  let byKind = byPort.get(port);
  if (!byKind) byPort.set(port, (byKind = new Map<Kind, readonly AnyPlacementRule[]>()));
  let found = byKind.get(kind);
  if (!found) byKind.set(kind, (found = rules.filter((rule) => looksAt(rule, facts))));
  return found;
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
  const reasons: PlacementReason[] = [];
  const refusals: Refusal[] = [];
  for (const rule of rulesLookingAt(facts)) {
    const decision = rule.decide(facts);
    const { outcome, because } = decision;
    if (outcome !== 'waived' && decision.notes) notes.push(...decision.notes);
    if (outcome === 'placed') {
      const { strength, cites, unasked } = decision;
      const placing = { rule, strength, because };
      // Few cite or leave something out.
      reasons.push(
        cites || unasked ? { ...placing, ...(cites && { cites }), ...(unasked && { unasked }) } : placing,
      );
    } else {
      const cites = outcome === 'not-placed' ? decision.cites : undefined;
      const refusal: Refusal = { port, rule, because, open: isOpen(decision), waived: outcome === 'waived' };
      // Most cite nothing: a spread for each port and rule would be the dearest step of judging.
      refusals.push(cites ? { ...refusal, cites } : refusal);
    }
  }
  const verdict: Verdict = { port, reasons, refusals };
  waive(verdict, facts, notes);
  return verdict;
}

/** True where a fact that decides isn't known. */
export function isOpen(decision: PlacementDecision): boolean {
  return decision.outcome === 'not-placed' && decision.open === true;
}

/** What the list waives goes, unless a rule requires it. */
export function waive(verdict: Verdict, facts: PlacementFacts, notes: PlacedNote[]): void {
  if (verdict.reasons.length > 0) settle(verdict, afterWaiving(facts, verdict.reasons), notes);
}

/** Takes over what a decision about a whole port leaves of it. */
export function settle(
  verdict: Verdict,
  { reasons, withheld, notes }: Waived,
  collected: PlacedNote[],
): void {
  verdict.reasons = reasons;
  if (withheld) verdict.refusals.unshift({ ...withheld, port: verdict.port });
  collected.push(...notes);
}
