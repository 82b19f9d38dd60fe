import type { Source } from '../model/fact.js';
import type { PrintedRule } from '../model/rule.js';
import { standardName } from '../words/standard.js';
import { belongs, BASES, type Basis } from '../model/editions.js';
import { list } from '../words/figures.js';
import { textTable } from './text-table.js';

/** The bases that know a rule. */
function basesOf(rule: PrintedRule): readonly Basis[] {
  return BASES.filter((basis) => belongs(rule.sources, basis));
}

/**
 * The rulebook as a table: id, bases, title.
 * @param rules in the order of the rulebook
 */
export function rulebookTable(rules: readonly PrintedRule[]): string {
  const bases = (rule: PrintedRule): string =>
    basesOf(rule).length === BASES.length ? 'all' : basesOf(rule).join(', ');
  return textTable(
    [{ heading: 'rule' }, { heading: 'title' }, { heading: 'bases' }],
    rules.map((rule) => [rule.id, rule.title, bases(rule)]),
    120,
  );
}

/** A source in one line: clause and what it says, or that it is common practice. */
export function sourceText(source: Source): string {
  if ('commonPractice' in source) return `common practice, no source: ${source.says}`;
  const { standard, edition, clause, says, sure } = source;
  const see = sure === 'memory' ? 'see ' : '';
  const memory = sure === 'memory' ? ' (from memory)' : '';
  const named = [standardName({ standard, edition }), clause].filter((s) => s !== '').join(', ');
  return `${see}${named}: ${says}${memory}`;
}

/** What a rule says under the bases under which it says the same. */
interface Under {
  /** `nec-2020 and nec-2023: required or recommended`. */
  readonly heading: string;
  readonly sources: readonly string[];
}

function underBases(rule: PrintedRule): readonly Under[] {
  const groups = new Map<string, { bases: Basis[]; strength: string; sources: readonly string[] }>();
  for (const basis of basesOf(rule)) {
    const strength = rule.strength?.[basis]?.join(' or ') ?? '';
    const sources = (rule.sources[basis] ?? []).map(sourceText);
    const key = JSON.stringify([strength, sources]);
    const group = groups.get(key);
    if (group) group.bases.push(basis);
    else groups.set(key, { bases: [basis], strength, sources });
  }
  return [...groups.values()].map(({ bases, strength, sources }) => ({
    heading: `${bases.length === BASES.length ? 'every basis' : list(bases)}${strength === '' ? '' : `: ${strength}`}`,
    sources,
  }));
}

/** `inputUse` as `input use`. */
function inWords(fact: string): string {
  return fact.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** Where a rule looks, and at which facts. */
function looks(rule: PrintedRule): readonly string[] {
  const facts = `Facts: ${rule.facts.map(inWords).join(', ')}`;
  if (!rule.looksAt) return [facts];
  return [`Looks at: ${rule.looksAt.ports.join(', ')} of ${rule.looksAt.kinds.join(', ')}`, facts];
}

/**
 * One rule of the rulebook: what it is, why, where it looks, and where it comes from under each basis.
 * @param rule the rule
 * @returns lines, each ended by a line feed
 */
export function ruleText(rule: PrintedRule): string {
  const lines = [rule.id, rule.title, '', rule.why, '', ...looks(rule)];
  for (const { heading, sources } of underBases(rule)) {
    lines.push('', heading, ...sources.map((source) => `  ${source}`));
  }
  return lines.map((line) => `${line}\n`).join('');
}

const ROOMS = [
  ['place', 'Where protection goes'],
  ['rate', 'What it must withstand'],
  ['wire', 'Which wire goes where'],
  ['indicate', 'What the lights show'],
] as const;

/**
 * The rulebook as a page of Markdown, docs/rulebook.md: every rule by its room.
 * @param rules in the order of the rulebook
 */
export function rulebookPage(rules: readonly PrintedRule[]): string {
  const lines = [
    '# The rulebook',
    '',
    'Written by `npm run docs:rulebook` from the rules in `src/rules/`; a change here is lost. `shuntbook rules ID` prints one',
    'of them. A clause that is only "see" is from memory. Nothing here replaces the local code or the authority having',
    'jurisdiction.',
  ];
  for (const [room, title] of ROOMS) {
    lines.push('', `## ${title}`);
    for (const rule of rules.filter((r) => r.id.startsWith(`${room}/`))) {
      lines.push('', `### ${rule.id}`, '', `**${rule.title}.** ${rule.why}`, '');
      lines.push(...looks(rule).map((line) => `- ${line}`));
      for (const { heading, sources } of underBases(rule)) {
        lines.push(`- ${heading}`, ...sources.map((source) => `  - ${source}`));
      }
    }
  }
  return lines.map((line) => `${line}\n`).join('');
}
