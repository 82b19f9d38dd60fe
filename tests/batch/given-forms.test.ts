import { copyFile, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { openGivenPlans } from '../../src/batch/given-plans.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { workshop, type Workshop } from './stand-ins.js';

const list = (place = 'House / garage', name = 'Barn'): string =>
  `
job,job_name,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out,dc_inputs,max_dc_voltage (V),lowest_temp (C),voc_stc (V),isc_stc (A),voc_coefficient,modules_in_series,strings_in_parallel
J-1,${name},SVC,service,,,House / wall,120/240,,,,-18,,,,,
J-1,,INV,grid-tie-inverter,SVC,10,${place},,240,1,600,,,,,,
J-1,,ARR,array,INV/1,40,House / roof,,,,,,41.2,10.2,-0.28 %/C,10,1
`.trimStart();

const FORMS = ['site-facts.csv', 'site-readings.csv', 'site-record.csv'];

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
  await copyFile('fixtures/demo/catalogue.csv', join(shop.lists, 'catalogue.csv'));
  await shop.write('a.csv', list());
});
afterEach(() => shop.remove());

const plan = (more: Partial<BatchOptions> = {}): Promise<BatchResult> =>
  runBatch(shop.options({ make: 'plan', ...more }));
const at = (name: string): string => join(shop.out, 'J-1', name);
const read = (name: string): Promise<string> => shop.read(`J-1/${name}`);
const forms = async (): Promise<string[]> =>
  (await readdir(join(shop.out, 'J-1'))).filter((name) => name.startsWith('site-')).sort();
const told = ({ items }: BatchResult): string[] =>
  items.flatMap(({ job, item }) =>
    item.code === 'batch/form-kept' ? [`${job} ${item.file} ${JSON.stringify(item.values)}`] : [],
  );
/** Fills a serial into the first row of the record. */
async function fillIn(name = 'site-record.csv'): Promise<string> {
  const text = (await read(name)).replace(/^(J-1,[A-Z]{8},P-1,[^,]*),,,/m, '$1,,INV-0001,');
  expect(text).toContain('INV-0001');
  await writeFile(at(name), text);
  return text;
}
const KEPT = (fresh: string): string =>
  `J-1 J-1/site-record.csv {"file":"site-record.csv","fresh":"${fresh}","folder":"J-1"}`;

describe('the forms of a job', () => {
  it('stand in its folder, and are made again where one is missing', async () => {
    await plan();
    expect(await forms()).toEqual(FORMS);
    expect((await plan()).jobs.map(({ done, folder }) => [done, folder])).toEqual([['unchanged', 'J-1']]);
    const before = await read('site-facts.csv');
    await rm(at('site-facts.csv'));
    await plan();
    expect(await read('site-facts.csv')).toBe(before);
  });

  it('that someone filled in is as good as untouched while the plan asks for the same', async () => {
    await plan();
    const filled = await fillIn();
    const again = await plan();
    expect(again.jobs.map(({ done }) => done)).toEqual(['unchanged']);
    await shop.write('a.csv', list(undefined, 'Another name'));
    const renamed = await plan();
    const forced = await plan({ force: true });
    for (const result of [again, renamed, forced]) {
      expect(told(result)).toEqual([]);
      expect(result.items.filter(({ item }) => item.code === 'batch/file-edited')).toEqual([]);
      expect(result.exitStatus).toBe(0);
    }
    expect(await read('site-record.csv')).toBe(filled);
    expect(await forms()).toEqual(FORMS);
  });

  it('that someone filled in is never written over: what is asked for now stands beside it, and an item says so', async () => {
    await plan();
    const filled = await fillIn();
    await shop.write('a.csv', list('House / attic'));
    const moved = await plan();
    expect(told(moved)).toEqual([KEPT('site-record.new.csv')]);
    expect(await read('site-record.csv')).toBe(filled);
    const fresh = await read('site-record.new.csv');
    expect(fresh).toContain('House / attic');
    // What nobody filled in is the new one.
    expect(await read('site-readings.csv')).toContain(fresh.split('\r\n')[1]?.split(',')[1] ?? 'no mark');
    expect(told(await plan())).toEqual([]);
    // The new one is ours still, and gives way to the next.
    await shop.write('a.csv', list('House / cellar'));
    expect(told(await plan())).toEqual([KEPT('site-record.new.csv')]);
    expect(await read('site-record.new.csv')).toContain('House / cellar');
    await fillIn('site-record.new.csv');
    await shop.write('a.csv', list('House / porch'));
    expect(told(await plan())).toEqual([KEPT('site-record.new-2.csv')]);
    expect(await read('site-record.csv')).toBe(filled);
    expect(await read('site-record.new.csv')).toContain('INV-0001');
  });

  it('take their name back once the filled-in one is put away', async () => {
    await plan();
    await fillIn();
    await shop.write('a.csv', list('House / attic'));
    await plan();
    await rm(at('site-record.csv'));
    await shop.write('a.csv', list('House / cellar'));
    expect(told(await plan())).toEqual([]);
    expect(await forms()).toEqual(FORMS);
  });

  it('stay where a folder of before holds a form that nobody knows', async () => {
    await plan();
    await rm(join(shop.out, '.shuntbook'), { recursive: true });
    const filled = await fillIn();
    expect(told(await plan())).toEqual([KEPT('site-record.new.csv')]);
    expect(await read('site-record.csv')).toBe(filled);
  });

  it('are no link: one that someone put there is replaced, and what it led to stays', async () => {
    await plan();
    const elsewhere = join(shop.folder, 'elsewhere.csv');
    await writeFile(elsewhere, 'mine');
    await rm(at('site-record.csv'));
    await symlink(elsewhere, at('site-record.csv'));
    await plan();
    expect(await readFile(elsewhere, 'utf8')).toBe('mine');
    expect(await read('site-record.csv')).toContain('J-1');
  });
});

describe('the plans that forms were given out for', () => {
  const markOf = async (): Promise<string> =>
    (await read('site-record.csv')).split('\r\n')[1]?.split(',')[1] ?? '';
  const given = (mark: string): ReturnType<ReturnType<typeof openGivenPlans>['read']> =>
    openGivenPlans(join(shop.out, '.shuntbook'), shop.out).read('J-1', mark);

  it('are kept as far as they decide, once another takes their place', async () => {
    await plan();
    const first = await markOf();
    expect(await given(first)).toBeUndefined();
    await shop.write('a.csv', list('House / attic'));
    await plan();
    const second = await markOf();
    expect(second).not.toBe(first);
    expect((await given(first))?.map(({ tag, place }) => `${tag} ${place}`)).toContain('P-1 House / garage');
    await shop.write('a.csv', list('House / cellar'));
    await plan();
    expect((await given(first))?.length).toBeGreaterThan(0);
    expect((await given(second))?.map(({ place }) => place)).toContain('House / attic');
  });

  it('are asked for by nothing but a fingerprint, and a forged file is none', async () => {
    await plan();
    const first = await markOf();
    await shop.write('a.csv', list('House / attic'));
    await plan();
    expect(await given(`../given/J-1@${first}`)).toBeUndefined();
    await writeFile(join(shop.out, '.shuntbook', 'given', `J-1@${first}.json`), '{"version":1');
    expect(await given(first)).toBeUndefined();
  });
});
