import { copyFile, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { filledByAnother } from '../site-forms/fill-forms.js';
import { workshop, type Workshop } from './stand-ins.js';

const list = (place: string, name = 'Barn'): string =>
  `
job,job_name,tag,kind,connects_to,run_length (ft),place,ac_in,ac_out,dc_inputs,max_dc_voltage (V),lowest_temp (C),voc_stc (V),isc_stc (A),voc_coefficient,modules_in_series,strings_in_parallel
J-1,${name},SVC,service,,,House / wall,120/240,,,,-18,,,,,
J-1,,INV,grid-tie-inverter,SVC,10,${place},,240,1,600,,,,,,
J-1,,ARR,array,INV/1,40,House / roof,,,,,,41.2,10.2,-0.28 %/C,10,1
`.trimStart();

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
  await copyFile('fixtures/demo/catalogue.csv', join(shop.lists, 'catalogue.csv'));
  await shop.write('a.csv', list('House / garage'));
});
afterEach(() => shop.remove());

const pack = (more: Partial<BatchOptions> = {}): Promise<BatchResult> => runBatch(shop.options(more));
const at = (name: string): string => join(shop.out, 'J-1', name);
const forms = async (): Promise<string[]> =>
  (await readdir(join(shop.out, 'J-1'))).filter((name) => name.endsWith('.pdf') && name.startsWith('site-'));

it('a form that someone filled in on a screen is never printed over', { timeout: 120_000 }, async () => {
  await pack();
  const filled = await filledByAnother(
    await readFile(at('site-record.pdf')),
    new Map([['P-1.serial', 'INV-0001']]),
  );
  await writeFile(at('site-record.pdf'), filled);
  const codes = ({ items }: BatchResult): string[] =>
    items.map(({ item }) => item.code).filter((code) => code.startsWith('batch/f'));
  expect((await pack()).jobs.map(({ done }) => done)).toEqual(['unchanged']);
  // Another name and another day on its pages: it asks for the same.
  await shop.write('a.csv', list('House / garage', 'Another name'));
  expect(codes(await pack({ date: '2026-05-07', dateGiven: true }))).toEqual([]);
  expect(await forms()).toEqual(['site-record.pdf']);
  await shop.write('a.csv', list('House / attic'));
  expect(codes(await pack())).toEqual(['batch/form-kept']);
  expect((await forms()).sort()).toEqual(['site-record.new.pdf', 'site-record.pdf']);
  expect(Buffer.compare(await readFile(at('site-record.pdf')), filled)).toBe(0);
});
