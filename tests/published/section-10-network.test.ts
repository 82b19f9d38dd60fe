import { describe, expect, test } from 'vitest';
import { clause } from '../../src/rules/clauses.js';
import { one, planOf } from '../plan/plan-of.js';

const OTHER = 'basis=nec-2023; occupancy=other';
type Planned = ReturnType<typeof planOf>;
const said = (plan: Planned, code: string): string[] =>
  plan.openItems.filter((item) => item.code === code).map((item) => `${item.severity}: ${item.message}`);

describe('NEC 702.5 (read): transfer equipment, so that sources aren’t joined by inadvertence', () => {
  const site = (between: string, feeds: string): Planned =>
    planOf(
      OTHER,
      `S service; ac_in=120/240; place=Hall
       ${between}
       P panel; ac_in=120/240; connects_to=${feeds}; run_length=2 m; place=Hall
       G generator; ac_out=120/240; connects_to=${feeds === 'S' ? 'P' : feeds}; run_length=2 m; place=Hall`,
    );
  test('a generator on a panel that a service feeds: missing, by its clause', () => {
    const told = said(site('', 'S'), 'fact/transfer-equipment');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^missing: .*702\.5/);
  });
  test('a transfer switch between: nothing is missing', () => {
    const plan = site('T transfer-switch; connects_to=S; run_length=2 m; place=Hall', 'T');
    expect(said(plan, 'fact/transfer-equipment')).toEqual([]);
  });
});

describe('NEC 710.15(C) (value from memory): one 120 V source and multiwire circuits', () => {
  const site = (made: string): Planned =>
    planOf(
      OTHER,
      `I inverter-charger; ac_out=${made}; place=Hall
       P panel; ac_in=120/240; connects_to=I; run_length=2 m; place=Hall`,
    );
  test('one 120 V source on a 120/240 V panel: to confirm, by its clause', () => {
    const [told, ...more] = said(site('120'), 'site/one-120-source');
    expect(told).toMatch(
      /^confirm: .*no multiwire circuits and no 240 V loads.*710\.15\(C\), value from memory/,
    );
    expect(more).toEqual([]);
  });
  test('a source of 120/240 V: nothing to confirm', () => {
    expect(said(site('120/240'), 'site/one-120-source')).toEqual([]);
  });
});

describe('NEC 210.9, 215.11 (read): the grounded conductor of an autotransformer is the supply’s', () => {
  const groundingBehind = (isolated: string): string =>
    one(
      planOf(
        OTHER,
        `S service; ac_in=480Y/277; system_grounding=impedance; place=Hall
         T transformer; ac_in=480Y/277; ac_out=208Y/120; isolated=${isolated}; connects_to=S; run_length=2 m; place=Hall
         P panel; ac_in=208Y/120; connects_to=T; run_length=2 m; place=Hall; protect=yes`,
      ),
      'P:feeder',
    ).grounding;
  test('of one system: the grounding of the supply passes', () => {
    expect(groundingBehind('no')).toMatch(/impedance/);
  });
  test('of two windings: a system of its own, solidly grounded by default', () => {
    expect(groundingBehind('yes')).toMatch(/^solid/);
  });
});

// The short-circuit rating stands with the other figures that a protector is selected by: 534.4.4.2 (seen) and 534.4.4.4. The list of
// check values has it as 534.4.6; both are from memory, and whoever has the standard at hand settles it.
test.each([
  ['connection-types', '534.4.3'],
  ['short-circuit-current-rating', '534.4.4.6'],
] as const)('IEC 60364-5-53, %s: clause %s (from memory)', (subject, number) => {
  expect(clause(subject, 'iec')).toMatchObject({
    standard: 'IEC 60364-5-53',
    clause: number,
    sure: 'memory',
  });
});
