import { englishSteps, inEnglish, type EnglishStep, type InEnglish } from '../in-english.js';
import { told } from '../../src/words/messages/told.js';
import { say } from '../../src/words/reasons/say.js';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Source } from '../../src/model/fact.js';
import type { Part } from '../../src/model/catalogue.js';
import type { PlacedNote } from '../../src/model/open-item.js';
import type { Fit, PlacementDecision, RatingDecision, RuleCard } from '../../src/model/rule.js';
import type { Basis } from '../../src/model/editions.js';
import type { Working } from '../../src/model/step.js';
import type { AnyFitRule, FitFacts } from '../../src/rules/fit-facts.js';
import type { AnyIndicatorRule, IndicatorFacts } from '../../src/rules/indicator-facts.js';
import type {
  OvercurrentDecision,
  OvercurrentFacts,
  OvercurrentRule,
} from '../../src/rules/overcurrent-facts.js';
import type { AnyPlacementRule, PlacementFacts } from '../../src/rules/placement-facts.js';
import type { AnyRatingRule, RatingFacts } from '../../src/rules/rating-facts.js';
import type { WiringFacts, WiringRule } from '../../src/rules/wiring-facts.js';
import {
  fitFacts,
  indicatorFacts,
  overcurrentFacts,
  part,
  placementFacts,
  ratingFacts,
  wiringFacts,
} from './facts.js';

/** One case of a rule's table, as the loop over all rules counts it. */
export interface Ran {
  readonly name: string;
  /** The basis of the case; undefined: the rule doesn't know it. */
  readonly basis?: Basis;
  /** True where the rule asks, rejects or shows something. */
  readonly fires: boolean;
  /** What the rule says where it doesn't fire; a part that fits is named by its case. */
  readonly why: string;
}

/** The table of one rule. `run` makes every case once more and says which facts the rule read. */
export interface Table {
  readonly rule: RuleCard;
  readonly run: () => { readonly cases: readonly Ran[]; readonly reads: ReadonlySet<string> };
}

interface Kept extends Ran {
  /** What came out, and what the case expects, in one and the same shape. */
  readonly actual: unknown;
  readonly expected: unknown;
}

/** Registers the cases as tests: in the table's own file only, since the loop over all rules imports it too. */
function table<C extends { readonly name: string }>(
  url: string,
  rule: RuleCard & { readonly facts: readonly PropertyKey[] },
  cases: readonly C[],
  make: (one: C, reads: Set<string>) => Kept,
): Table {
  if (expect.getState().testPath === fileURLToPath(url)) {
    describe(rule.id, () => {
      test.each(cases.map((one) => [one.name, one] as const))('%s', (_, one) => {
        const { actual, expected } = make(one, new Set());
        expect(actual).toEqual(expected);
      });
    });
  }
  return {
    rule,
    run: () => {
      const reads = new Set<string>();
      return { cases: cases.map((one) => make(one, reads)), reads };
    },
  };
}

/** Hands a rule its declared facts: a read of another one throws, each read is noted. */
function watched<F extends object>(
  rule: RuleCard & { readonly facts: readonly (keyof F)[] },
  all: F,
  reads: Set<string>,
): F {
  return new Proxy(all, {
    get(target, key, receiver): unknown {
      if (typeof key === 'string') {
        if (!(rule.facts as readonly string[]).includes(key)) {
          throw new Error(`${rule.id} reads ${key}, which it doesn’t declare`);
        }
        reads.add(key);
      }
      return Reflect.get(target, key, receiver);
    },
  });
}

/**
 * Notes as one line each, `rate/above-converter ARR-1.modules_in_series: message`. An expected line without a message is
 * compared by code, row and field.
 */
function lines(notes: readonly PlacedNote[], expected: readonly string[] = []): readonly string[] {
  return notes.map((n, i) => {
    const head = `${n.code} ${n.tag === '' ? 'job' : n.tag}${n.field === '' ? '' : `.${n.field}`}`;
    return expected[i]?.includes(': ') === true ? `${head}: ${told(n).message}` : head;
  });
}

/** Does a rule know the basis, and look at this kind of equipment and port? As plan/ asks it. */
function looksAt(rule: AnyPlacementRule, { basis, kind, port }: PlacementFacts): boolean {
  const { strength, looksAt: at } = rule;
  return strength[basis] !== null && at.kinds.includes(kind) && at.ports.includes(port);
}

