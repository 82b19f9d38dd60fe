import { describe, expect, it } from 'vitest';
import { sharedOf } from '../../src/words/messages/told.js';
import { sharedFact } from '../../src/words/shared-fact.js';
import { demoPlans } from '../documents/fixtures/demo-plans.js';

const items = demoPlans().flatMap((plan) => plan.openItems);
const shared = items.filter((item) => sharedOf(item) !== undefined);

describe('the fact that open items share', () => {
  it('is told without the places where it shows', () => {
    expect(shared.length).toBeGreaterThan(100);
    for (const item of shared) {
      const { says, about } = sharedFact(item);
      expect(about.length).toBeGreaterThanOrEqual(item.equipment === '' ? 0 : 1);
      for (const place of about) expect(says.split(/[ ,:.]+/)).not.toContain(place);
      expect(says).toMatch(/^[\p{L}_].*\.$/u);
    }
  });

  it('is one for all jobs that it is the same in, and another for another default or another part', () => {
    const keys = (code: string): number =>
      new Set(items.filter((item) => item.code === code).map((item) => sharedFact(item).key)).size;
    const defaults = items
      .filter(({ code }) => code === 'default/used')
      .map(({ values }) => {
        const { field, value, why } = values as { field: string; value: unknown; why: unknown };
        return JSON.stringify([field, value, why]);
      });
    expect(keys('default/used')).toBe(new Set(defaults).size);
    const floating = items.filter(({ code }) => code === 'rate/turbine-floats');
    const clauses = new Set(floating.map(({ values }) => (values as { clause: string }).clause));
    expect(clauses.size).toBeGreaterThan(1);
    expect(keys('rate/turbine-floats')).toBe(clauses.size);
  });

  it('names the rows that a default stands in for', () => {
    const used = items.filter(({ code }) => code === 'default/used');
    expect(used.length).toBeGreaterThan(50);
    for (const item of used) {
      const { rows } = item.values as { rows: readonly string[] };
      const { about } = sharedFact(item);
      expect(about[0]).toBe(rows[0]);
      if (about.length === rows.length) expect(about).toEqual(rows);
    }
  });
});
