import { readFileSync } from 'node:fs';
import { beforeEach, expect, it, vi } from 'vitest';

// What is kept across the jobs of a batch must not reach a batch with another catalogue or other settings.

const read = (path: string): string => readFileSync(`fixtures/${path}`, 'utf8');
const CATALOGUE = read('demo/catalogue.csv');
/** A third of the parts left out: others are chosen. */
const OTHER_CATALOGUE = CATALOGUE.split('\n')
  .filter((_, i) => i % 3 !== 1)
  .join('\n');
const OTHER_SETTINGS = {
  basis: 'iec',
  thresholds: { continuousShare: 1.3, shortCircuitShare: 1.5, leadPeakIec: 4000, leastReach: 3 },
};
const LISTS = ['demo/off-grid.csv', 'demo/grid.csv'];

type Variant = readonly [catalogue: string, settings: object];
const VARIANTS: readonly Variant[] = [
  [CATALOGUE, {}],
  [OTHER_CATALOGUE, {}],
  [CATALOGUE, OTHER_SETTINGS],
];

/** The plans of all lists, in the memory that the modules have now. */
async function plansOf([catalogueText, some]: Variant): Promise<string> {
  const m = await import('../../src/index.js');
  const { catalogue } = m.readCatalogueText('catalogue.csv', catalogueText);
  const settings = m.SettingsSchema.parse(some);
  const jobs = LISTS.flatMap((list) => m.readListText(list, read(list), { settings }).jobs);
  return jobs.map((job) => m.planJson(m.planJob(job, { catalogue, settings }))).join('\n');
}

beforeEach(() => {
  vi.resetModules();
});

it('plans each batch as if it were the first, whatever was planned before it', async () => {
  const alone: string[] = [];
  for (const variant of VARIANTS) {
    vi.resetModules();
    alone.push(await plansOf(variant));
  }
  expect(new Set(alone).size).toBe(VARIANTS.length);
  vi.resetModules();
  const inTurn: string[] = [];
  for (const variant of [...VARIANTS, ...VARIANTS]) inTurn.push(await plansOf(variant));
  expect(inTurn).toEqual([...alone, ...alone]);
});
