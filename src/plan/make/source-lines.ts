import type { Source } from '../../model/fact.js';
import { reason, type Reason } from '../../model/reason.js';
import type { RuleCard } from '../../model/rule.js';
import type { Basis } from '../../model/editions.js';
import { memo } from '../context/memo.js';

function sourceLine(source: Source): Reason {
  if ('commonPractice' in source) return reason('source/practice', { practice: source.says });
  const { standard, edition, clause, sure } = source;
  return reason('source/clause', { standard, edition, clause, memory: sure === 'memory' });
}

const lines = memo<readonly Reason[]>();

/**
 * The sources of a rule under one basis, a line each.
 * @param cites those of them that hold at the place; undefined: all
 */
export function sourceLines(rule: RuleCard, basis: Basis, cites?: readonly Source[]): readonly Reason[] {
  if (cites) return cites.map(sourceLine);
  return lines(rule, basis, () => (rule.sources[basis] ?? []).map(sourceLine));
}
