import { execFileSync } from 'node:child_process';
import { mkdir, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { runBatch } from '../../src/batch/run-batch.js';
import { jpeg, png, pngOfSize } from './pictures.js';
import { listOf, smallDocuments, smallPlan, workshop, type Workshop } from './stand-ins.js';

let shop: Workshop;
let photos: string;
beforeEach(async () => {
  shop = await workshop();
  photos = join(shop.folder, 'photos');
  await mkdir(join(photos, 'A-1'), { recursive: true });
});
afterEach(() => shop.remove());

const put = (name: string, bytes: Uint8Array | string): Promise<void> => writeFile(join(photos, name), bytes);

/** What a run says of each photo, and the tags whose photos it shows. */
async function run(
  more: Partial<BatchOptions> = {},
): Promise<{ result: BatchResult; said: string[]; shown: string[] }> {
  const shown: string[] = [];
  const result = await runBatch(shop.options({ photos, ...more }), {
    planJob: smallPlan,
    renderDocuments: (plan, context) => {
      shown.push(...(context.photos ?? []).map((photo) => `${plan.job} ${photo.tag}`));
      return smallDocuments(plan, { ...context, photos: [] });
    },
  });
  const rows: Record<string, string>[] = parse(await shop.read('open-items.csv'), { columns: true });
  const said = rows
    .filter((row) => row['code']?.startsWith('photo/'))
    .map(
      (row) => `${row['job'] ?? ''} ${row['severity'] ?? ''} ${row['file'] ?? ''}: ${row['message'] ?? ''}`,
    )
    .sort();
  return { result, said, shown };
}

const listOfTags = (tags: readonly string[]): string =>
  ['job,tag,kind', ...tags.map((tag) => `A-1,${tag},battery`), ''].join('\n');

// That the largest of them are printed, `npm run faults` shows (`tests/faults/large-photos.long.ts`).
describe('a photo that cannot be printed', () => {
  it('is an item that says why, and keeps none of the others from being printed', async () => {
    const tags = [
      'OK',
      'OK-2',
      'HEIC',
      'SVG',
      'LINK',
      'LOOP',
      'HUGE',
      'BIG',
      'CUT',
      'TEXT',
      'EMPTY',
      'DIR',
      'PIPE',
      'RARE',
    ];
    await shop.write('a.csv', listOfTags(tags));
    await put('A-1/OK.png', png(4, 4));
    await put('A-1/OK-2.JPG', jpeg(640, 480));
    await put('A-1/HEIC.heic', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'));
    await put('A-1/SVG.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>');
    await put('outside.png', png(4, 4));
    await symlink(join(photos, 'outside.png'), join(photos, 'A-1/LINK.png'));
    await symlink('LOOP.png', join(photos, 'A-1/LOOP.png'));
    await put('A-1/HUGE.png', pngOfSize(30_000, 30_000));
    await put('A-1/BIG.jpg', Buffer.concat([jpeg(640, 480), Buffer.alloc(300_000_000)]));
    await put('A-1/CUT.jpg', jpeg(640, 480).subarray(0, 40));
    await put('A-1/TEXT.jpg', 'no photo');
    await put('A-1/EMPTY.png', '');
    await mkdir(join(photos, 'A-1/DIR.png'));
    execFileSync('mkfifo', [join(photos, 'A-1/PIPE.png')]);
    await put('A-1/RARE.jpg', jpeg(640, 480, 0xc3));
    const { result, said, shown } = await run();
    expect(result.exitStatus).toBe(0);
    expect(result.jobs).toMatchObject([{ status: 'complete', done: 'printed', confirm: 12 }]);
    expect(shown).toEqual(['A-1 OK', 'A-1 OK-2']);
    const why = (name: string): string =>
      said.find((line) => line.startsWith(`A-1 confirm ${name}: `))?.split('printed: ')[1] ?? '';
    expect({
      heic: why('HEIC.heic'),
      svg: why('SVG.svg'),
      link: why('LINK.png'),
      loop: why('LOOP.png'),
      huge: why('HUGE.png'),
      big: why('BIG.jpg'),
      cut: why('CUT.jpg'),
      text: why('TEXT.jpg'),
      empty: why('EMPTY.png'),
      folder: why('DIR.png'),
      pipe: why('PIPE.png'),
      rare: why('RARE.jpg'),
    }).toEqual({
      heic: 'it is HEIC or AVIF, which no PDF holds.',
      svg: 'it is a drawing (SVG), not a photo.',
      link: 'it is a link, and links aren’t followed.',
      loop: 'it is a link, and links aren’t followed.',
      huge: 'it has 900 megapixels, more than 50.',
      big: 'it holds 301 MB, more than 50.',
      cut: 'it is damaged or ends too early.',
      text: 'it is no PNG and no JPEG, whatever its name says.',
      empty: 'it is no PNG and no JPEG, whatever its name says.',
      folder: 'it is a folder.',
      pipe: 'it is no file.',
      rare: 'it is a JPEG of a coding that browsers don’t read.',
    });
    // The plan has them too, and with it every document.
    const plan = JSON.parse(await shop.read('A-1/plan.json')) as {
      openItems: { code: string; equipment: string }[];
    };
    expect(plan.openItems.filter((i) => i.code === 'photo/not-printed').map((i) => i.equipment)).toContain(
      'HEIC',
    );
  });

  it('beyond 150 MB of a job is told with all others beyond, in one sentence, and not read', async () => {
    const large = Array.from({ length: 12 }, (_, i) => `L${i + 1}`);
    await shop.write('a.csv', listOfTags([...large, 'SMALL']));
    for (const tag of large) {
      await put(`A-1/${tag}.png`, png(4, 4));
      // A hole behind the picture: what is beyond isn't looked at, or it would be told to be no picture.
      await truncate(join(photos, `A-1/${tag}.png`), 49_000_000);
    }
    for (const tag of ['L4', 'L5']) {
      await put(`A-1/${tag}.png`, 'no photo');
      await truncate(join(photos, `A-1/${tag}.png`), 49_000_000);
    }
    await put('A-1/SMALL.png', png(4, 4));
    const { result, said, shown } = await run();
    expect(result.jobs).toMatchObject([{ status: 'complete', done: 'printed', confirm: 1 }]);
    // In the order of their names: L1, L10, L11, L12, L2 and so on.
    expect(shown).toEqual(['A-1 L1', 'A-1 L10', 'A-1 L11', 'A-1 SMALL']);
    expect(said).toEqual([
      'A-1 confirm L12.png: The photos L12.png, L2.png, L3.png, L4.png, L5.png, L6.png, L7.png, L8.png and 1 more of job A-1 aren’t printed: photos of one job hold at most 150 MB together.',
    ]);
  });

  it('is said though nothing else changed, and no longer once it is mended', async () => {
    await shop.write('a.csv', listOfTags(['CC-1']));
    await put('A-1/CC-1.png', 'none');
    expect((await run({ make: 'plan' })).said).toHaveLength(1);
    await put('A-1/CC-1.png', png(4, 4));
    expect((await run({ make: 'plan' })).said).toEqual([]);
    await rm(join(photos, 'A-1/CC-1.png'));
    await symlink('nowhere.png', join(photos, 'A-1/CC-1.png'));
    const { result, said } = await run();
    expect(said).toEqual([
      'A-1 confirm CC-1.png: The photo CC-1.png isn’t printed: it is a link, and links aren’t followed.',
    ]);
    expect(result.jobs).toMatchObject([{ status: 'complete', done: 'printed' }]);
    expect((await run()).result.jobs).toMatchObject([{ done: 'unchanged', confirm: 1 }]);
  });
});

describe('a photo that belongs nowhere', () => {
  it('is an item: of no tag, or of no job', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2']));
    await put('A-1/CC-1.png', png(4, 4));
    await put('A-1/CC-9.png', png(4, 4));
    await put('A-1/notes.txt', 'x');
    await put('A-1/.DS_Store', 'x');
    await put('A-1/Thumbs.db', 'x');
    await symlink('nowhere.png', join(photos, 'A-1/gone.png'));
    await put('stray.png', png(4, 4));
    await mkdir(join(photos, 'Z-9'));
    await symlink(join(photos, 'A-1'), join(photos, 'A-2'));
    const { said, shown } = await run({ job: 'A-1' });
    expect(shown).toEqual(['A-1 CC-1']);
    expect(said).toEqual([
      ' confirm Z-9: Z-9, among the photos, is the folder of no job on the lists: nothing in it is printed.',
      ' confirm stray.png: stray.png, among the photos, is the folder of no job on the lists: nothing in it is printed.',
      'A-1 confirm CC-9.png: The photo CC-9.png isn’t printed: A-1 has no equipment of that tag.',
      'A-1 confirm gone.png: The photo gone.png isn’t printed: it is a link, and links aren’t followed.',
      'A-1 confirm notes.txt: The photo notes.txt isn’t printed: A-1 has no equipment of that tag.',
    ]);
    expect((await run()).said).toContain(
      'A-2 confirm A-2: The photo A-2 isn’t printed: it is a link, and links aren’t followed.',
    );
  });

  it('is found by a name whose accents a disk keeps apart', async () => {
    await shop.write('a.csv', listOfTags(['Pumpe-\u00fc']));
    await put('A-1/Pumpe-u\u0308.png', png(4, 4));
    expect(await run()).toMatchObject({ said: [], shown: ['A-1 Pumpe-\u00fc'] });
  });
});
