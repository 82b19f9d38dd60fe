import { BASES, type Basis } from '../../model/editions.js';
import type { Source } from '../../model/fact.js';
import type { Clause } from '../../model/plan.js';
import { ALL_RULES } from '../../rules/rulebook.js';
import type { Selected } from '../choose/select.js';
import type { Refusal } from '../context/verdict.js';

/** One source of a rule as a plan prints it. */
interface Printed {
  /** What tells it from the rule's other sources. */
  readonly key: string;
  readonly clause: Clause;
}

interface PrintedSources {
  readonly rule: string;
  readonly sources: readonly Printed[];
}

const keys = new WeakMap<Source, string>();

/** Sources are constants of the rules, of which every place names some. */
function keyOf(source: Source): string {
  let key = keys.get(source);
  if (key === undefined) keys.set(source, (key = JSON.stringify(source)));
  return key;
}

function printed(rule: string, title: string, source: Source): Printed {
  const isPractice = 'commonPractice' in source;
  const clause = {
    rule,
    subject: isPractice ? '' : (source.subject ?? ''),
    title,
    standard: isPractice ? '' : source.standard,
    edition: isPractice ? '' : source.edition,
    clause: isPractice ? '' : source.clause,
    says: source.says,
    commonPractice: isPractice,
    memory: !isPractice && source.sure === 'memory',
  };
  return { key: keyOf(source), clause };
}

/** The sources of all rules, in the rulebook's order: the same for every job of a basis. */
const PRINTED: ReadonlyMap<Basis, readonly PrintedSources[]> = new Map(
  BASES.map((basis) => [
    basis,
    ALL_RULES.map(({ id, title, sources }) => ({
      rule: id,
      sources: (sources[basis] ?? []).map((one) => printed(id, title, one)),
    })),
  ]),
);

/** Sources that rules named at places, by rule: those of any place; `all` where the rule doesn't say which hold. */
type Cited = Map<string, Set<string> | 'all'>;

function cite(cited: Cited, rule: string, sources: readonly Source[] | undefined): void {
  const before = cited.get(rule);
  if (before === 'all') return;
  if (!sources) {
    cited.set(rule, 'all');
    return;
  }
  const mine = before ?? new Set();
  for (const source of sources) mine.add(keyOf(source));
  if (!before) cited.set(rule, mine);
}

/** What the rules cite that put a protector somewhere, or say its nominal discharge current. */
export function citedWhereSelected(selected: readonly Selected[]): Cited {
  const cited: Cited = new Map();
  for (const { placement, requirement } of selected) {
    for (const { rule, cites, unasked } of placement.reasons)
      cite(cited, rule.id, cites && [...(unasked?.cites ?? []), ...cites]);
    cite(cited, requirement.nominalCurrent.rule.id, requirement.nominalCurrent.cites);
  }
  return cited;
}

/** What the rules cite that put nothing at a port. */
export function citedWhereRefused(refusals: readonly (readonly Refusal[])[]): Cited {
  const cited: Cited = new Map();
  for (const at of refusals) for (const { rule, cites } of at) cite(cited, rule.id, cites);
  return cited;
}

/**
 * The clauses of rules as the plan prints them, in the rulebook's order.
 * @param isOf whether those of a rule belong to the list
 * @param cited of a rule that said which of its sources hold, those; of another one all
 */
export function clausesOf(basis: Basis, isOf: (rule: string) => boolean, cited: Cited): Clause[] {
  const found: Clause[] = [];
  for (const { rule, sources } of PRINTED.get(basis) ?? []) {
    if (!isOf(rule)) continue;
    const holding = cited.get(rule);
    for (const { key, clause } of sources)
      if (holding === undefined || holding === 'all' || holding.has(key)) found.push(clause);
  }
  return found;
}

/** What a plan names beside the clauses of what fired. */
interface Beside {
  /** Rules that something is said of, and those of them that decided something at a protector. */
  readonly named: ReadonlySet<string>;
  readonly fired: ReadonlySet<string>;
  /** The clauses of what fired. */
  readonly clauses: readonly Clause[];
  /** What rules cite where they put nothing. */
  readonly refused: Cited;
}

/** The clauses of rules that fired nowhere, and those that one that fired names only where it puts nothing. */
export function otherClausesOf(basis: Basis, { named, fired, clauses, refused }: Beside): Clause[] {
  const isApart = (rule: string): boolean => {
    const cited = refused.get(rule);
    return cited !== undefined && cited !== 'all';
  };
  const isKnown = (one: Clause): boolean =>
    clauses.some(
      ({ rule, clause, standard }) => rule === one.rule && clause === one.clause && standard === one.standard,
    );
  return clausesOf(basis, (rule) => (fired.has(rule) ? isApart(rule) : named.has(rule)), refused).filter(
    (one) => !fired.has(one.rule) || !isKnown(one),
  );
}