const NOTHING_CITED = { cites: undefined, unasked: undefined };

/** Sources as a case names them: the clause, or `practice`. */
function cited(sources: readonly Source[] = []): readonly string[] {
  return sources.map((source) => ('commonPractice' in source ? 'practice' : source.clause));
}

export interface PlacementCase {
  readonly name: string;
  readonly given: Partial<PlacementFacts>;
  /** A strength: placed with it. `not-looked-at`: the basis, the kind or the port isn't the rule's. */
  readonly then: 'required' | 'recommended' | 'not-placed' | 'waived' | 'not-looked-at';
  readonly because?: string;
  /** Of what isn't placed: a fact that decides isn't known. */
  readonly open?: true;
  readonly notes?: readonly string[];
  /** Clauses that hold here, where not all of the rule's do. */
  readonly cites?: readonly string[];
  /** Why a clause of the rule doesn't ask here. */
  readonly unasked?: string;
}

/** The table of a placement rule. */
export function placementTable(url: string, rule: AnyPlacementRule, cases: readonly PlacementCase[]): Table {
  return table(url, rule, cases, (one, reads) => {
    const expected = {
      then: one.then,
      because: one.because ?? '',
      open: one.open ?? false,
      notes: one.notes ?? [],
      cites: one.cites,
      unasked: one.unasked,
    };
    const facts = placementFacts(one.given);
    if (!looksAt(rule, facts)) {
      const actual = { then: 'not-looked-at', because: '', open: false, notes: [], ...NOTHING_CITED };
      return { name: one.name, fires: false, why: 'the rule doesn’t look here', actual, expected };
    }
    const decision: PlacementDecision = rule.decide(watched(rule, facts, reads));
    const placed = decision.outcome === 'placed';
    const notes = lines(decision.notes ?? [], one.notes);
    const then = placed ? decision.strength : decision.outcome;
    const open = decision.outcome === 'not-placed' && decision.open === true;
    // A rule that can place nothing fires where it waives, or where it has something to say.
    const speaks =
      Object.values(rule.strength).every((s) => s === null || s.length === 0) && notes.length > 0;
    return {
      name: one.name,
      basis: facts.basis,
      fires: placed || decision.outcome === 'waived' || speaks,
      why: say(decision.because),
      actual: {
        then,
        because: say(decision.because),
        open,
        notes,
        cites: one.cites && cited(decision.outcome === 'waived' ? undefined : decision.cites),
        unasked: placed && decision.unasked ? say(decision.unasked.because) : undefined,
      },
      expected,
    };
  });
}

/**
 * A step of a working as one line: `Uw: Rated impulse withstand voltage of E-1 = 4000 V [stated; jobs.csv, line 3, uw]`;
 * of a computed one, formula and figures stand before the result.
 */
function stepLine({ symbol, says, formula, substituted, value, unit, sure, source }: EnglishStep): string {
  const result = `${Math.round(value * 100) / 100} ${unit}`;
  const how = [says, formula, substituted, result].filter((s) => s !== '').join(' = ');
  return `${symbol}: ${how} [${sure}; ${source}]`;
}

export interface RatingCase {
  readonly name: string;
  readonly given: Partial<RatingFacts>;
  /** The figure to 0.01; or what is known where it is `unknown`. */
  readonly asks?: number;
  readonly unknown?: string;
  readonly outside?: string;
  /** Each step of the working as one line. */
  readonly steps?: readonly string[];
  /** Where each stated figure of the working stands, by symbol. */
  readonly places?: Readonly<Record<string, string>>;
  /** Upon which symbols each step rests, by its own; a step that rests on none isn't named. */
  readonly uses?: Readonly<Record<string, readonly string[]>>;
  readonly notes?: readonly string[];
  readonly whereItDecides?: readonly string[];
  readonly assumed?: true;
  readonly bound?: string;
  /** V; what the withstand table is entered with, where that isn't the figure. */
  readonly entry?: number;
  /** Clauses that hold here, where not all of the rule's do. */
  readonly cites?: readonly string[];
}

