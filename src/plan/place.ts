import type { PlacedNote } from '../model/message.js';
import type { PlacementDecision } from '../model/rule.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import type { Strength } from '../model/words.js';
import type { AnyPlacementRule, PlacementFacts } from '../rules/placement-facts.js';
import { EXEMPTION_RULE, PLACEMENT_RULES } from '../rules/rulebook.js';
import { about } from '../text/message-kit.js';
import { PLACE_MESSAGES } from '../text/messages/place.js';
import { servicePlaceRun } from '../site/premises.js';
import { given } from './given.js';
import { hasMainPort, placementFacts, type JobContext } from './survey-facts.js';

/** One rule's reason for a placement. */
export interface Reason {
  readonly rule: AnyPlacementRule;
  readonly strength: Strength;
  readonly because: string;
}

/** A decided place: one port, or several that share a protector, with every reason. */
export interface Placement {
  readonly ports: readonly SitePort[];
  /** The row whose `existing`, `protector` and lead length count; of a control circuit's other end: the control circuit. */
  readonly subject: SiteEquipment;
  readonly reasons: readonly Reason[];
  readonly strength: Strength;
}

/** Why a rule put nothing at a port. */
export interface Refusal {
  readonly port: SitePort;
  readonly rule: string;
  readonly because: string;
}

/** What the site alone decides. */
export interface Placing {
  readonly placements: readonly Placement[];
  readonly refusals: readonly Refusal[];
  readonly notes: readonly PlacedNote[];
}

/** What the rules said about one port. */
interface Verdict {
  readonly port: SitePort;
  reasons: Reason[];
  readonly refusals: Refusal[];
}

/** Does a rule look at this port under the job's basis? */
export function looksAt(rule: AnyPlacementRule, facts: PlacementFacts): boolean {
  return (
    rule.strength[facts.basis] !== undefined &&
    rule.looksAt.ports.includes(facts.port) &&
    rule.looksAt.kinds.includes(facts.kind)
  );
}

export function strongest(reasons: readonly Reason[]): Strength {
  if (reasons.some((r) => r.strength === 'required')) return 'required';
  return reasons.some((r) => r.strength === 'recommended') ? 'recommended' : 'optional';
}

/**
 * Places what the site alone decides and merges it by port: reasons together, strongest strength.
 * @param job the job's context
 * @param more rules to ask beside those that the site alone decides; `nearest` for place/grid-tie-ac
 */
export function placeOnSite(job: JobContext): Placing {
  const notes: PlacedNote[] = [];
  const verdicts = new Map<SitePort, Verdict>();
  for (const equipment of job.site.equipments) {
    if (equipment.facts.protect?.value === true && !hasMainPort(equipment.kind)) {
      const p = { tag: equipment.tag, kind: equipment.kind };
      notes.push(about(PLACE_MESSAGES.noMainPort, p, equipment.tag, 'protect'));
    }
    if (equipment.kind === 'other') {
      notes.push(about(PLACE_MESSAGES.otherKind, { tag: equipment.tag }, equipment.tag, 'kind'));
    }
    for (const port of equipment.ports) {
      if (
        port.cls === 'terminals' &&
        equipment.kind !== 'control-circuit' &&
        equipment.kind !== 'signal-line'
      )
        continue;
      verdicts.set(port, judge(job, port, notes));
    }
  }
  moveToService(job, verdicts);
  waiveServices(job, verdicts, notes);
  const placements: Placement[] = [];
  const refusals: Refusal[] = [];
  for (const equipment of job.site.equipments) {
    for (const port of equipment.ports) {
      const verdict = verdicts.get(port);
      if (!verdict) continue;
      if (verdict.reasons.length === 0) refusals.push(...verdict.refusals);
      else {
        const { reasons } = verdict;
        placements.push({ ports: [port], subject: equipment, reasons, strength: strongest(reasons) });
      }
    }
  }
  const others = otherEnds(job, verdicts, notes);
  return {
    placements: [...placements, ...others.placements],
    refusals: [...refusals, ...others.refusals, ...silentPorts(job, verdicts)],
    notes,
  };
}

function judge(job: JobContext, port: SitePort, notes: PlacedNote[]): Verdict {
  const facts = placementFacts(job, port);
  const verdict: Verdict = { port, reasons: [], refusals: [] };
  for (const rule of PLACEMENT_RULES) {
    if (!looksAt(rule, facts)) continue;
    const decision = rule.decide(given(rule, facts));
    take(verdict, rule, decision, notes);
  }
  waive(verdict, facts, notes);
  return verdict;
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
  } else verdict.refusals.push({ port: verdict.port, rule: rule.id, because: decision.because });
}

const names = (reasons: readonly Reason[]): string => reasons.map((r) => r.rule.id).join(' and ');

