import type { Source } from '../../model/fact.js';
import type { RuleCard } from '../../model/rule.js';
import type { Basis } from '../../model/editions.js';
import { standardName } from '../../words/standard.js';
import { keeper } from '../context/memo.js';

/** A source as one line: `NEC (NFPA 70) 2023, 230.67`; what wasn't at hand is only "see". */
function sourceLine(source: Source): string {
  if ('commonPractice' in source) return `common practice: ${source.says}`;
  const name = `${standardName(source)}, ${source.clause}`;
  return source.sure === 'memory' ? `see ${name}` : name;
}

const lines = keeper<readonly string[]>();

/** The sources of a rule under one basis, a line each. */
export function sourceLines(rule: RuleCard, basis: Basis): readonly string[] {
  return lines(rule, basis, () => (rule.sources[basis] ?? []).map(sourceLine));
}
