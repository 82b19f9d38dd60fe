import { reason, reasonKey, type Reason } from '../../model/reason.js';
import type { PlannedStanding } from '../../model/plan.js';
import { belongs, BASES, type Basis } from '../../model/editions.js';
import { STANDINGS, type Kind, type Standing, type Strength } from '../../model/words.js';
import { ALL_RULES, FIT_RULES, PLACEMENT_RULES, REACH_RULE, WIRING_RULES } from '../../rules/rulebook.js';
import type { PrintedRule } from '../../model/rule.js';
import type { SitePort } from '../../model/site.js';
import type { AnyFitRule } from '../../rules/fit-facts.js';
import type { AnyPlacementRule } from '../../rules/placement-facts.js';
import type { Made } from '../make/made.js';
import { placeOf } from '../choose/requirements.js';
import { memo } from '../context/memo.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import { unsettledOf } from './unsettled.js';
import type { Refusal, Verdict } from '../context/verdict.js';

/** What placement rules said where another rule put a protector. */
interface Overruled {
  readonly verdicts: readonly Verdict[];
  readonly refusals: readonly Refusal[];
}

/** How a job stands to the rules of its basis. */
export interface Standings {
  /** In the rulebook's order; of one rule in the order of the words. */
  readonly standings: readonly PlannedStanding[];
  /** Rules that decided something at a protector. */
  readonly fired: ReadonlySet<string>;
}

/** Rules of a basis, in the rulebook's order. */
const RULES_OF: ReadonlyMap<Basis, readonly PrintedRule[]> = new Map(
  BASES.map((basis) => [basis, ALL_RULES.filter((rule) => belongs(rule.sources, basis))]),
);
/** Rules that cite a clause of a standard under a basis, not common practice alone. */
const CITING: ReadonlyMap<Basis, readonly PrintedRule[]> = new Map(
  BASES.map((basis) => [
    basis,
    ALL_RULES.filter((rule) => rule.sources[basis]?.some((source) => !('commonPractice' in source))),
  ]),
);
const PLACING = new Map([...PLACEMENT_RULES, REACH_RULE].map((rule) => [rule.id, rule]));
const FITTING: ReadonlyMap<string, AnyFitRule> = new Map(FIT_RULES.map((rule) => [rule.id, rule]));

/**
 * How a job stands to every rule that fired, to every placement rule that put nothing at a port without a protector, and to
 * every other rule of its basis that cites a clause of a standard.
 * @param made the protectors of the plan
 * @param bare what was said at its ports without a protector
 * @param overruled what placement rules said where they put nothing and another put something; those of reach everywhere
 */
export function standingsOf(
  job: JobContext,
  made: readonly Made[],
  bare: readonly Refusal[],
  overruled: Overruled,
): Standings {
  const basis = job.site.basis.value;
  const book = openBook();
  for (const one of made) {
    const { tag } = one.protector;
    for (const [rule, stands] of standingsAt(job, one)) book.add(rule, stands, tag);
  }
  const fired = new Set(book.rules());
  for (const refusal of bare) book.add(refusal.rule.id, refused(refusal), portOf(refusal));
  const known = new Set(book.rules());
  for (const { id } of CITING.get(basis) ?? []) {
    if (fired.has(id)) continue;
    if (PLACING.has(id)) notPlacedBy(id, job, bare, overruled, book, known.has(id));
    else if (!known.has(id)) notAskedBy(id, job, made, book);
  }
  return { standings: book.sorted(basis), fired };
}

function not(because: Reason): Stands {
  return { standing: 'does not apply', because };
}

interface Stands {
  readonly standing: Standing;
  readonly because: Reason | null;
}

interface Book {
  readonly add: (rule: string, stands: Stands, at: string) => void;
  readonly rules: () => Iterable<string>;
  readonly sorted: (basis: Basis) => PlannedStanding[];
}

