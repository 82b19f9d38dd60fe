import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { heavyPng } from '../batch/pictures.js';
import { workshop, type Workshop } from '../batch/stand-ins.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { renderDocuments } from '../../src/documents/render.js';

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

describe('photos as large as may be', () => {
  it('are printed, three of them and a hundred megabytes in one document; what is beyond is said', async () => {
    const photos = join(shop.folder, 'photos');
    await mkdir(join(photos, 'A-1'), { recursive: true });
    const numbers = [1, 2, 3, 4];
    await shop.write('a.csv', ['job,tag,kind', ...numbers.map((n) => `A-1,P-${n},battery`), ''].join('\n'));
    for (const n of numbers) await writeFile(join(photos, 'A-1', `P-${n}.png`), heavyPng(3 + n, 49_000_000));
    const result = await runBatch(shop.options({ photos, workers: 1 }), {
      renderDocuments: async (plan, context) => (await renderDocuments(plan, context)).slice(0, 1),
    });
    expect(result.jobs).toMatchObject([{ status: 'complete', done: 'printed' }]);
    const pdf = (await shop.tree()).get('A-1/closeout-pack.pdf')?.toString('latin1') ?? '';
    expect([4, 5, 6, 7].map((width) => pdf.includes(`/Width ${width}\n`))).toEqual([true, true, true, false]);
    expect(await shop.read('open-items.csv')).toContain(
      'The photo P-4.png of job A-1 isn’t printed: photos of one job hold at most 150 MB together.',
    );
  });
});
