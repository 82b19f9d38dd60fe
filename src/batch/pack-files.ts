import { lstat, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isFolderItself, ownFolder } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { notWritten, writeWhole, type FileToWrite } from '../output/whole-file.js';
import { fingerprint, type Fingerprint } from './fingerprint.js';
import { isPackFile } from './pack-names.js';
import type { PackRecord } from './pack-records.js';

type RecordedFile = PackRecord['files'][number];

/** Bytes; no file of a pack is nearly as large. */
const LARGEST = 1_000_000_000;

/** What was written into a job's folder. */
export interface WrittenPack {
  /** The files as the record shall name them. */
  readonly files: readonly RecordedFile[];
  /** Names of files that someone had edited since they were made, and that were made again or removed. */
  readonly edited: readonly string[];
  /** Names of `leftOut` that were there, and aren't any more. */
  readonly leftOut: readonly string[];
}

/**
 * Writes the files of a pack and removes those of the pack before that the new one hasn't.
 * @param out the output folder
 * @param name of the job's folder in it
 * @param files all files of the new pack
 * @param before what the record of the folder names
 * @param removes false: files of `before` that aren't written stay
 * @param leftOut names of files that the folder must not hold, whoever put them there
 * @throws Failure where the disk refuses, or the job's folder is a link; Error for a file that no pack can hold
 */
export async function writePack(
  out: string,
  name: string,
  files: readonly FileToWrite[],
  before: readonly RecordedFile[],
  removes: boolean,
  leftOut: readonly string[] = [],
): Promise<WrittenPack> {
  const odd = [...files.map((file) => file.name), ...leftOut].find((file) => !isPackFile(file));
  if (odd !== undefined) throw new Error(`no pack can hold a file ${odd}`);
  const folder = await ownFolder(out, name).catch((error: unknown) => {
    throw notWritten(join(out, name), error);
  });
  const contents = new Map(files.map((file) => [file.name, bytesFingerprint(file.content)]));
  const going = before.filter((file) => contents.has(file.name) || removes);
  const edited = await editedOf(folder, going, contents);
  await writeWhole(folder, files);
  const gone = await removeFiles(folder, leftOut);
  for (const old of going) {
    if (!contents.has(old.name)) await rm(join(folder, old.name), { force: true });
  }
  const written = files.map(async (file) => {
    const { size, mtimeMs } = await stat(join(folder, file.name));
    return { name: file.name, size, modified: mtimeMs, content: contents.get(file.name) ?? '' };
  });
  return { files: await Promise.all(written), edited, leftOut: gone };
}

/** Removes files and links of some names, and says which were there; a folder of such a name isn't ours, and stays. */
async function removeFiles(folder: string, names: readonly string[]): Promise<string[]> {
  const gone: string[] = [];
  for (const name of names) {
    const state = await lstat(join(folder, name)).catch(() => undefined);
    if (state === undefined || state.isDirectory()) continue;
    await rm(join(folder, name), { force: true });
    gone.push(name);
  }
  return gone;
}

/** The files that hold what neither the pack before nor the new one holds, so that someone must have put it there. */
async function editedOf(
  folder: string,
  before: readonly RecordedFile[],
  contents: ReadonlyMap<string, Fingerprint>,
): Promise<string[]> {
  const each = await Promise.all(
    before.map(async (file) => {
      const path = join(folder, file.name);
      if (!(await isThere(path)) || (await isIntact(path, file))) return [];
      // A run that was killed before it could record them leaves files that are as the new ones.
      return (await contentOf(path)) === contents.get(file.name) ? [] : [file.name];
    }),
  );
  return each.flat();
}

/**
 * Tells whether a pack's files are as they were written: one that someone edited, deleted or put a link to isn't.
 * @param folder the job's folder
 * @param files as the record names them
 */
export async function areIntact(folder: string, files: readonly RecordedFile[]): Promise<boolean> {
  const each = await Promise.all([
    isFolderItself(folder),
    ...files.map((file) => isIntact(join(folder, file.name), file)),
  ]);
  return each.every(Boolean);
}

async function isIntact(path: string, file: RecordedFile): Promise<boolean> {
  try {
    const state = await lstat(path);
    if (!state.isFile() || state.size !== file.size) return false;
    if (state.mtimeMs === file.modified) return true;
    // Copied or touched: the content decides.
    return (await contentOf(path)) === file.content;
  } catch {
    return false;
  }
}

async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/** The fingerprint of a content as a file holds it: a text counts other characters than bytes. */
function bytesFingerprint(content: FileToWrite['content']): Fingerprint {
  return fingerprint(typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
}

/** The fingerprint of what a file holds; `` where it is none that can be read. */
async function contentOf(path: string): Promise<Fingerprint> {
  return readRegularFile(path, { most: LARGEST, followLinks: false }).then(fingerprint, () => '');
}