/** One entry for what is alike but for where it is. */
function openBook(): Book {
  const byRule = new Map<string, Map<string, PlannedStanding>>();
  return {
    add: (rule, { standing, because }, at) => {
      let entries = byRule.get(rule);
      if (!entries) {
        entries = new Map();
        byRule.set(rule, entries);
      }
      const key = because === null ? standing : `${standing}|${reasonKey(because)}`;
      const there = entries.get(key);
      if (!there) entries.set(key, { rule, standing, at: at === '' ? [] : [at], because });
      else if (at !== '') there.at.push(at);
    },
    rules: () => byRule.keys(),
    sorted: (basis) => {
      const found: PlannedStanding[] = [];
      for (const { id } of RULES_OF.get(basis) ?? []) {
        const entries = byRule.get(id);
        if (!entries) continue;
        if (entries.size === 1) found.push(...entries.values());
        else found.push(...[...entries.values()].sort((a, b) => rank(a) - rank(b)));
      }
      // A rule may say the same twice of one port: a control circuit's other end is asked once a circuit.
      for (const one of found) if (one.because !== null) one.at = [...new Set(one.at)];
      return found;
    },
  };
}

const rank = ({ standing }: PlannedStanding): number => STANDINGS.indexOf(standing);
const MET: Stands = { standing: 'met', because: null };
/** A rule that places is met as it asks: what is recommended here no code requires. */
const AS_PLACED: { readonly [S in Strength]: Stands } = {
  required: { standing: 'met', because: reason('standing/placed', { strength: 'required' }) },
  recommended: { standing: 'met', because: reason('standing/placed', { strength: 'recommended' }) },
  optional: { standing: 'met', because: reason('standing/placed', { strength: 'optional' }) },
};
const OPEN: Stands = { standing: 'open', because: reason('standing/no-part') };
const NOT_RATED: Stands = { standing: 'to confirm', because: reason('standing/not-rated') };
const NOT_KNOWN: Stands = { standing: 'to confirm', because: reason('standing/ratings-unknown') };
const NO_PROTECTOR = not(reason('standing/no-protector'));
const NO_SUCH_CHANNEL = not(reason('standing/no-such-channel'));

/** How one protector stands to each rule that decided something there. */
function standingsAt(job: JobContext, made: Made): ReadonlyMap<string, Stands> {
  const { from, channelRules } = made;
  const { requirement } = from;
  const byPart = standingsOfPart(job, from);
  const found = new Map(byPart);
  const { nominalCurrent, sccr, withstand, voltages } = requirement;
  for (const asked of [nominalCurrent, sccr, withstand, ...voltages]) {
    if (!asked) continue;
    const stands = byPart.get(asked.rule.answers);
    if (stands) found.set(asked.rule.id, doubtful(stands, asked));
  }
  const isSettled = from.part !== undefined || from.existing !== '';
  for (const { rule, because } of requirement.unknown) {
    found.set(rule, { standing: isSettled ? 'to confirm' : 'open', because });
  }
  for (const { rule, strength, unasked } of from.placement.reasons)
    found.set(rule.id, unasked ? not(unasked.because) : isSettled ? AS_PLACED[strength] : OPEN);
  // What is there already was wired by somebody else: the plan says how it should be.
  const wired = from.part ? MET : from.existing === '' ? OPEN : NOT_KNOWN;
  const { conductors, leads } = WIRING_RULES;
  for (const rule of [conductors.id, leads.id, ...channelRules]) found.set(rule, wired);
  if (from.wirings.some((w) => w.neutral.neutral !== 'none')) found.set(WIRING_RULES.neutral.id, wired);
  return found;
}

const ofParts = memo<ReadonlyMap<string, Stands>>();

/** Nothing is met by a part that is candidate against a bound alone: what the place really asks isn't known. */
function doubtful(stands: Stands, { bound }: { readonly bound?: Reason | undefined }): Stands {
  return stands === MET && bound !== undefined ? { standing: 'to confirm', because: bound } : stands;
}

/** Several reasons as one, each once. */
function allOf(reasons: readonly Reason[]): Reason {
  const each = [...new Map(reasons.map((one) => [reasonKey(one), one])).values()];
  return each.length === 1 && each[0] !== undefined ? each[0] : reason('several', { reasons: each });
}

