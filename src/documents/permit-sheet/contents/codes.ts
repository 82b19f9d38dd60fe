import { z } from 'zod';
import { isNec } from '../../../model/editions.js';
import { byNaturalOrder } from '../../../model/natural-order.js';
import type { Clause, Plan, PlannedProtector } from '../../../model/plan.js';
import { STANDINGS, type Standing } from '../../../model/words.js';
import { notAskedInShort, OTHER_ARTICLES } from '../../../words/clause-words.js';
import { tagList } from '../../../words/tag-list.js';
import { assumptionNumbers, type AssumptionNumbers } from '../../parts/contents/assumptions.js';
import type { CodeLine } from './code-line.js';
import { codeLines } from './code-lines.js';
import { runsOf, RunsSchema, wordRuns } from '../../parts/contents/runs.js';

export const CodeTableSchema = z.object({
  title: z.string(),
  rows: z.array(
    z.object({
      /** `230.67`; several that say one thing: `242.24, 242.28`. */
      clause: RunsSchema,
      title: z.string(),
      /** The title in pieces: no word is broken at its hyphen. */
      asks: RunsSchema,
      /** `P-4: at the service SVC, type 2, In 20 kA ≥ 10 kA`. */
      entries: z.array(RunsSchema),
    }),
  ),
  /** What doesn't apply, what is only recommended, which articles weren't looked at. */
  lines: z.array(RunsSchema),
});
export type CodeTableView = z.infer<typeof CodeTableSchema>;

/** One line at one protector. */
interface Entry {
  readonly tag: string;
  /** With how it ends. */
  readonly text: string;
}

/** A line with what it says at protectors. */
interface LineThere {
  readonly line: CodeLine;
  readonly entries: readonly Entry[];
}

const isOf =
  ({ subjects }: CodeLine) =>
  (clause: Clause): boolean =>
    subjects.includes(clause.subject);

/** The rules that cite a clause of a line, fired or not. */
function rulesOf(plan: Plan, line: CodeLine): ReadonlySet<string> {
  return new Set([...plan.clauses, ...plan.otherClauses].filter(isOf(line)).map(({ rule }) => rule));
}

/** True where sources of a reason are clauses of the line. */
function cites(plan: Plan, line: CodeLine, sources: PlannedProtector['reasons'][number]['sources']): boolean {
  const cited = plan.clauses.filter(isOf(line));
  return sources.some(
    (source) =>
      source.code === 'source/clause' && cited.some(({ clause }) => clause === source.values.clause),
  );
}

/** True where a clause of the line requires this protector. */
function isRequiredBy(plan: Plan, line: CodeLine, { reasons }: PlannedProtector): boolean {
  return reasons.some(({ strength, sources }) => strength === 'required' && cites(plan, line, sources));
}

/** How a protector stands to rules: the worst of it, and why; undefined where none of them looks at it. */
interface StandingThere {
  readonly standing: Standing;
  readonly because: readonly string[];
}

function standingAt(plan: Plan, rules: ReadonlySet<string>, tag: string): StandingThere | undefined {
  const found = plan.standings.filter(
    ({ rule, standing, at }) => rules.has(rule) && standing !== 'does not apply' && at.includes(tag),
  );
  const worst = STANDINGS[Math.max(...found.map(({ standing }) => STANDINGS.indexOf(standing)))];
  if (worst === undefined) return undefined;
  const because = found.flatMap((one) => (one.standing === worst && one.because ? [one.because.code] : []));
  return { standing: worst, because };
}

/** Gravest last, as the words of the contract have them: open goes before what is to be confirmed. */
const ENDS: Readonly<Record<Standing, string>> = {
  met: '',
  'to confirm': '; confirm',
  'not met': '; NOT MET',
  open: '; open',
  'does not apply': '',
};

/** How an entry ends; what is to be confirmed names the assumptions that it rests on. */
function endOf(
  numbersOf: AssumptionNumbers,
  protector: PlannedProtector,
  { standing, because }: StandingThere,
): string {
  if (standing === 'open' && protector.part === null && protector.existing === null)
    return '; no part chosen';
  if (standing !== 'to confirm') return ENDS[standing];
  const numbers = numbersOf(protector, because);
  return `${ENDS[standing]}${numbers.length === 0 ? '' : `, see ${numbers.join(', ')}`}`;
}

/** How a control circuit stands whose supply limits its current: what is said of its fault current stands as that does. */
function standingBySupply(plan: Plan, tag: string): StandingThere | undefined {
  const by = plan.standings.filter(({ because }) => because?.code === 'overcurrent/by-supply-of-control');
  return standingAt(plan, new Set(by.map(({ rule }) => rule)), tag);
}

function entriesOf(plan: Plan, line: CodeLine, numbersOf: AssumptionNumbers): Entry[] {
  const rules = rulesOf(plan, line);
  return plan.protectors.flatMap((protector) => {
    if (line.places && !isRequiredBy(plan, line, protector)) return [];
    const { tag } = protector;
    const looked = standingAt(plan, rules, tag);
    const there = looked ?? standingBySupply(plan, tag);
    const text = looked === undefined ? line.beyond?.(protector) : line.here(protector, plan);
    if (there === undefined || text === undefined || text === '') return [];
    return [{ tag, text: `${text}${endOf(numbersOf, protector, there)}` }];
  });
}

