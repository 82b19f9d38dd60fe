import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import type { JobList } from '../../src/model/list.js';
import type { RenderedDocument } from '../../src/model/print.js';
import type { SiteRecord } from '../../src/model/record.js';
import { recordOf } from '../documents/fixtures/records.js';
import { listOf, smallDocuments, smallPlan, workshop, type Workshop } from './stand-ins.js';

let shop: Workshop;
let seen: DocumentContext[];
let jobs: JobList[];
beforeEach(async () => {
  shop = await workshop();
  await shop.write('a.csv', listOf(['A-1'], 'One'));
  [seen, jobs] = [[], []];
});
afterEach(() => shop.remove());

/** Runs the batch; the documents of a job are a pack, and permit sheets unless they stay. */
function pack(more: { readonly force?: boolean; readonly date?: string } = {}): Promise<BatchResult> {
  return runBatch(shop.options(more), {
    planJob: (job) => {
      jobs.push(job);
      return smallPlan(job);
    },
    renderDocuments: async (plan, context) => {
      seen.push(context);
      const [first] = await smallDocuments(plan, context);
      if (first === undefined) throw new Error('a pack has documents');
      const sheets: RenderedDocument = { ...first, fileName: 'permit-sheet.pdf' };
      return context.permitStays === true ? [first] : [first, sheets];
    },
  });
}

const put = (text: string): Promise<void> => writeFile(join(shop.out, 'A-1', 'record.json'), text);

/** The record of the only job. */
function record(change: Partial<SiteRecord> = {}): string {
  const [job] = jobs;
  if (job === undefined) throw new Error('nothing was planned');
  return JSON.stringify({ ...recordOf(smallPlan(job)), ...change });
}

const codes = (result: BatchResult): string[] =>
  result.items.map(({ item }) => `${item.code} ${item.severity} ${item.file}`);

describe('a record in a job’s folder', () => {
  it('is what the next pack shows, once; the permit sheets stay as they were submitted', async () => {
    await pack({ date: '2026-05-06' });
    const before = (await shop.tree()).get('A-1/permit-sheet.pdf');
    await put(record());
    await pack({ date: '2026-06-01' });
    expect(seen).toHaveLength(2);
    expect(seen[1]).toMatchObject({ recordFits: true, permitStays: true, record: { job: 'A-1' } });
    expect((await shop.tree()).get('A-1/permit-sheet.pdf')).toEqual(before);
    await pack({ date: '2026-06-01' });
    expect(seen).toHaveLength(2);
    await put(record({ state: 'record open' }));
    await pack({ date: '2026-06-01' });
    expect(seen).toHaveLength(3);
    expect((await shop.tree()).get('A-1/permit-sheet.pdf')).toEqual(before);
  });

  it('leaves the permit sheets to be made anew where that is asked for, or the plan changed', async () => {
    await pack();
    await put(record());
    await pack({ force: true });
    expect(seen[1]).toMatchObject({ permitStays: false });
    await shop.write('a.csv', listOf(['A-1'], 'Another name'));
    await pack();
    expect(seen[2]).toMatchObject({ permitStays: false });
  });

  it('of another plan is shown as that', async () => {
    await pack();
    await put(record({ plan: 'BCDFGHJK' }));
    await pack();
    expect(seen[1]).toMatchObject({ recordFits: false });
  });

  it.each([
    ['is no JSON', () => '{ "version": 1'],
    ['is none of ours', () => '{ "version": 7 }'],
    ['is that of another job', () => record({ job: 'A-2' })],
  ])('that %s is named, and the pack says what is planned', async (_, text) => {
    await pack();
    await put(text());
    const result = await pack({ date: '2026-06-01' });
    expect(seen.at(-1)?.record).toBeUndefined();
    expect(codes(result)).toContain('batch/record-not-read conflict A-1/record.json');
    // A run that has nothing to print says it too, and none of them makes the job a draft.
    const again = await pack({ date: '2026-06-01' });
    expect(codes(again)).toContain('batch/record-not-read conflict A-1/record.json');
    expect(again.exitStatus).toBe(0);
  });
});
