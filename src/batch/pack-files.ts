import { lstat, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isFolderItself, ownFolder } from '../output/make-folder.js';
import { notWritten, writeWhole, type FileToWrite } from '../output/whole-file.js';
import type { Fingerprint } from './fingerprint.js';
import { placeForms, type GivenForm, type PlacedForms } from './given-forms.js';
import { isFormFile, isPackFile } from './pack-names.js';
import { bytesFingerprint, contentOf, isFileItself, isIntact, type RecordedFile } from './recorded-file.js';

/** A pack to write into its folder. */
export interface PackToWrite {
  /** Name of the job's folder in the output folder. */
  readonly folder: string;
  /** All files of the new pack but its forms. */
  readonly files: readonly FileToWrite[];
  /** What a crew fills in: never written over once someone did. */
  readonly forms: readonly GivenForm[];
  /** What the record of the folder names. */
  readonly before: readonly RecordedFile[];
  /** Whether a file of `before` that the new pack hasn't is removed. */
  readonly removes: (name: string) => boolean;
  /** Names of files that the folder must not hold, whoever put them there. */
  readonly leftOut: readonly string[];
}

/** What was written into a job's folder. */
export interface WrittenPack {
  /** The files as the record shall name them. */
  readonly files: readonly RecordedFile[];
  /** Names of files that someone had edited since they were made, and that were made again or removed. */
  readonly edited: readonly string[];
  /** Names of `leftOut` that were there, and aren't any more. */
  readonly leftOut: readonly string[];
  /** Forms that someone filled in, and what the new one is called. */
  readonly kept: PlacedForms['kept'];
}

/**
 * Writes the files of a pack and removes those of the pack before that the new one hasn't.
 * @param out the output folder
 * @param pack what is written
 * @throws Failure where the disk refuses, or the job's folder is a link; Error for a file that no pack can hold
 */
export async function writePack(out: string, pack: PackToWrite): Promise<WrittenPack> {
  const { before, leftOut } = pack;
  const folder = await ownFolder(out, pack.folder).catch((error: unknown) => {
    throw notWritten(join(out, pack.folder), error);
  });
  const { write, stay, kept } = await placeForms(folder, pack.forms, before);
  const files: readonly FileToWrite[] = [...pack.files, ...write];
  const odd = [...files.map((file) => file.name), ...leftOut].find((file) => !isPackFile(file));
  if (odd !== undefined) throw new Error(`no pack can hold a file ${odd}`);
  const contents = new Map(files.map((file) => [file.name, bytesFingerprint(file.content)]));
  const going = await goingOf(
    folder,
    before.filter((file) => !stay.includes(file) && (contents.has(file.name) || pack.removes(file.name))),
    contents,
  );
  const edited = await editedOf(folder, going, contents);
  await writeWhole(folder, files);
  const gone = await removeFiles(
    folder,
    leftOut.filter((name) => !contents.has(name)),
  );
  for (const old of going) {
    if (!contents.has(old.name)) await rm(join(folder, old.name), { force: true });
  }
  const asks = new Map(write.map((form) => [form.name, form.asks]));
  const written = files.map(async ({ name }) => {
    const { size, mtimeMs } = await stat(join(folder, name));
    return {
      name,
      size,
      modified: mtimeMs,
      content: contents.get(name) ?? '',
      asks: asks.get(name) ?? '',
    };
  });
  return { files: [...(await Promise.all(written)), ...stay], edited, leftOut: gone, kept };
}

/** Of the files that the pack before had those that are made again or removed: not a form that someone filled in. */
async function goingOf(
  folder: string,
  before: readonly RecordedFile[],
  contents: ReadonlyMap<string, Fingerprint>,
): Promise<readonly RecordedFile[]> {
  const goes = await Promise.all(
    before.map(async (file) => {
      if (contents.has(file.name) || !isFormFile(file.name)) return true;
      return isIntact(join(folder, file.name), file);
    }),
  );
  return before.filter((_, i) => goes[i]);
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
 * Tells whether a pack's files are as they were written: one that someone edited, deleted or put a link to isn't. A form may be filled
 * in: it is there for that.
 * @param folder the job's folder
 * @param files as the record names them
 */
export async function areIntact(folder: string, files: readonly RecordedFile[]): Promise<boolean> {
  const each = await Promise.all([
    isFolderItself(folder),
    ...files.map((file) => {
      const path = join(folder, file.name);
      return isFormFile(file.name) ? isFileItself(path) : isIntact(path, file);
    }),
  ]);
  return each.every(Boolean);
}

async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}
