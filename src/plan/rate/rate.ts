import { reason, type Reason } from '../../model/reason.js';
import type { Source } from '../../model/fact.js';
import type { PlacedNote } from '../../model/open-item.js';
import type { RatingDecision } from '../../model/rule.js';
import type { SitePort } from '../../model/site.js';
import type { Working } from '../../model/step.js';
import type { AnyRatingRule, RatingFacts } from '../../rules/rating-facts.js';
import type { Circuit } from '../../rules/wiring-facts.js';
import {
  CURRENT_RULES,
  INVERTER_LINK_RULE,
  NOMINAL_CURRENT_RULE,
  VOLTAGE_RULES,
  WITHSTAND_RULE,
} from '../../rules/rulebook.js';
import type { Placement } from '../context/verdict.js';
import { carriedBy, ratingFacts, withstandFacts, type WithstandFacts } from './rating-facts.js';
import type { JobContext } from '../context/job-context.js';

/** A figure with the rule that asks for it. */
export interface Asked {
  readonly rule: AnyRatingRule;
  readonly value: number;
  readonly working: Working;
  /** V; what the withstand table is entered with, where that is less. */
  readonly withstandEntry?: number | undefined;
  /** Why it is only a bound; undefined: it is known. */
  readonly bound?: Reason | undefined;
  /** Those of the rule's sources that hold here; undefined: all of them. */
  readonly cites?: readonly Source[] | undefined;
}

/** What a rule says where it names no figure. */
export interface Unasked {
  readonly rule: string;
  readonly because: Reason;
}

/** What a placement asks of a part. */
export interface Requirement {
  readonly current: 'ac' | 'dc' | undefined;
  readonly circuit: Circuit;
  /** V; undefined: not known, so no part can be chosen. */
  readonly mcov: Asked | undefined;
  /** A. */
  readonly nominalCurrent: Asked;
  /** A; undefined: not asked, or not known. */
  readonly sccr: Asked | undefined;
  /** `unknown`: asked for, and nobody states it (or only a part of it). */
  readonly sccrState: 'known' | 'unknown' | 'not-asked';
  /** Why it isn't known; where it is, or isn't asked, that it is so. */
  readonly sccrBecause: Reason;
  /** V; undefined: not known. */
  readonly withstand: (Asked & { readonly assumed: boolean }) | undefined;
  /** Every voltage rule that applied, the deciding one first. */
  readonly voltages: readonly Asked[];
  /** Rules that would ask, but whose facts aren't known. */
  readonly unknown: readonly Unasked[];
  /** Rules that ask nothing of such a place. */
  readonly outside: readonly Unasked[];
  readonly notes: readonly PlacedNote[];
}

/** Rates one placement: what its worst conductor asks of a part, over all its ports. */
export function ratePlacement(job: JobContext, placement: Placement): Requirement {
  let joined: Requirement | undefined;
  for (const port of placement.ports) {
    const one = ratePort(job, placement, port);
    joined = joined ? join(joined, one) : one;
  }
  if (!joined) throw new Error('a placement without a port');
  return joined;
}

function ratePort(job: JobContext, placement: Placement, port: SitePort): Requirement {
  const facts = ratingFacts(job, placement, port);
  const { current, circuit } = carriedBy(port, placement.subject);
  const notes: PlacedNote[] = [];
  const voltages: Asked[] = [];
  const unknown: Unasked[] = [];
  const outside: Unasked[] = [];
  const decisions = new Map<AnyRatingRule, RatingDecision>();
  for (const rule of VOLTAGE_RULES) {
    const decision = rule.decide(facts);
    decisions.set(rule, decision);
    sort(rule, decision, unknown, outside);
    if (decision.outcome === 'outside') continue;
    notes.push(...decision.notes);
    if (decision.outcome === 'asks')
      voltages.push({
        rule,
        value: decision.value,
        working: decision.working,
        bound: decision.bound,
        withstandEntry: decision.withstandEntry,
      });
  }
  voltages.sort((a, b) => b.value - a.value);
  const deciding = voltages[0];
  const said = deciding ? decisions.get(deciding.rule) : undefined;
  if (said?.outcome === 'asks') notes.push(...(said.whereItDecides ?? []));
  const mcov = unknown.length > 0 || current === undefined ? undefined : deciding;
  const nominal = NOMINAL_CURRENT_RULE.decide(facts);
  if (nominal.outcome !== 'asks') throw new Error('every place asks for a nominal discharge current');
  const own = voltages.find((v) => v.rule !== INVERTER_LINK_RULE) ?? deciding;
  return {
    current,
    circuit,
    mcov,
    nominalCurrent: {
      rule: NOMINAL_CURRENT_RULE,
      value: nominal.value,
      working: nominal.working,
      cites: nominal.cites,
    },
    ...faultCurrentOf(facts, unknown, outside),
    withstand: withstandOf(facts, facts.withstandVoltage ?? own?.withstandEntry ?? own?.value, unknown),
    voltages,
    unknown,
    outside,
    notes,
  };
}

