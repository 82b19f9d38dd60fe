import { describe, expect, it } from 'vitest';
import { planOfSize } from '../plan-of-size.js';

describe.each([6, 14, 32] as const)('the generated job of %i', (protectors) => {
  it('has as many protectors, each with a part, and isn’t a draft', async () => {
    const plan = await planOfSize(protectors);
    expect(plan.protectors).toHaveLength(protectors);
    expect(plan.protectors.filter(({ part }) => part === null)).toEqual([]);
    expect(plan.submittable).toBe(true);
  });
});

it('of the 32, 26 differ in nothing but tag and input', async () => {
  const plan = await planOfSize(32);
  const strings = plan.protectors.filter(({ ports }) => ports.some(({ port }) => port.startsWith('dc-in-')));
  const kinds = strings.map(({ part, place, required, figures }) =>
    JSON.stringify([part, place, required, figures]),
  );
  expect(strings).toHaveLength(26);
  expect(new Set(kinds).size).toBe(1);
});
