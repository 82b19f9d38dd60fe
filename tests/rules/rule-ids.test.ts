import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ALL_RULES, CURRENT_RULES, FIT_RULES, VOLTAGE_RULES } from '../../src/rules/rulebook.js';
import { NOMINAL_CURRENT_RULE, WITHSTAND_RULE } from '../../src/rules/rulebook.js';

const SOURCES = new URL('../../src/', import.meta.url);
const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));

/** The ids of rules that stand as literals in a text. */
function idsIn(text: string): readonly string[] {
  const literals = new Set(
    [...text.matchAll(/(['"`])([a-z-]+\/[a-z0-9-]+)\1/g)].map(([, , literal]) => literal),
  );
  return ALL_RULES.map((rule) => rule.id).filter((id) => literals.has(id));
}

describe('the ids of rules', () => {
  it('stand as literals in the rules and in words alone: else a list of them would have to know each new rule', () => {
    const found = files
      .filter((file) => !file.startsWith('rules/') && !file.startsWith('words/'))
      .flatMap((file) => idsIn(readFileSync(new URL(file, SOURCES), 'utf8')).map((id) => `${file}: ${id}`));
    expect(found).toEqual([]);
  });

  it('are found where they stand, in any quotes', () => {
    const text = "r.rule.id === 'place/asked' || `rate/mcov` || \"wire/leads\" || 'place/sub-panel'";
    expect(idsIn(text).toSorted()).toEqual(['place/asked', 'rate/mcov', 'wire/leads']);
    expect(files.filter((file) => file.startsWith('plan/')).length).toBeGreaterThan(20);
    expect(idsIn(readFileSync(new URL('rules/place/service.ts', SOURCES), 'utf8'))).toEqual([
      'place/service',
    ]);
  });
});

describe('the rule about parts that answers a rule that rates', () => {
  const rating = [...VOLTAGE_RULES, ...CURRENT_RULES, NOMINAL_CURRENT_RULE, WITHSTAND_RULE];
  const parts = new Set<string>(FIT_RULES.map((rule) => rule.id));

  it('is named by each of them, and is in the book', () => {
    for (const { id, answers } of rating) expect(parts, id).toContain(answers);
    expect(FIT_RULES.every((rule) => ALL_RULES.includes(rule))).toBe(true);
  });

  it('is asked for of each rule of the room rate that is none about parts', () => {
    const others = ALL_RULES.map((rule) => rule.id).filter((id) => id.startsWith('rate/') && !parts.has(id));
    expect(rating.map((rule) => rule.id).toSorted()).toEqual(others.toSorted());
  });
});
