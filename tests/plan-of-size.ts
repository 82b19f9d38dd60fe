import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { jobOf } from '../bench/jobs-of-size.mjs';
import { planJob, readInputs, type Plan } from '../src/index.js';

/** The plan of a generated job of so many protectors, with the demo's catalogue, library and settings. */
export async function planOfSize(protectors: 6 | 14 | 32): Promise<Plan> {
  const folder = mkdtempSync(join(tmpdir(), 'shuntbook-size-'));
  try {
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
    return planJob(job, inputs);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
