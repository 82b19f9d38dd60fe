import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BASES } from '../../src/model/editions.js';
import { ALL_RULES } from '../../src/rules/rulebook.js';
import { ruleText } from '../../src/screen/rulebook-page.js';
import type { Table } from './table.js';

const ROOMS = ['place', 'rate', 'wire', 'indicate'] as const;
const PAGE = readFileSync(new URL('../../docs/rulebook.md', import.meta.url), 'utf8');

/** Rules that every place has: they have no case that asks for nothing. */
const EVERYWHERE: ReadonlySet<string> = new Set(['rate/nominal-current', 'wire/conductors', 'wire/leads']);

async function moduleAt(path: string): Promise<Record<string, unknown>> {
  return (await import(new URL(path, import.meta.url).href)) as Record<string, unknown>;
}

const rules = await Promise.all(
  ALL_RULES.map(async (rule) => ({
    id: rule.id,
    rule,
    file: await moduleAt(`../../src/rules/${rule.id}.ts`),
    table: (await moduleAt(`./${rule.id}.test.ts?in-the-loop`))['table'] as Table,
  })),
);

describe('the rulebook', () => {
  it('holds every file of the four rooms, each once', () => {
    const files = ROOMS.flatMap((room) =>
      readdirSync(new URL(`../../src/rules/${room}/`, import.meta.url)).map(
        (name) => `${room}/${name.replace(/\.ts$/, '')}`,
      ),
    );
    expect(ALL_RULES.map((rule) => rule.id).toSorted()).toEqual(files.toSorted());
  });

  it('prints every rule on its page, in the order of the book within each room', () => {
    const printed = [...PAGE.matchAll(/^### (.*)$/gm)].map(([, id]) => id);
    const inOrder = ROOMS.flatMap((room) =>
      ALL_RULES.map((rule) => rule.id).filter((id) => id.startsWith(`${room}/`)),
    );
    expect(printed).toEqual(inOrder);
  });
});

describe.each(rules)('$id', ({ id, rule, file, table }) => {
  const { cases, reads } = table.run();

  it('is what its own file exports, and its table is about it', () => {
    expect(Object.values(file)).toContain(rule);
    expect(table.rule).toBe(rule);
  });

  it('names a source or common practice under each basis that it belongs to, none twice', () => {
    const bases = BASES.filter((basis) => (rule.strength ?? rule.sources)[basis] !== null);
    expect(bases).not.toEqual([]);
    expect(BASES.filter((basis) => rule.sources[basis] !== null)).toEqual(bases);
    for (const basis of bases) {
      const found = rule.sources[basis] ?? [];
      expect(found).not.toEqual([]);
      for (const source of found) expect(source.says.trim()).not.toBe('');
      expect(new Set(found.map((s) => JSON.stringify(s))).size).toBe(found.length);
    }
  });

  it('has a title, and says why in one sentence', () => {
    expect(rule.title).toMatch(/^[A-Z].*[^.]$/);
    expect(rule.why).toMatch(/^[A-Z][^.!?]*\.$/);
  });

  it('reads exactly the facts that it declares', () => {
    expect([...reads].toSorted()).toEqual([...rule.facts].toSorted());
    expect(new Set(rule.facts).size).toBe(rule.facts.length);
  });

  it('has a case that fires, and one that doesn’t and says why', () => {
    expect(cases.filter((one) => one.fires)).not.toEqual([]);
    const silent = cases.filter((one) => !one.fires);
    if (EVERYWHERE.has(id)) expect(silent).toEqual([]);
    else expect(silent).not.toEqual([]);
    for (const one of silent) expect(one.why.trim()).not.toBe('');
  });

  it('decides nothing under a basis for which it names no source', () => {
    for (const { fires, basis, name } of cases) {
      if (fires && basis !== undefined) expect(rule.sources[basis], name).not.toBeNull();
    }
  });

  it('names each case once', () => {
    expect(new Set(cases.map((one) => one.name)).size).toBe(cases.length);
  });

  it('can be printed with its sources', () => {
    const text = ruleText(rule);
    expect(text.startsWith(`${id}\n${rule.title}\n\n${rule.why}\n`)).toBe(true);
    for (const source of Object.values(rule.sources).flatMap((of) => of ?? []))
      expect(text).toContain(source.says);
  });
});
