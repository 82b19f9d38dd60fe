import type { ListRow, RowFacts } from '../model/list.js';
import type { Fact } from '../model/fact.js';
import type { PlacedNote } from '../model/open-item.js';
import { about } from '../model/message.js';
import { ROW_MESSAGES } from '../model/messages/rows.js';

/**
 * Settles what `modules` of an array says of its strings: how many are in parallel, or how many modules are in series.
 * @param tag of the row
 * @param row a row of kind `array`; others come back as they are
 * @param notes gets what doesn't come out even, or contradicts itself
 * @returns the row with what follows from its modules
 */
export function withModules(tag: string, row: ListRow, notes: PlacedNote[]): ListRow {
  const { modules, modules_in_series: series, strings_in_parallel: strings } = row.facts;
  if (row.facts.kind?.value !== 'array' || !modules) return row;
  if (series && strings) {
    const product = series.value * strings.value;
    if (product !== modules.value) {
      const p = { tag, modules: modules.value, series: series.value, strings: strings.value, product };
      notes.push(about(ROW_MESSAGES.modulesProduct, p, tag, 'modules'));
    }
    return row;
  }
  const known = series ?? strings;
  if (!known) return row;
  const other = modules.value / known.value;
  if (!Number.isInteger(other)) {
    const p = { tag, modules: modules.value, of: series ? 'series' : 'strings', each: known.value } as const;
    notes.push(about(ROW_MESSAGES.modulesUneven, p, tag, 'modules'));
    return row;
  }
  const made: Fact<number> = { value: other, origin: modules.origin, text: modules.text };
  const facts: ListRow['facts'] = series
    ? { ...row.facts, strings_in_parallel: made }
    : { ...row.facts, modules_in_series: made };
  return { ...row, facts: facts satisfies Partial<{ [F in keyof RowFacts]: unknown }> };
}
