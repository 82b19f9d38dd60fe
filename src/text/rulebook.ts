import type { Source } from '../model/fact.js';
import type { RuleCard } from '../model/rule.js';
import { BASES, type Basis, type Strength } from '../model/words.js';
import { textTable } from './screen.js';

/** What the rulebook prints of a rule; a placement rule has its strengths. */
export interface PrintedRule extends RuleCard {
  readonly strength?: { readonly [B in Basis]?: readonly Strength[] };
}

/** The bases that know a rule. */
function basesOf(rule: PrintedRule): readonly Basis[] {
  return BASES.filter((basis) => rule.sources[basis] !== undefined);
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
  return `${see}${[standard, edition, clause].filter((s) => s !== '').join(' ')}: ${says}${memory}`;
}

/**
 * One rule of the rulebook: what it is, why, and where it comes from under each basis.
 * @param rule the rule
 * @returns lines, each ended by a line feed
 */
export function ruleText(rule: PrintedRule): string {
  const lines = [rule.id, rule.title, '', rule.why];
  for (const basis of basesOf(rule)) {
    const strength = rule.strength?.[basis];
    lines.push('', strength ? `${basis}: ${strength.join(' or ')}` : basis);
    for (const source of rule.sources[basis] ?? []) lines.push(`  ${sourceText(source)}`);
  }
  return lines.map((line) => `${line}\n`).join('');
}