/** Upon which symbols each step of a working rests. */
function usedBy(working: Working | undefined): Readonly<Record<string, readonly string[]>> {
  const resting = (working?.steps ?? []).filter((step) => step.uses.length > 0);
  return Object.fromEntries(resting.map(({ symbol, uses }) => [symbol, uses]));
}

/** The table of a rating rule. */
export function ratingTable(url: string, rule: AnyRatingRule, cases: readonly RatingCase[]): Table {
  return table(url, rule, cases, (one, reads) => {
    const facts = ratingFacts(one.given);
    const decision: RatingDecision = rule.decide(watched(rule, facts, reads));
    const working =
      decision.outcome === 'asks'
        ? decision.working
        : decision.outcome === 'unknown'
          ? decision.atLeast
          : undefined;
    const value = decision.outcome === 'asks' ? decision.value : working?.value;
    const at: Record<string, string> = {};
    const steps = working && englishSteps(working);
    for (const step of steps ?? []) if (step.sure === 'stated') at[step.symbol] = step.source;
    const rounded = (of: number | undefined): number | undefined =>
      of === undefined ? undefined : Math.round(of * 100) / 100;
    const actual = {
      outcome: decision.outcome,
      value: rounded(value),
      // The figure and the last line of its working are one.
      ends: rounded(working?.value),
      because: decision.outcome === 'asks' ? '' : say(decision.because),
      notes: decision.outcome === 'outside' ? [] : lines(decision.notes, one.notes),
      decides: lines(decision.outcome === 'asks' ? (decision.whereItDecides ?? []) : [], one.whereItDecides),
      assumed: decision.outcome === 'asks' ? decision.assumed : undefined,
      entry: rounded(decision.outcome === 'asks' ? decision.withstandEntry : undefined),
      bound: decision.outcome === 'asks' && decision.bound !== undefined ? say(decision.bound) : undefined,
      cites: one.cites && cited(decision.outcome === 'asks' ? decision.cites : undefined),
      ...(one.steps === undefined ? {} : { steps: steps?.map(stepLine) }),
      ...(one.places === undefined ? {} : { places: at }),
      ...(one.uses === undefined ? {} : { uses: usedBy(working) }),
    };
    const expected = {
      outcome: one.outside !== undefined ? 'outside' : one.unknown !== undefined ? 'unknown' : 'asks',
      value: one.asks,
      ends: one.asks,
      because: one.outside ?? one.unknown ?? '',
      notes: one.notes ?? [],
      decides: one.whereItDecides ?? [],
      assumed: one.assumed,
      entry: one.entry,
      bound: one.bound,
      cites: one.cites,
      ...(one.steps === undefined ? {} : { steps: one.steps }),
      ...(one.places === undefined ? {} : { places: one.places }),
      ...(one.uses === undefined ? {} : { uses: one.uses }),
    };
    const fires = decision.outcome === 'asks';
    return { name: one.name, basis: facts.basis, fires, why: actual.because, actual, expected };
  });
}

export interface FitCase {
  readonly name: string;
  readonly given?: Partial<Omit<FitFacts, 'part'>>;
  readonly part?: Partial<Part>;
  /** Why nothing is asked of a part at such a place; nothing of the four: the part fits. */
  readonly outside?: string;
  readonly shortfall?: string;
  readonly rejects?: string;
  /** Of a rejected part, to 0.0001: how far it misses; 1 where it can't be measured (the default). */
  readonly gap?: number;
}

/** The table of a rule that holds a part against a place. */
export function fitTable(url: string, rule: AnyFitRule, cases: readonly FitCase[]): Table {
  return table(url, rule, cases, (one, reads) => {
    const facts = fitFacts({ ...one.given, part: part(one.part) });
    const given = watched(rule, facts, reads);
    const said = rule.outside?.(given);
    const outside = said === undefined ? undefined : say(said);
    const fit: Fit = outside === undefined ? rule.accepts(given) : { fits: true };
    const actual = fit.fits
      ? { outside, fits: true, says: fit.shortfall === undefined ? '' : say(fit.shortfall), gap: 0 }
      : { outside, fits: false, says: say(fit.because), gap: Math.round(fit.gap * 10_000) / 10_000 };
    const expected =
      one.rejects === undefined
        ? { outside: one.outside, fits: true, says: one.shortfall ?? '', gap: 0 }
        : { outside: undefined, fits: false, says: one.rejects, gap: one.gap ?? 1 };
    const fires = actual.says !== '';
    const why = fires ? actual.says : (outside ?? one.name);
    return { name: one.name, basis: facts.basis, fires, why, actual, expected };
  });
}

