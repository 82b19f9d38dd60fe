import { appendFile, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { filesBelow, listOf, smallSteps, workshop, type Workshop } from './stand-ins.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
  await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Hütte µ'));
});
afterEach(() => shop.remove());

const plan = (more: Partial<BatchOptions> = {}): Promise<BatchResult> =>
  runBatch(shop.options({ make: 'plan', ...more }), smallSteps);
const named = (result: BatchResult): string[] =>
  result.items.flatMap(({ job, item }) =>
    item.code === 'batch/file-edited' ? [`${job} ${item.file} ${item.severity}`] : [],
  );

describe('a file of ours that someone edited', () => {
  it('is named when it is made again, once', async () => {
    await plan();
    const before = await shop.read('A-1/schedule.csv');
    await appendFile(join(shop.out, 'A-1', 'schedule.csv'), 'our crew,comes on Monday\r\n');
    const result = await plan();
    expect(named(result)).toEqual(['A-1 A-1/schedule.csv confirm']);
    expect(result.jobs.map((j) => j.confirm)).toEqual([1, 0]);
    expect(result.exitStatus).toBe(0);
    expect(await shop.read('A-1/schedule.csv')).toBe(before);
    expect(await shop.read('open-items.csv')).toContain('batch/file-edited');
    expect(named(await plan())).toEqual([]);
  });

  it('is named too where the plan changed, and where every pack is asked for again', async () => {
    await plan();
    for (const job of ['A-1', 'A-2']) await appendFile(join(shop.out, job, 'plan.json'), ' ');
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    expect(named(await plan())).toEqual(['A-1 A-1/plan.json confirm', 'A-2 A-2/plan.json confirm']);
    await writeFile(join(shop.out, 'A-2', 'plan.json'), '{}');
    expect(named(await plan({ force: true }))).toEqual(['A-2 A-2/plan.json confirm']);
  });
});

describe('a file that nobody edited', () => {
  it('is not named: touched, deleted, or made by a run that was killed before it could say so', async () => {
    await plan();
    await utimes(join(shop.out, 'A-1', 'plan.json'), new Date(0), new Date(0));
    expect((await plan()).jobs.map((j) => j.done)).toEqual(['unchanged', 'unchanged']);
    await rm(join(shop.out, 'A-1', 'schedule.csv'));
    expect(named(await plan())).toEqual([]);
    const records = await readFile(join(shop.out, '.shuntbook', 'packs.ndjson'));
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    await plan();
    await writeFile(join(shop.out, '.shuntbook', 'packs.ndjson'), records);
    expect(named(await plan())).toEqual([]);
  });

  it("of another name stays where it is in a job's folder", async () => {
    await plan();
    await writeFile(join(shop.out, 'A-1', 'notes.txt'), 'mine');
    await writeFile(join(shop.out, 'A-1', 'plan.json'), '{}');
    await plan();
    expect((await filesBelow(shop.out)).get('A-1/notes.txt')?.toString()).toBe('mine');
  });
});