/** The rules about parts that ask something here. */
function standingsOfPart(job: JobContext, from: Selected): ReadonlyMap<string, Stands> {
  const { candidate, requirement } = from;
  if (!candidate) return assessed(job, from);
  // A part is candidate against one specification, which has every other fact that decides here.
  const { sccrState, sccrBecause, withstand } = requirement;
  const key = `${sccrState}|${withstand === undefined}|${reasonKey(sccrBecause)}`;
  return ofParts(candidate, key, () => assessed(job, from));
}

function assessed(job: JobContext, from: Selected): ReadonlyMap<string, Stands> {
  const { part, candidate, existing, placement, requirement, specification } = from;
  const place = placeOf(job, placement, requirement);
  const unsettled =
    candidate && specification ? unsettledOf(job.settings, requirement, specification, candidate) : [];
  const found = new Map<string, Stands>();
  for (const rule of FIT_RULES) {
    if (rule.outside?.(place) !== undefined) continue;
    const doubts = unsettled.filter((u) => u.rule === rule.id);
    const because = allOf(doubts.map((u) => u.because));
    if (!part) found.set(rule.id, existing === '' ? OPEN : NOT_KNOWN);
    else if (!candidate) found.set(rule.id, NOT_RATED);
    else if (doubts.length === 0) found.set(rule.id, MET);
    else found.set(rule.id, { standing: doubts.some((u) => u.fails) ? 'not met' : 'to confirm', because });
  }
  return found;
}

/** A placement rule that put nothing anywhere: what it said where another rule put something, else what isn't there. */
function notPlacedBy(
  rule: string,
  job: JobContext,
  bare: readonly Refusal[],
  overruled: Overruled,
  book: Book,
  isSaid: boolean,
): void {
  const said = [...overruled.verdicts.flatMap((v) => v.refusals), ...overruled.refusals].filter(
    (refusal) => refusal.rule.id === rule,
  );
  for (const refusal of said) book.add(rule, refused(refusal), portOf(refusal));
  if (said.length > 0 || isSaid) return;
  // Where the list takes away what the rule put, there is a port, and nothing of the rule is left at it.
  const taken = bare.filter(({ waived, port }) => waived === true && isAt(PLACING.get(rule), port));
  for (const refusal of taken) book.add(rule, not(refusal.because), portOf(refusal));
  if (taken.length === 0) book.add(rule, not(nothingThere(job, PLACING.get(rule)?.looksAt.kinds ?? [])), '');
}

const isAt = (rule: AnyPlacementRule | undefined, { cls, equipment }: SitePort): boolean =>
  rule?.looksAt.ports.includes(cls) === true && rule.looksAt.kinds.includes(equipment.kind);

const portOf = ({ port }: Refusal): string => `${port.equipment.tag} ${port.name}`;

/** A rule that follows the list is met where nothing stands because the list says so. */
function refused({ rule, because, open, outside }: Refusal): Stands {
  if (open === true) return { standing: 'open', because };
  return rule.waives === true && outside !== true ? { standing: 'met', because } : not(because);
}

/** Another rule that no protector rests on: why it asks for nothing at each. */
function notAskedBy(rule: string, job: JobContext, made: readonly Made[], book: Book): void {
  if (made.length === 0) {
    book.add(rule, NO_PROTECTOR, '');
    return;
  }
  const fit = FITTING.get(rule);
  let isSilent = true;
  for (const { from, protector } of made) {
    const because = fit
      ? fit.outside?.(placeOf(job, from.placement, from.requirement))
      : from.requirement.outside.find((u) => u.rule === rule)?.because;
    if (because === undefined) continue;
    isSilent = false;
    book.add(rule, not(because), protector.tag);
  }
  if (isSilent) book.add(rule, NO_SUCH_CHANNEL, '');
}

function nothingThere(job: JobContext, kinds: readonly Kind[]): Reason {
  const isThere = job.site.equipments.some((e) => kinds.includes(e.kind));
  return reason(isThere ? 'standing/no-port' : 'standing/no-equipment', { kinds });
}
