import { appendFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { filesBelow, listOf, smallSteps, workshop, type Workshop } from './stand-ins.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
  await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Hütte µ'));
});
afterEach(() => shop.remove());

const named = (result: BatchResult): string[] =>
  result.items.flatMap(({ job, item }) =>
    item.code === 'batch/file-edited' ? [`${job} ${item.file} ${item.severity}`] : [],
  );

describe('a file of ours that someone edited', () => {
  it('is named among the pages as well, and where the new pack lacks it', async () => {
    const pack = (names: readonly string[]): Promise<BatchResult> =>
      runBatch(shop.options({ job: 'A-1' }), {
        ...smallSteps,
        renderDocuments: async (made, context) =>
          (await smallSteps.renderDocuments(made, context)).filter((d) => names.includes(d.fileName)),
      });
    await pack(['labels.pdf', 'closeout-pack.pdf']);
    for (const name of ['labels.pdf', 'closeout-pack.pdf'])
      await appendFile(join(shop.out, 'A-1', name), '% a note\n');
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Two'));
    expect(named(await pack(['closeout-pack.pdf'])).sort()).toEqual([
      'A-1 A-1/closeout-pack.pdf confirm',
      'A-1 A-1/labels.pdf confirm',
    ]);
  });
});

describe('a job that has become a draft', () => {
  const labelsRemoved = (result: BatchResult): string[] =>
    result.items.flatMap(({ item }) =>
      item.code === 'batch/labels-removed' ? [`${item.file} ${item.severity} ${item.who}`] : [],
    );
  const pack = (submittable: boolean): Promise<BatchResult> =>
    runBatch(shop.options({ job: 'A-1' }), {
      ...smallSteps,
      planJob: async (job, context) => ({ ...(await smallSteps.planJob(job, context)), submittable }),
      renderDocuments: async (made, context) =>
        (await smallSteps.renderDocuments(made, context)).filter(
          (d) => made.submittable || d.fileName !== 'labels.pdf',
        ),
    });

  it('has no labels any more, and the run says so, once', async () => {
    await pack(true);
    expect((await filesBelow(shop.out)).has('A-1/labels.pdf')).toBe(true);
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Three'));
    expect(labelsRemoved(await pack(false))).toEqual(['A-1/labels.pdf confirm office']);
    expect((await filesBelow(shop.out)).has('A-1/labels.pdf')).toBe(false);
    expect(labelsRemoved(await pack(false))).toEqual([]);
  });

  it('has none that no record names, and keeps what is not ours', async () => {
    await pack(false);
    await appendFile(join(shop.out, 'A-1', 'labels.pdf'), 'of a run whose record is gone');
    await appendFile(join(shop.out, 'A-1', 'notes.txt'), 'mine');
    await shop.write('a.csv', listOf(['A-1', 'A-2'], 'Four'));
    expect(labelsRemoved(await pack(false))).toEqual(['A-1/labels.pdf confirm office']);
    expect((await filesBelow(shop.out)).get('A-1/notes.txt')?.toString()).toBe('mine');
  });
});
