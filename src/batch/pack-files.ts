import { readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { writeWhole, type FileToWrite } from '../output/whole-file.js';
import { fingerprint } from './fingerprint.js';
import type { PackRecord } from './pack-records.js';

type RecordedFile = PackRecord['files'][number];

/**
 * Writes the files of a pack and removes those of the pack before that the new one hasn't.
 * @param folder the job's folder
 * @param files all files of the new pack
 * @param before what the record of the folder names; undefined: no record
 * @returns the files as the record shall name them
 * @throws Failure where the disk refuses
 */
export async function writePack(
  folder: string,
  files: readonly FileToWrite[],
  before: readonly RecordedFile[] | undefined,
): Promise<RecordedFile[]> {
  await writeWhole(folder, files);
  const names = new Set(files.map((file) => file.name));
  for (const old of before ?? []) {
    if (!names.has(old.name)) await rm(join(folder, old.name), { force: true });
  }
  return Promise.all(
    files.map(async ({ name, content }) => {
      const { size, mtimeMs } = await stat(join(folder, name));
      return { name, size, modified: mtimeMs, content: fingerprint(content) };
    }),
  );
}

/**
 * Tells whether a pack's files are as they were written: one that someone edited or deleted isn't.
 * @param folder the job's folder
 * @param files as the record names them
 */
export async function areIntact(folder: string, files: readonly RecordedFile[]): Promise<boolean> {
  const each = await Promise.all(files.map((file) => isIntact(join(folder, file.name), file)));
  return each.every(Boolean);
}

async function isIntact(path: string, file: RecordedFile): Promise<boolean> {
  try {
    const state = await stat(path);
    if (!state.isFile() || state.size !== file.size) return false;
    if (state.mtimeMs === file.modified) return true;
    // Copied or touched: the content decides.
    return fingerprint(await readFile(path)) === file.content;
  } catch {
    return false;
  }
}
