import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { platesOf } from '../../src/documents/labels/plates.js';
import { permitPage } from '../../src/documents/permit-sheet/paper.js';
import { defaultSettings } from '../../src/model/settings.js';
import { isolationOrder } from '../../src/rules/isolate/order.js';
import { say } from '../../src/words/reasons/say.js';
import { dataOf, one, planOf } from '../plan/plan-of.js';

// check-values.md section 10: work, markings and papers.

describe('NFPA 70E 120.5 (read): absence of voltage', () => {
  const { steps } = isolationOrder([{ tag: 'S', kind: 'service', suppliedAt: [], aheadOfMain: false }], 5);
  const told = steps.flatMap(({ acts }) => acts.map(({ does }) => say(does)));
  test('each conductor to ground and to each other, the tester on a known source before and after, last of all', () => {
    expect(told.at(-1)).toMatch(
      /^Prove dead: the tester on a known live source, then each conductor to ground and to each other, then the tester on the live source again$/,
    );
    expect(told.at(-2)).toMatch(/^Lock and tag/);
  });
});

describe('plates', () => {
  const plates = (facts: string, row: string): readonly string[] =>
    platesOf(dataOf(facts, row)).map(({ word, text }) => `${word} ${text}`.trim());
  test('NEC 408.3(F)(1) (read): the words for a high leg, which is phase B; other systems have none', () => {
    expect(plates('', 'S service; ac_in=240/120 high-leg')).toEqual([
      'CAUTION B phase has 208 volts to ground',
    ]);
    expect(plates('', 'S service; ac_in=208Y/120')).toEqual([]);
  });
  test('NEC 110.24 (read): isn’t for dwelling units', () => {
    const service = 'S service; ac_in=120/240; fault_current=10 kA';
    expect(plates('occupancy=other', service)).toEqual(['Available fault current: 10,000 A']);
    expect(plates('occupancy=dwelling', service)).toEqual([]);
  });
});

test.each([
  ['Yard / pole', '225.42'],
  ['House / porch', '215.18'],
])('a pole is a structure (read): a feeder from %s is of NEC 2023 %s', (place, clause) => {
  const rows = `S service; ac_in=120/240; outdoors=yes; place=${place}
    P panel; connects_to=S; ac_in=120/240; place=House / hall; run_length=20 m; building_occupancy=dwelling`;
  const [reason] = one(planOf('occupancy=dwelling', rows), 'P:feeder').reasons.filter(
    ({ rule }) => rule === 'place/feeder',
  );
  expect(reason?.because).toContain(clause);
});

test('a permit office of a city in California (read): 11 x 17, all text 10 pt or more', () => {
  const { width, height } = permitPage({ basis: 'nec-2023' }, defaultSettings());
  expect([width / 25.4, height / 25.4]).toEqual([17, 11]);
  expect(readFileSync('templates/styles/kit-type.css', 'utf8')).toMatch(/--size-permit: 10pt;/);
});
