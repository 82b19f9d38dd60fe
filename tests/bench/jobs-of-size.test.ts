import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { jobOf } from '../../bench/jobs-of-size.mjs';
import { planJob, readInputs, type Plan } from '../../src/index.js';

const folder = mkdtempSync(join(tmpdir(), 'shuntbook-sizes-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

async function planOf(protectors: 6 | 14 | 32): Promise<Plan> {
  const list = join(folder, `${protectors}.csv`);
  writeFileSync(list, jobOf(protectors));
  const demo = (name: string): string => join('fixtures/demo', name);
  const inputs = await readInputs({
    make: 'plan',
    lists: [list],
    catalogue: demo('catalogue.csv'),
    library: demo('library.csv'),
    settings: demo('settings.json'),
    date: '2026-01-01',
    dateGiven: true,
  });
  const [job, ...others] = inputs.jobs;
  if (!job || others.length > 0) throw new Error('the list is to hold one job');
  return planJob(job, { catalogue: inputs.catalogue, settings: inputs.settings });
}

describe.each([6, 14, 32] as const)('the generated job of %i', (protectors) => {
  it('has as many protectors, each with a part, and isn’t a draft', async () => {
    const plan = await planOf(protectors);
    expect(plan.protectors).toHaveLength(protectors);
    expect(plan.protectors.filter(({ part }) => part === null)).toEqual([]);
    expect(plan.submittable).toBe(true);
  });
});

it('of the 32, 26 differ in nothing but tag and input', async () => {
  const plan = await planOf(32);
  const strings = plan.protectors.filter(({ ports }) => ports.some(({ port }) => port.startsWith('dc-in-')));
  const kinds = strings.map(({ part, place, required, figures }) =>
    JSON.stringify([part, place, required, figures]),
  );
  expect(strings).toHaveLength(26);
  expect(new Set(kinds).size).toBe(1);
});
