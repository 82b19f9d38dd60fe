import type { Working } from '../model/fact.js';
import type { PlacedNote } from '../model/message.js';
import type { RatingDecision } from '../model/rule.js';
import type { SitePort } from '../model/site.js';
import type { AnyRatingRule, RatingFacts } from '../rules/rating-facts.js';
import type { Circuit } from '../rules/wiring-facts.js';
import { CURRENT_RULES, NOMINAL_CURRENT_RULE, VOLTAGE_RULES, WITHSTAND_RULE } from '../rules/rulebook.js';
import type { Placement } from './verdict.js';
import { carriedBy, ratingFacts } from './rating-facts.js';
import type { JobContext } from './survey-facts.js';

/** A figure with the rule that asks for it. */
export interface Asked {
  readonly rule: AnyRatingRule;
  readonly value: number;
  readonly working: Working;
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
  readonly sccrBecause: string;
  /** V; undefined: not known. */
  readonly withstand: (Asked & { readonly assumed: boolean }) | undefined;
  /** Every voltage rule that applied, the deciding one first. */
  readonly voltages: readonly Asked[];
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
  let unknown = false;
  const decisions = new Map<AnyRatingRule, RatingDecision>();
  for (const rule of VOLTAGE_RULES) {
    const decision = rule.decide(facts);
    decisions.set(rule, decision);
    if (decision.outcome === 'outside') continue;
    notes.push(...decision.notes);
    if (decision.outcome === 'unknown') unknown = true;
    else voltages.push({ rule, value: decision.value, working: decision.working });
  }
  voltages.sort((a, b) => b.value - a.value);
  const deciding = voltages[0];
  const said = deciding ? decisions.get(deciding.rule) : undefined;
  if (said?.outcome === 'asks') notes.push(...(said.whereItDecides ?? []));
  const mcov = unknown || current === undefined ? undefined : deciding;
  const nominal = NOMINAL_CURRENT_RULE.decide(facts);
  if (nominal.outcome !== 'asks') throw new Error('every place asks for a nominal discharge current');
  const own = voltages.find((v) => v.rule.id !== 'rate/inverter-link') ?? deciding;
  return {
    current,
    circuit,
    mcov,
    nominalCurrent: { rule: NOMINAL_CURRENT_RULE, value: nominal.value, working: nominal.working },
    ...faultCurrentOf(facts),
    withstand: withstandOf({ ...facts, withstandVoltage: facts.withstandVoltage ?? own?.value }),
    voltages,
    notes,
  };
}

function faultCurrentOf(facts: RatingFacts): Pick<Requirement, 'sccr' | 'sccrState' | 'sccrBecause'> {
  for (const rule of CURRENT_RULES) {
    const decision = rule.decide(facts);
    if (decision.outcome === 'outside') continue;
    if (decision.outcome === 'asks') {
      const sccr = { rule, value: decision.value, working: decision.working };
      return { sccr, sccrState: 'known', sccrBecause: '' };
    }
    const sccr = decision.atLeast && { rule, value: decision.atLeast.value, working: decision.atLeast };
    return { sccr, sccrState: 'unknown', sccrBecause: decision.because };
  }
  return { sccr: undefined, sccrState: 'not-asked', sccrBecause: '' };
}

function withstandOf(facts: RatingFacts): Requirement['withstand'] {
  const decision = WITHSTAND_RULE.decide(facts);
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
  const unknown = [a, b].find((r) => r.sccrState === 'unknown');
  return {
    current: a.current,
    circuit: a.circuit,
    mcov: most(a.mcov, b.mcov),
    nominalCurrent: a.nominalCurrent.value >= b.nominalCurrent.value ? a.nominalCurrent : b.nominalCurrent,
    sccr: either(a.sccr, b.sccr),
    sccrState: unknown ? 'unknown' : a.sccrState,
    sccrBecause: unknown?.sccrBecause ?? '',
    withstand: least(a.withstand, b.withstand),
    voltages: [...a.voltages, ...b.voltages].sort((x, y) => y.value - x.value),
    notes: [...a.notes, ...b.notes],
  };
}

function least(a: Requirement['withstand'], b: Requirement['withstand']): Requirement['withstand'] {
  if (!a || !b) return a ?? b;
  return a.value <= b.value ? a : b;
}

/** Withstand that place/grid-tie-ac holds a neighbour's protector against: that of the inverter. */
export function withstandOfPort(job: JobContext, placement: Placement, port: SitePort): number | undefined {
  return withstandOf(ratingFacts(job, placement, port))?.value;
}
