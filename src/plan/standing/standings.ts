import { reason, reasonKey, type Reason } from '../../model/reason.js';
import type { PlannedStanding } from '../../model/plan.js';
import { BASES, type Basis } from '../../model/editions.js';
import type { Kind, Standing, Strength } from '../../model/words.js';
import { ALL_RULES, FIT_RULES, PLACEMENT_RULES, REACH_RULE, WIRING_RULES } from '../../rules/rulebook.js';
import type { PrintedRule } from '../../model/rule.js';
import type { SitePort } from '../../model/site.js';
import type { AnyFitRule, FitPlace } from '../../rules/fit-facts.js';
import type { AnyPlacementRule } from '../../rules/placement-facts.js';
import type { PortDevice } from '../make/overcurrent.js';
import type { Made } from '../make/made.js';
import { placeOf } from '../choose/requirements.js';
import { memo } from '../context/memo.js';
import type { Selected } from '../choose/select.js';
import type { JobContext } from '../context/job-context.js';
import { openBook, type Book } from './standing-book.js';
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
    for (const [rule, { standing, because }] of standingsAt(job, one)) book.add(rule, standing, because, tag);
  }
  const fired = new Set(book.rules());
  for (const refusal of bare) book.add(refusal.rule.id, refused(refusal), refusal.because, refusal.port);
  const known = new Set(book.rules());
  const said = refusalsByRule(overruled);
  const places = made.map(({ from }) => placeOf(job, from.placement, from.requirement));
  const waived = bare.filter((refusal) => refusal.waived === true);
  for (const { id } of CITING.get(basis) ?? []) {
    const placing = PLACING.get(id);
    if (fired.has(id)) {
      // It asks elsewhere: where it names a clause that doesn't ask, and another rule put something, nobody shall take it for met.
      for (const refusal of (placing && said.get(id)) ?? [])
        if (refusal.cites) book.add(id, refused(refusal), refusal.because, refusal.port);
    } else if (placing) notPlacedBy(placing, job, waived, said.get(id) ?? [], book, known.has(id));
    else if (!known.has(id)) notAskedBy(id, made, places, book);
  }
  return { standings: book.sorted(basis), fired };
}

interface Stands {
  readonly standing: Standing;
  readonly because: Reason | null;
}

function not(because: Reason): Stands {
  return { standing: 'does not apply', because };
}

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
const NO_PROTECTOR = reason('standing/no-protector');
const NO_SUCH_CHANNEL = reason('standing/no-such-channel');

/** How one protector stands to each rule that decided something there. */
function standingsAt(job: JobContext, made: Made): ReadonlyMap<string, Stands> {
  const { from, channelRules, devices } = made;
  const { requirement } = from;
  const byPart = standingsOfPart(job, from);
  const found = new Map<string, Stands>(byPart);
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
  for (const device of devices) {
    const { because } = device.planned;
    const toConfirm: Stands = { standing: 'to confirm', because };
    found.set(device.rule.id, from.part && isDoubtful(device) ? toConfirm : wired);
    if (device.at.backfeedUnknown.length > 0) doubtBackfeed(found, made, device.rule.id);
  }
  if (from.wirings.some((w) => w.neutral.neutral !== 'none')) found.set(WIRING_RULES.neutral.id, wired);
  return found;
}

/** Nothing is met by a current to which a converter adds what nobody states. */
function doubtBackfeed(found: Map<string, Stands>, { from, protector }: Made, rule: string): void {
  const { sccr } = from.requirement;
  const converters = protector.required.backfeedUnknown;
  const toConfirm = {
    standing: 'to confirm',
    because: reason('standing/backfeed-unknown', { converters }),
  } as const;
  for (const id of [rule, ...(sccr ? [sccr.rule.id, sccr.rule.answers] : [])])
    if (found.get(id)?.standing === 'met') found.set(id, toConfirm);
}

/** True where somebody has to say more of an overcurrent device than the plan knows. */
function isDoubtful({ planned, at }: PortDevice): boolean {
  const { device, amps } = planned;
  if (device === 'none') return at.current !== undefined && at.current.assumed.length > 0;
  return device === 'unknown' || amps === null;
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
  // Only of what isn't known are there several reasons.
  const because = sccrState === 'unknown' ? reasonKey(sccrBecause) : '';
  const key = `${sccrState}|${withstand === undefined}|${because}`;
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

/**
 * A placement rule that put nothing anywhere: what it said where another rule put something, else what isn't there.
 * @param waived what the list takes away at ports without a protector
 * @param said by the rule where another put something
 */
function notPlacedBy(
  { id, looksAt }: AnyPlacementRule,
  job: JobContext,
  waived: readonly Refusal[],
  said: readonly Refusal[],
  book: Book,
  isSaid: boolean,
): void {
  for (const refusal of said) book.add(id, refused(refusal), refusal.because, refusal.port);
  if (said.length > 0 || isSaid) return;
  // Where the list takes away what the rule put, there is a port, and nothing of the rule is left at it.
  const taken = waived.filter(({ port }) => isAt(looksAt, port));
  for (const refusal of taken) book.add(id, 'does not apply', refusal.because, refusal.port);
  if (taken.length === 0) book.add(id, 'does not apply', nothingThere(job, looksAt.kinds));
}

const isAt = (looksAt: AnyPlacementRule['looksAt'], { cls, equipment }: SitePort): boolean =>
  looksAt.ports.includes(cls) && looksAt.kinds.includes(equipment.kind);

/** What each placement rule said where another one put something. */
function refusalsByRule({ verdicts, refusals }: Overruled): ReadonlyMap<string, readonly Refusal[]> {
  const byRule = new Map<string, Refusal[]>();
  const put = (refusal: Refusal): void => {
    const mine = byRule.get(refusal.rule.id);
    if (mine) mine.push(refusal);
    else byRule.set(refusal.rule.id, [refusal]);
  };
  for (const verdict of verdicts) verdict.refusals.forEach(put);
  refusals.forEach(put);
  return byRule;
}

/** A rule that follows the list is met where nothing stands because the list says so. */
function refused({ rule, open, outside }: Refusal): Standing {
  if (open === true) return 'open';
  return rule.waives === true && outside !== true ? 'met' : 'does not apply';
}

/** Another rule that no protector rests on: why it asks for nothing at each. */
function notAskedBy(rule: string, made: readonly Made[], places: readonly FitPlace[], book: Book): void {
  if (made.length === 0) {
    book.add(rule, 'does not apply', NO_PROTECTOR);
    return;
  }
  const fit = FITTING.get(rule);
  let isSilent = true;
  for (const [i, { from, protector }] of made.entries()) {
    const place = places[i];
    const because = fit
      ? place && fit.outside?.(place)
      : from.requirement.outside.find((u) => u.rule === rule)?.because;
    if (because === undefined) continue;
    isSilent = false;
    book.add(rule, 'does not apply', because, protector.tag);
  }
  if (isSilent) book.add(rule, 'does not apply', NO_SUCH_CHANNEL);
}

function nothingThere(job: JobContext, kinds: readonly Kind[]): Reason {
  const isThere = job.site.equipments.some((e) => kinds.includes(e.kind));
  return reason(isThere ? 'standing/no-port' : 'standing/no-equipment', { kinds });
}
