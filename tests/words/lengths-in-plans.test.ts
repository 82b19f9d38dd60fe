import { describe, expect, it } from 'vitest';
import { isNec } from '../../src/model/editions.js';
import type { Plan } from '../../src/model/plan.js';
import { told } from '../../src/words/messages/told.js';
import { isReason, say } from '../../src/words/reasons/say.js';
import { demoPlans } from '../documents/fixtures/demo-plans.js';

/** Calculations are worked in metres, and a clause keeps the unit of its standard. */
const OTHER_FORMS: ReadonlySet<string> = new Set(['calculations', 'siteCalculations', 'sources', 'clauses']);

/** Every sentence of a plan about its site: reasons wherever they stand, and what open items say. */
function sentencesOf(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap(sentencesOf);
  if (isReason(value)) return [say(value)];
  return Object.entries(value).flatMap(([key, inner]) => (OTHER_FORMS.has(key) ? [] : sentencesOf(inner)));
}
const sentences = ({ openItems, ...rest }: Plan): readonly string[] => [
  ...sentencesOf(rest),
  // What is expected of a length that isn't stated names an example in either unit.
  ...openItems.map(told).flatMap(({ message, found, hint }) => [message, found, hint]),
];

const METRES = /(?<![\d.])\d[\d.]* m(?![\w²])/g;
const FEET_FIRST = /(?<![\d.])\d[\d.]* ft \((\d[\d.]* m)\)/g;

describe.each(demoPlans().map((plan) => [plan.job, plan] as const))('%s', (_, plan) => {
  it('tells each length in the form of its basis, and in no other', () => {
    const all = sentences(plan).join('\n');
    const inMetres = all.match(METRES) ?? [];
    const inBoth = [...all.matchAll(FEET_FIRST)].map(([, metres]) => metres);
    const feet = all.match(/\d ft\b/g) ?? [];
    expect(inBoth).toEqual(isNec(plan.basis) ? inMetres : []);
    expect(feet).toHaveLength(inBoth.length);
  });
});

it('the demo tells lengths under the NEC and under IEC', () => {
  const bases = demoPlans()
    .filter((plan) => sentences(plan).some((of) => of.search(METRES) >= 0))
    .map(({ basis }) => (isNec(basis) ? 'nec' : basis));
  expect(new Set(bases)).toEqual(new Set(['nec', 'iec']));
});
