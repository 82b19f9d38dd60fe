import { describe, expect, test } from 'vitest';
import { demoPlans } from '../documents/fixtures/demo-plans.js';
import { versionOne } from '../output/version-one.js';
import { planJson, readPlan } from '../../src/output/plan-file.js';
import { subject, type Step } from '../../src/model/step.js';
import { reason, type Reason } from '../../src/model/reason.js';
import { RATING_TITLES } from '../../src/words/reasons/en/calculation.js';
import { SOURCE } from '../../src/words/reasons/en/source.js';
import { say } from '../../src/words/reasons/say.js';
import { saidSureness } from '../../src/words/steps/said-sureness.js';
import { stepTold, SURENESS } from '../../src/words/steps/told.js';
import {
  CURRENT_RULES,
  NOMINAL_CURRENT_RULE,
  VOLTAGE_RULES,
  WITHSTAND_RULE,
} from '../../src/rules/rulebook.js';

const step = (given: Partial<Step>): Step =>
  ({
    symbol: 'Voc',
    ...subject('cold-voltage/module-voltage'),
    value: 41.2,
    unit: 'V',
    sure: 'stated',
    uses: [],
    source: { from: 'list', file: 'jobs.csv', line: 12, column: 'Voc' },
    ...given,
  }) as Step;

describe('the words of a step', () => {
  test('say where a stated figure stands', () => {
    expect(stepTold(step({}))).toMatchObject({
      says: 'Open-circuit voltage of one module at standard test conditions',
      formula: '',
      substituted: '',
      source: 'jobs.csv, line 12, Voc',
      sourced: 'stated: jobs.csv, line 12, Voc',
    });
  });
  test('name how sure it is once, where its source says it already', () => {
    const memory = step({ sure: 'memory', source: reason('source/from-memory') });
    expect(stepTold(memory).sourced).toBe('value from memory');
    const table = step({ sure: 'published', source: reason('source/withstand-table') });
    expect(stepTold(table).sourced).toBe('published: IEC 60664-1:2020 Table F.1');
  });
  test('name it beside a source that another version wrote, or that a later one knows', () => {
    const earlier = step({ sure: 'memory', source: reason('earlier/as-written', { text: 'from memory' }) });
    expect(stepTold(earlier).sourced).toBe('value from memory: from memory');
    const later = { code: 'source/later', values: {} } as unknown as Step['source'];
    expect(stepTold(step({ source: later })).sourced).toBe('stated: source/later');
  });
  test('of a step that a later shuntbook wrote are its code', () => {
    expect(stepTold({ ...step({}), code: 'later/unknown' } as unknown as Step).says).toBe('later/unknown');
  });
});

describe('what a source says of how sure a figure is', () => {
  const values = {
    standard: 'S',
    edition: '1',
    clause: '2',
    places: [],
    each: [],
    basis: 'nec-2023',
    table: 'A.1',
  };
  const cases = Object.keys(SOURCE).flatMap((code) =>
    [true, false].map((is) => {
      const given = { ...values, memory: is, read: is, practice: is ? 'iec' : 'nec' };
      return [`${code}, ${String(is)}`, { code, values: given } as unknown as Reason] as const;
    }),
  );
  test.each(cases)('%s: its sentence holds those words', (_, source) => {
    const said = saidSureness(source);
    const held = Object.values<string>(SURENESS).filter((word) => say(source).includes(word));
    if (said === null) expect(held).toEqual([]);
    else expect(held).toContain(SURENESS[said]);
  });
  test('a place in a file says nothing of it', () => {
    expect(saidSureness({ from: 'list', file: 'jobs.csv', line: 12, column: 'Voc' })).toBeNull();
  });
});

test('a calculation bears the title of its rule', () => {
  const rules = [...VOLTAGE_RULES, ...CURRENT_RULES, NOMINAL_CURRENT_RULE, WITHSTAND_RULE];
  expect(Object.fromEntries(rules.map((rule) => [rule.id, rule.title]))).toEqual(RATING_TITLES);
});

describe('the steps of plan.json', () => {
  const plans = demoPlans();
  // How sure a figure is stands once by the code of its source, which version 1 has none of.
  const told = (of: readonly { readonly steps: readonly Step[] }[]): unknown =>
    of.flatMap(({ steps }) => steps.map((one) => ({ ...stepTold(one), sourced: '' })));

  test.each(plans.map((plan) => [plan.job, plan] as const))('%s read back say what they said', (_, plan) => {
    const again = readPlan(JSON.parse(planJson(plan)))?.plan;
    expect(again).toEqual(plan);
    expect(plan.protectors.flatMap((p) => p.calculations).length).toBeGreaterThan(0);
  });

  test.each(plans.map((plan) => [plan.job, plan] as const))(
    '%s as version 1, which has words alone, say the same',
    (_, plan) => {
      const first = readPlan(versionOne(planJson(plan)))?.plan;
      expect(first?.protectors.flatMap((p) => p.calculations).length).toBeGreaterThan(0);
      expect(first?.protectors.map((p) => told(p.calculations))).toEqual(
        plan.protectors.map((p) => told(p.calculations)),
      );
      expect(first && told(first.siteCalculations)).toEqual(told(plan.siteCalculations));
    },
  );
});