/** Entries that say the same, with the tags of all; `all` where each protector of the job is among them. */
function told(plan: Plan, entries: readonly Entry[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { tag, text } of entries) groups.set(text, [...(groups.get(text) ?? []), tag]);
  return [...groups].map(([said, tags]) => {
    const isAll = tags.length === plan.protectors.length && tags.length > 1;
    return `${isAll ? 'all' : tagList([...tags].sort(byNaturalOrder))}: ${said}`;
  });
}

/** A clause as a table names it: that of another standard than the code with its standard, and what has no number of its own. */
function clauseName({ standard, clause }: Clause, plan: Plan): string {
  const isOfCode = isNec(plan.basis) ? standard.startsWith('NEC') : /\d{3}/.test(clause);
  return isOfCode ? clause : `${standard} ${clause}`;
}

/** Row by row in the order of the articles: by the clause that a row names first; a standard's annexes behind the code's articles. */
const byArticle = (a: { readonly clause: string }, b: { readonly clause: string }): number =>
  byNaturalOrder(articleOf(a.clause), articleOf(b.clause));
const articleOf = (clause: string): string => clause.replace(/^Table (?=\d)/, '');

function clausesOf(plan: Plan, line: CodeLine, of: readonly Clause[], entries: readonly Entry[]): string {
  const { cites: citing } = line;
  const tags = new Set(entries.map(({ tag }) => tag));
  const used = citing && new Set(plan.protectors.filter(({ tag }) => tags.has(tag)).flatMap(citing));
  const names = line.subjects
    .filter((subject) => used?.has(subject) ?? true)
    .flatMap((subject) => of.filter((one) => one.subject === subject))
    .map((one) => clauseName(one, plan));
  return [...new Set(names)].join(', ');
}

/** Why a line asks for none: its own figure where one stands there all the same, else what its rules say. */
function whyNotAsked(plan: Plan, line: CodeLine, rules: ReadonlySet<string>): string {
  const [figure] = plan.protectors
    .filter(({ reasons }) =>
      reasons.some(({ rule, sources }) => rules.has(rule) && cites(plan, line, sources)),
    )
    .map((protector) => line.here(protector, plan));
  if (figure !== undefined && figure !== '') return figure;
  const because = plan.standings.flatMap(({ rule, standing, because: why }) =>
    why && rules.has(rule) && standing === 'does not apply' ? [why] : [],
  );
  // A rule that tells outside feeders from others says which of them it means.
  const isOutside = line.subjects.includes('outside-feeder');
  const own = because.filter((why) => why.code === 'feeder/no-unit' && why.values.outside === isOutside);
  const others = because.filter((why) => why.code !== 'feeder/no-unit');
  const meant = isOutside && own.length > 0 ? own : [...others, ...own];
  return [...new Set(meant.map(notAskedInShort))].join('; ');
}

/** Clauses that put a protector somewhere and ask for none here: `694.7(D): no wind turbine`. */
function notAsked(plan: Plan, lines: readonly LineThere[]): string[] {
  return lines.flatMap(({ line, entries }) => {
    if (!line.places || entries.length > 0) return [];
    const rules = rulesOf(plan, line);
    const names = clausesOf(plan, line, [...plan.clauses, ...plan.otherClauses], []);
    const why = whyNotAsked(plan, line, rules);
    if (names === '') return [];
    return [why === '' ? names : `${names} (${why})`];
  });
}

function recommended(plan: Plan): string[] {
  const tags = plan.protectors.filter(({ strength }) => strength !== 'required').map(({ tag }) => tag);
  if (tags.length === 0) return [];
  const by = isNec(plan.basis) ? 'this code' : 'these standards';
  return [`Recommended, not required by ${by}: ${tagList([...tags].sort(byNaturalOrder))}.`];
}

/** The clauses that a reviewer looks for, each once, with tags and figures; then what doesn't apply, and what is recommended. */
export function codeTable(plan: Plan): CodeTableView {
  const runs = runsOf(plan);
  const numbersOf = assumptionNumbers(plan);
  const lines = codeLines(plan).map((line): LineThere => ({
    line,
    entries: entriesOf(plan, line, numbersOf),
  }));
  const rows = lines
    .flatMap(({ line, entries }) => {
      const clause = entries.length === 0 ? '' : clausesOf(plan, line, plan.clauses, entries);
      return clause === ''
        ? []
        : [{ clause, title: line.title, asks: wordRuns(line.title), entries: told(plan, entries).map(runs) }];
    })
    .sort(byArticle)
    .map((row) => ({ ...row, clause: runs(row.clause) }));
  const none = notAsked(plan, lines);
  return {
    title: 'Code table',
    rows,
    lines: [
      ...(none.length === 0 ? [] : [`Does not apply: ${none.join('; ')}.`]),
      ...recommended(plan),
      ...(isNec(plan.basis) ? [OTHER_ARTICLES] : []),
    ].map(runs),
  };
}
