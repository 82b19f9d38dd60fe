import { mkdir, readdir, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import { listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
  await shop.write('a.csv', listOf(['A-1', 'A-2']));
});
afterEach(() => shop.remove());

describe('a link below the output folder', () => {
  it('in place of the folder of kept plans takes no plan and removes none', async () => {
    const elsewhere = join(shop.folder, 'elsewhere');
    await mkdir(elsewhere);
    // Plans are kept aside of packs that were printed.
    await runBatch(shop.options(), smallSteps);
    await symlink(elsewhere, join(shop.out, '.shuntbook', 'plans'));
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    const result = await runBatch(shop.options({ make: 'plan' }), smallSteps);
    expect(result.jobs.map((j) => `${j.job} ${j.status}`)).toEqual(['A-1 failed', 'A-2 failed']);
    expect(await readdir(elsewhere)).toEqual([]);
  });
});
