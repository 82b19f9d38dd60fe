import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findRecordPhotos, readRecordPhotos } from '../../src/batch/brought-photos.js';
import type { RecordPhotos } from '../../src/documents/parts/context.js';
import { demoPlan } from '../documents/fixtures/demo-plans.js';
import { recordOf } from '../documents/fixtures/records.js';
import { png } from './pictures.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-record-'));
  await mkdir(join(folder, 'UF-102', 'photos'), { recursive: true });
  await mkdir(join(folder, 'given', 'UF-102'), { recursive: true });
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const picture = png(4, 3);
const digest = createHash('sha256').update(picture).digest('hex');
const put = (name: string, bytes: Uint8Array | string = picture): Promise<void> =>
  writeFile(join(folder, name), bytes);

/** What is printed of the photos that the record of P-1 names. */
async function printed(...photos: readonly { file: string; sha256: string }[]): Promise<RecordPhotos> {
  const record = recordOf(demoPlan('UF-102'), {
    entry: (tag, entry) => (tag === 'P-1' ? { ...entry, photos: [...photos] } : entry),
  });
  const places = { folder: join(folder, 'UF-102'), photos: join(folder, 'given'), jobs: ['UF-102'] };
  return readRecordPhotos(await findRecordPhotos(record, places));
}

describe('a photo that a record names', () => {
  it('is found in the job’s folder, else among the photos that the run was given', async () => {
    await put('UF-102/photos/lead.png');
    await put('given/UF-102/box.png');
    const { printed: shown, notPrinted } = await printed(
      { file: 'lead.png', sha256: digest },
      { file: 'box.png', sha256: '' },
    );
    expect(shown.map(({ tags, file }) => [tags, file])).toEqual([
      [['P-1'], 'lead.png'],
      [['P-1'], 'box.png'],
    ]);
    expect(notPrinted).toEqual([]);
  });

  it('is named where it can’t be printed, with why', async () => {
    await put('UF-102/photos/other.png', png(5, 5));
    await put('UF-102/photos/words.jpg', 'no picture');
    await put('away.png');
    await symlink(join(folder, 'away.png'), join(folder, 'UF-102', 'photos', 'link.png'));
    const files = ['gone.png', 'other.png', 'words.jpg', 'link.png'];
    const { printed: shown, notPrinted } = await printed(...files.map((file) => ({ file, sha256: digest })));
    expect(shown).toEqual([]);
    expect(notPrinted).toEqual([
      { name: 'gone.png', why: 'missing' },
      { name: 'other.png', why: 'another' },
      { name: 'words.jpg', why: 'no-picture' },
      { name: 'link.png', why: 'no-picture' },
    ]);
  });

  it('leads nowhere else by its name', async () => {
    await put('secret.png');
    const { printed: shown, notPrinted } = await printed(
      { file: '../../secret.png', sha256: '' },
      { file: 'C:\\photos\\..\\secret.png', sha256: '' },
      { file: join(folder, 'secret.png'), sha256: '' },
    );
    expect(shown).toEqual([]);
    expect(notPrinted.map(({ name }) => name)).toEqual(['secret.png', 'secret.png', 'secret.png']);
  });
});