function sort(rule: AnyRatingRule, decision: RatingDecision, unknown: Unasked[], outside: Unasked[]): void {
  if (decision.outcome === 'asks') return;
  const { because } = decision;
  (decision.outcome === 'unknown' ? unknown : outside).push({ rule: rule.id, because });
}

const KNOWN = reason('fault-current/known');
const NOT_ASKED = reason('fault-current/not-asked');

function faultCurrentOf(
  facts: RatingFacts,
  unknown: Unasked[],
  outside: Unasked[],
): Pick<Requirement, 'sccr' | 'sccrState' | 'sccrBecause'> {
  let found: Pick<Requirement, 'sccr' | 'sccrState' | 'sccrBecause'> | undefined;
  for (const rule of CURRENT_RULES) {
    const decision = rule.decide(facts);
    if (decision.outcome !== 'outside' && found) continue;
    sort(rule, decision, unknown, outside);
    if (decision.outcome === 'asks') {
      const sccr = { rule, value: decision.value, working: decision.working };
      found = { sccr, sccrState: 'known', sccrBecause: KNOWN };
    } else if (decision.outcome === 'unknown') {
      const sccr = decision.atLeast && { rule, value: decision.atLeast.value, working: decision.atLeast };
      found = { sccr, sccrState: 'unknown', sccrBecause: decision.because };
    }
  }
  return found ?? { sccr: undefined, sccrState: 'not-asked', sccrBecause: NOT_ASKED };
}

/** The fault current at one port of a placement, A; undefined: not known, or not wholly. */
export function knownFaultCurrent(job: JobContext, placement: Placement, port: SitePort): number | undefined {
  const { sccr, sccrState } = faultCurrentOf(ratingFacts(job, placement, port), [], []);
  return sccrState === 'known' ? sccr?.value : undefined;
}

/** @param withstandVoltage V; what the table is entered with; undefined: not known */
function withstandOf(
  { tag, kind, impulseWithstand, overvoltageCategory }: WithstandFacts,
  withstandVoltage: number | undefined,
  unknown: Unasked[],
): Requirement['withstand'] {
  const decision = WITHSTAND_RULE.decide({
    tag,
    kind,
    impulseWithstand,
    overvoltageCategory,
    withstandVoltage,
  });
  sort(WITHSTAND_RULE, decision, unknown, []);
  if (decision.outcome !== 'asks') return undefined;
  return {
    rule: WITHSTAND_RULE,
    value: decision.value,
    working: decision.working,
    assumed: decision.assumed === true,
  };
}

/** The worst of two ports that share a protector. */
function join(a: Requirement, b: Requirement): Requirement {
  const most = (x: Asked | undefined, y: Asked | undefined): Asked | undefined =>
    x && y ? (x.value >= y.value ? x : y) : undefined;
  const either = (x: Asked | undefined, y: Asked | undefined): Asked | undefined =>
    x && y ? (x.value >= y.value ? x : y) : (x ?? y);
  const unstated = [a, b].find((r) => r.sccrState === 'unknown');
  return {
    current: a.current,
    circuit: a.circuit,
    mcov: most(a.mcov, b.mcov),
    nominalCurrent: a.nominalCurrent.value >= b.nominalCurrent.value ? a.nominalCurrent : b.nominalCurrent,
    sccr: either(a.sccr, b.sccr),
    sccrState: unstated ? 'unknown' : a.sccrState,
    sccrBecause: (unstated ?? a).sccrBecause,
    withstand: least(a.withstand, b.withstand),
    voltages: [...a.voltages, ...b.voltages].sort((x, y) => y.value - x.value),
    unknown: [...a.unknown, ...b.unknown],
    outside: [...a.outside, ...b.outside],
    notes: [...a.notes, ...b.notes],
  };
}

function least(a: Requirement['withstand'], b: Requirement['withstand']): Requirement['withstand'] {
  if (!a || !b) return a ?? b;
  return a.value <= b.value ? a : b;
}

/** Withstand that place/grid-tie-ac holds a neighbour's protector against: that of the inverter. */
export function withstandOfPort(job: JobContext, placement: Placement, port: SitePort): number | undefined {
  const facts = withstandFacts(job, placement.subject, port);
  return withstandOf(facts, facts.withstandVoltage, [])?.value;
}