/** What the list waives, and what holds nothing worth protecting, goes unless a rule requires it. */
function waive(verdict: Verdict, facts: PlacementFacts, notes: PlacedNote[]): void {
  if (verdict.reasons.length === 0) return;
  const { tag } = facts;
  const required = verdict.reasons.filter((r) => r.strength === 'required');
  const exempt = EXEMPTION_RULE.decide(given(EXEMPTION_RULE, facts));
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

/** A panel that is the service's place has no place of its own: what a rule asks for there is asked of the service. */
function moveToService(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): void {
  const limit = job.settings.thresholds.servicePlaceRun;
  for (const verdict of verdicts.values()) {
    if (verdict.reasons.length === 0 || verdict.port.equipment.kind !== 'panel') continue;
    const service = servicePlaceRun(verdict.port, limit)?.from;
    const there = service && verdicts.get(service);
    if (!service || !there || there.reasons.length === 0) continue;
    const stay = verdict.reasons.filter(
      (r) => r.rule.id === 'place/asked' || r.rule.id === 'place/wind-premises',
    );
    for (const reason of verdict.reasons) {
      if (stay.includes(reason) || there.reasons.some((r) => r.rule.id === reason.rule.id)) continue;
      there.reasons.push({
        ...reason,
        because: `${reason.because} (at ${verdict.port.equipment.tag}, which stands at this service)`,
      });
    }
    if (stay.length === 0 && verdict.reasons.length > 0) {
      const because = `it stands at the service ${service.equipment.tag}, whose protector is its protector`;
      verdict.refusals.unshift({ port: verdict.port, rule: 'place/service', because });
    }
    verdict.reasons = stay;
  }
}

/** `protect` `no` on a service: what isn't required goes; what 230.67 requires goes only by its exception. */
function waiveServices(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>, notes: PlacedNote[]): void {
  for (const verdict of verdicts.values()) {
    const { equipment } = verdict.port;
    if (equipment.kind !== 'service' || equipment.facts.protect?.value !== false) continue;
    const { tag } = equipment;
    const required = verdict.reasons.filter((r) => r.strength === 'required');
    const because = 'the list says protect "no"';
    if (required.length === 0) {
      verdict.reasons = [];
      verdict.refusals.unshift({ port: verdict.port, rule: 'place/asked', because });
      continue;
    }
    const next = [...verdicts.values()].filter(
      (v) => v.port.equipment.kind === 'panel' && v.port.feeders.includes(verdict.port),
    );
    const excepted =
      job.site.basis.value !== 'iec' &&
      required.every((r) => r.rule.id === 'place/service') &&
      next.length > 0 &&
      next.every((v) => v.reasons.length > 0);
    if (excepted) {
      verdict.reasons = [];
      verdict.refusals.unshift({
        port: verdict.port,
        rule: 'place/asked',
        because: `${because}, and each next panel has a protector (230.67(B) exception)`,
      });
      notes.push(about(PLACE_MESSAGES.waivedByException, { tag }, tag, 'protect'));
    } else notes.push(about(PLACE_MESSAGES.cannotWaive, { tag, rules: names(required) }, tag, 'protect'));
  }
}

/** The other end of a control circuit that has a protector: a place of its own for each circuit. */
function otherEnds(
  job: JobContext,
  verdicts: ReadonlyMap<SitePort, Verdict>,
  notes: PlacedNote[],
): { placements: Placement[]; refusals: Refusal[] } {
  const placements: Placement[] = [];
  const refusals: Refusal[] = [];
  for (const circuit of job.site.equipments) {
    if (circuit.kind !== 'control-circuit') continue;
    const own = circuit.ports[0];
    const verdict = own && verdicts.get(own);
    if (!own || !verdict) continue;
    const decided = placementDecisionOf(job, own);
    for (const run of own.runs) {
      const port = run.from === own ? run.to : run.from;
      if (port.equipment.kind === 'control-circuit') continue;
      const facts = placementFacts(job, port);
      if (decided.outcome !== 'placed') {
        refusals.push({ port, rule: 'place/control', because: `${circuit.tag}: ${decided.because}` });
        continue;
      }
      const there: Verdict = { port, reasons: [], refusals: [] };
      const because = `the other end of the control circuit ${circuit.tag}: ${decided.because}`;
      there.reasons.push({ rule: decided.rule, strength: decided.strength, because });
      waive(there, facts, notes);
      if (circuit.facts.protect?.value === false || there.reasons.length === 0) {
        refusals.push({
          port,
          rule: EXEMPTION_RULE.id,
          because: 'the list waives this end of the control circuit',
        });
      } else {
        placements.push({
          ports: [port],
          subject: circuit,
          reasons: there.reasons,
          strength: strongest(there.reasons),
        });
      }
    }
  }
  return { placements, refusals };
}

function placementDecisionOf(
  job: JobContext,
  port: SitePort,
):
  | { outcome: 'placed'; rule: AnyPlacementRule; strength: Strength; because: string }
  | { outcome: 'not-placed'; because: string } {
  const rule = PLACEMENT_RULES.find((r) => r.id === 'place/control');
  if (!rule) return { outcome: 'not-placed', because: 'no rule for control circuits' };
  const decision = rule.decide(given(rule, placementFacts(job, port)));
  return decision.outcome === 'placed'
    ? { outcome: 'placed', rule, strength: decision.strength, because: decision.because }
    : { outcome: 'not-placed', because: decision.because };
}

/** Ports that no rule looks at: what stands there takes no protector of its own, and says so. */
function silentPorts(job: JobContext, verdicts: ReadonlyMap<SitePort, Verdict>): Refusal[] {
  const refusals: Refusal[] = [];
  for (const equipment of job.site.equipments) {
    for (const port of equipment.ports) {
      if (verdicts.has(port)) continue;
      if (equipment.kind === 'transfer-switch') {
        const because =
          'a transfer switch has no protector of its own: what it connects is protected at its ends';
        refusals.push({ port, rule: 'place/long-run', because });
      } else if (equipment.kind === 'other') {
        refusals.push({ port, rule: 'place/asked', because: 'no rule looks at equipment of kind other' });
      }
    }
  }
  return refusals;
}
