import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { filesBelow, listOf, smallSteps, workshop, type Workshop } from '../batch/stand-ins.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

const run = (more: Partial<BatchOptions> = {}): Promise<BatchResult> =>
  runBatch(shop.options(more), smallSteps);
const codes = (result: BatchResult): string[] => result.items.map(({ item }) => item.code);

interface Recorded {
  folder: string;
  files: { name: string }[];
  previousPlan: string;
  printedPlan: string;
}

/**
 * Changes the record of the packs as somebody who can write to the output folder might.
 * @returns folders by the line of their record
 */
async function forge(change: (record: Recorded) => void): Promise<string[]> {
  const path = join(shop.out, '.shuntbook', 'packs.ndjson');
  const lines = (await readFile(path, 'utf8')).trim().split('\n');
  const records = lines.map((line) => JSON.parse(line) as Recorded);
  const folders = records.map((record) => record.folder);
  records.forEach(change);
  await writeFile(path, records.map((record) => `${JSON.stringify(record)}\n`).join(''));
  return folders;
}

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
    const lines = await forge((record) => {
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
      found: name,
    });
    expect(codes(await run())).not.toContain('batch/record-ignored');
  });

  it('leads to no file by the name of a plan that is kept aside', async () => {
    await shop.write('a.csv', listOf(['A-1'], 'One'));
    await run({ make: 'plan' });
    await mkdir(join(shop.out, '.shuntbook', 'plans', 'A-1@'), { recursive: true });
    await writeFile(join(shop.folder, 'victim.json'), 'untouched');
    await forge((record) => {
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
    await forge((record) => {
      record.folder = '../lists';
    });
    const result = await run({ make: 'plan' });
    expect(codes(result)).toContain('batch/record-ignored');
    expect(await readdir(shop.lists)).toEqual(['a.csv']);
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