export interface IndicatorCase {
  readonly name: string;
  readonly given: Partial<IndicatorFacts>;
  /** `state: shows (cause): because`, one line a state. */
  readonly shows?: readonly string[];
  readonly outside?: string;
}

/** The table of a rule about lights. */
export function indicatorTable(url: string, rule: AnyIndicatorRule, cases: readonly IndicatorCase[]): Table {
  return table(url, rule, cases, (one, reads) => {
    const decision = rule.decide(watched(rule, indicatorFacts(one.given), reads));
    const fires = decision.outcome === 'shows';
    const why = fires ? '' : say(decision.because);
    const shows = fires
      ? decision.indications.map((i) => `${i.state}: ${i.shows} (${i.cause}): ${say(i.because)}`)
      : [];
    return {
      name: one.name,
      fires,
      why,
      actual: { outcome: decision.outcome, why, shows },
      expected: {
        outcome: one.shows ? 'shows' : 'outside',
        why: one.outside ?? '',
        shows: one.shows ?? [],
      },
    };
  });
}

export interface WiringCase<D> {
  readonly name: string;
  readonly given: Partial<WiringFacts>;
  /** False where the rule asks for nothing beyond what is there anyhow. */
  readonly fires: boolean;
  readonly then: InEnglish<D>;
}

/** The table of a wiring rule. */
export function wiringTable<D extends object>(
  url: string,
  rule: WiringRule<WiringFacts, D>,
  cases: readonly WiringCase<D>[],
): Table {
  return table(url, rule, cases, (one, reads) => {
    const facts = wiringFacts(one.given);
    const actual = inEnglish(rule.decide(watched(rule, facts, reads)));
    const { because } = actual as { readonly because?: string };
    const why = because ?? one.name;
    return { name: one.name, basis: facts.basis, fires: one.fires, why, actual, expected: one.then };
  });
}

export interface OvercurrentCase {
  readonly name: string;
  readonly given: Partial<OvercurrentFacts>;
  /** As `deviceLine` writes it. */
  readonly then?: string;
  readonly because?: string;
  readonly notes?: readonly string[];
  readonly outside?: string;
}

/** `breaker: 2 poles, 15 to 20 A, 240 V straight, breaks 10000 A`; `-` stands for what isn't known or not asked. */
function deviceLine(decision: OvercurrentDecision): string {
  if (decision.outcome === 'outside') return '';
  const { device, poles, amps, leastAmps, volts, straight, dc, interrupting } = decision.planned;
  const { conductors, noneIn } = decision.planned;
  const inWhich = noneIn.length === 0 ? '' : ` in ${conductors.join('+')} not ${noneIn.join('+')}`;
  const or = (figure: number | null): string => (figure === null ? '-' : String(figure));
  const kind = `${straight ? ' straight' : ''}${dc ? ' dc' : ''}`;
  return `${device}: ${or(poles)} poles${inWhich}, ${or(leastAmps)} to ${or(amps)} A, ${or(volts)} V${kind}, breaks ${or(interrupting)} A`;
}

/** The table of a rule about overcurrent devices. */
export function overcurrentTable(
  url: string,
  rule: OvercurrentRule,
  cases: readonly OvercurrentCase[],
): Table {
  return table(url, rule, cases, (one, reads) => {
    const facts = overcurrentFacts(one.given);
    const decision = rule.decide(watched(rule, facts, reads));
    const fires = decision.outcome === 'device';
    const because = say(fires ? decision.planned.because : decision.because);
    const actual = {
      line: deviceLine(decision),
      because: one.because === undefined && fires ? undefined : because,
      notes: fires ? decision.planned.notes.map((note) => say(note)) : [],
    };
    const expected = {
      line: one.then ?? '',
      because: one.outside ?? one.because,
      notes: one.notes ?? [],
    };
    return { name: one.name, basis: facts.basis, fires, why: because, actual, expected };
  });
}
