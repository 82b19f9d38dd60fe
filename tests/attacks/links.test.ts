import { link, mkdir, readdir, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';

let shop: Workshop;
let elsewhere: string;
beforeEach(async () => {
  shop = await workshop();
  elsewhere = join(shop.folder, 'elsewhere');
  await mkdir(elsewhere);
  await mkdir(shop.out);
  await shop.write('a.csv', listOf(['A-1', 'A-2']));
});
afterEach(() => shop.remove());

const plan = (): Promise<BatchResult> => runBatch(shop.options({ make: 'plan' }), smallSteps);
const done = (result: BatchResult): string => result.jobs.map((j) => `${j.job} ${j.status}`).join(', ');
const own = (name: string): string => join(shop.out, '.shuntbook', name);

describe('a link below the output folder', () => {
  it('in place of our own folder stops the run, and nothing is written through it', async () => {
    await symlink(elsewhere, join(shop.out, '.shuntbook'));
    await expect(plan()).rejects.toMatchObject({ exitStatus: 70, note: { code: 'output/link' } });
    expect(await readdir(elsewhere)).toEqual([]);
  });

  it("in place of a job's folder fails that job alone", async () => {
    await symlink(elsewhere, join(shop.out, 'A-1'));
    const result = await plan();
    expect(done(result)).toBe('A-1 failed, A-2 complete');
    expect(result.exitStatus).toBe(70);
    expect(result.items.map(({ item }) => item.code)).toContain('output/link');
    expect(await readdir(elsewhere)).toEqual([]);
  });

  it("in place of a job's folder that was made before is seen too", async () => {
    await plan();
    await rm(elsewhere, { recursive: true });
    await rename(join(shop.out, 'A-1'), elsewhere);
    await symlink(elsewhere, join(shop.out, 'A-1'));
    const before = await readFile(join(elsewhere, 'plan.json'), 'utf8');
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    expect(done(await plan())).toBe('A-1 failed, A-2 complete');
    expect(await readFile(join(elsewhere, 'plan.json'), 'utf8')).toBe(before);
  });

  it('that leads nowhere makes nothing there', async () => {
    await symlink(join(elsewhere, 'new'), join(shop.out, 'A-1'));
    expect(done(await plan())).toBe('A-1 failed, A-2 complete');
    expect(await readdir(elsewhere)).toEqual([]);
  });

  it('in place of the record of packs stops the run', async () => {
    await writeFile(join(elsewhere, 'victim'), 'untouched\n');
    await mkdir(own(''));
    await symlink(join(elsewhere, 'victim'), own('packs.ndjson'));
    await expect(plan()).rejects.toMatchObject({ exitStatus: 70, note: { code: 'output/not-a-file' } });
    expect(await readFile(join(elsewhere, 'victim'), 'utf8')).toBe('untouched\n');
  });

  it('in place of a file of ours is replaced by the file, and what it led to stays as it was', async () => {
    await plan();
    for (const name of ['open-items.csv', 'A-1/plan.json', '.shuntbook/last-run.json']) {
      await rm(join(shop.out, name));
      await writeFile(join(elsewhere, 'victim'), 'untouched');
      await symlink(join(elsewhere, 'victim'), join(shop.out, name));
    }
    expect(done(await plan())).toBe('A-1 complete, A-2 complete');
    expect(await readFile(join(elsewhere, 'victim'), 'utf8')).toBe('untouched');
    expect(JSON.parse(await shop.read('A-1/plan.json'))).toMatchObject({ job: 'A-1' });
    expect(await shop.read('open-items.csv')).toMatch(/^job,severity/);
  });

  it('of the hard sort shares no record of ours with a copy of the folder', async () => {
    await plan();
    await link(own('packs.ndjson'), join(elsewhere, 'copy'));
    const before = await readFile(join(elsewhere, 'copy'), 'utf8');
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    await plan();
    expect(await readFile(join(elsewhere, 'copy'), 'utf8')).toBe(before);
    expect((await plan()).jobs.map((j) => j.done)).toEqual(['unchanged', 'unchanged']);
  });
});

it('an output folder that is itself a link is the folder that it leads to', async () => {
  await rm(shop.out, { recursive: true });
  await symlink(elsewhere, shop.out);
  expect(done(await plan())).toBe('A-1 complete, A-2 complete');
  expect(await readdir(elsewhere)).toContain('A-1');
});
