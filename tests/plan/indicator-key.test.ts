import { expect, it } from 'vitest';
import { indicatorKey } from '../../src/plan/choose/indicator-key.js';
import { indicatorFacts } from '../rules/facts.js';

// What two channels of one key show is worked out once: a fact that the key left out would give one the lights of the other.
it('tells channels apart by every fact that a rule about lights may ask for', () => {
  const facts = indicatorFacts();
  const names = Object.keys(facts) as (keyof typeof facts)[];
  expect(names.length).toBeGreaterThan(10);
  for (const name of names) {
    const value = facts[name];
    const other = typeof value === 'boolean' ? !value : `${String(value)} and more`;
    expect(indicatorKey({ ...facts, [name]: other }), name).not.toBe(indicatorKey(facts));
  }
});
