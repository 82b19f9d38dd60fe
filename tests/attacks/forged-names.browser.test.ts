import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';
import { saidOf } from '../told.js';
import { forge } from './forge.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

const run = (more: Partial<BatchOptions> = {}): Promise<BatchResult> =>
  runBatch(shop.options(more), smallSteps);
const codes = (result: BatchResult): string[] => result.items.map(({ item }) => item.code);

describe('a record in the output folder that was forged', () => {
  const leading = [
    '../../victim.json',
    '../victim.json',
    'x/../../../victim.json',
    '../A-2/plan.json',
    'mine.txt',
  ];

  it.each(leading)('leads to no file but those of a pack: %s', async (name) => {
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'One'));
    await run({ make: 'plan' });
    await writeFile(join(shop.folder, 'victim.json'), 'untouched');
    await writeFile(join(shop.out, 'victim.json'), 'untouched');
    await writeFile(join(shop.out, 'A-1', 'mine.txt'), 'untouched');
    const lines = await forge(shop, (record) => {
      if (record.folder === 'A-1') record.files.push({ ...record.files[0], name });
    });
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    const result = await run();
    expect(result.jobs.map((j) => `${j.status} ${j.done}`)).toEqual(['complete printed', 'complete printed']);
    expect(await readFile(join(shop.folder, 'victim.json'), 'utf8')).toBe('untouched');
    expect(await readFile(join(shop.out, 'victim.json'), 'utf8')).toBe('untouched');
    expect(await readFile(join(shop.out, 'A-1', 'mine.txt'), 'utf8')).toBe('untouched');
    expect(await readdir(join(shop.out, 'A-2'))).toContain('plan.json');
    const said = result.items.find(({ item }) => item.code === 'batch/record-ignored');
    expect(said?.item).toMatchObject({
      file: '.shuntbook/packs.ndjson',
      line: lines.indexOf('A-1') + 1,
      values: { name },
    });
    expect(saidOf(said?.item).found).toBe(name);
    expect(codes(await run())).not.toContain('batch/record-ignored');
  });
});
