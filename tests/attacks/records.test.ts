import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { filesBelow, listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';
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
  it('leads to no file by the name of a plan that is kept aside', async () => {
    await shop.write('a.csv', listOf(['A-1'], 'One'));
    await run({ make: 'plan' });
    await mkdir(join(shop.out, '.shuntbook', 'plans', 'A-1@'), { recursive: true });
    await writeFile(join(shop.folder, 'victim.json'), 'untouched');
    await forge(shop, (record) => {
      record.previousPlan = '/../../../../victim';
      record.printedPlan = '/../../../../victim';
    });
    await shop.write('a.csv', listOf(['A-1'], 'Two'));
    const result = await run({ make: 'plan' });
    expect(await readFile(join(shop.folder, 'victim.json'), 'utf8')).toBe('untouched');
    expect(codes(result)).toContain('batch/record-ignored');
  });

  it('of a folder elsewhere is ignored', async () => {
    await shop.write('a.csv', listOf(['A-1']));
    await run({ make: 'plan' });
    await forge(shop, (record) => {
      record.folder = '../lists';
    });
    const result = await run({ make: 'plan' });
    expect(codes(result)).toContain('batch/record-ignored');
    expect(await readdir(shop.lists)).toEqual(['a.csv', 'settings.json']);
  });

  it.each([
    ['no JSON', 'not JSON'],
    ['a line that was cut off', '{"files":'],
    ['a list', '[]'],
    ['null', 'null'],
    ['a prototype', '{"__proto__":{"x":1}}'],
    ['a nest of 100,000 lists', '['.repeat(100_000)],
    ['a NUL', '\0'],
  ])('as %s makes the packs be made again, and nothing else', async (_, line) => {
    await shop.write('a.csv', listOf(['A-1']));
    await run({ make: 'plan' });
    const before = await filesBelow(shop.out);
    await writeFile(join(shop.out, '.shuntbook', 'packs.ndjson'), `${line}\n`);
    const result = await run({ make: 'plan' });
    expect(result.jobs.map((j) => j.done)).toEqual(['nothing']);
    expect([...(await filesBelow(shop.out)).keys()]).toEqual([...before.keys()]);
  });
});
