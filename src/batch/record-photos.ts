import { createHash } from 'node:crypto';
import { lstat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { ownFolder } from '../output/make-folder.js';
import { readRegularFile } from '../output/regular-file.js';
import { writeWholeFile } from '../output/whole-file.js';

/** A photo that a form names. */
export interface KeptPhoto {
  readonly file: string;
  /** `` where it isn't there. */
  readonly sha256: string;
}

/** Bytes of a photo (contract: 50 MB). */
const LARGEST = 50_000_000;
/** The folder of a job's photos, below its own. */
const PHOTOS = 'photos';
/** Characters of a name that no system takes for anything but a name. */
const PLAIN = /^[\p{L}\p{N} ._()+-]{1,120}\.(?:jpe?g|png|gif|webp|heic|tiff?|svg|pdf)$/iu;

/**
 * Keeps the photos that forms name in a job's folder, as they were handed in.
 * @param out the output folder
 * @param folder name of the job's folder in it
 * @param photos the job's folder of `--photos`; undefined: none
 */
export function openRecordPhotos(
  out: string,
  folder: string,
  photos: string | undefined,
): (name: string, beside: string) => Promise<KeptPhoto> {
  const known = new Map<string, KeptPhoto>();
  return async (named, beside) => {
    // Folders of whoever took it, on whichever system, don't count; nothing of a name leads elsewhere.
    const file = basename(named.replaceAll('\\', '/'));
    const key = JSON.stringify([beside, file]);
    const before = known.get(key);
    if (before) return before;
    const kept = PLAIN.test(file) && !file.startsWith('.') ? await keep(file, beside) : { file, sha256: '' };
    known.set(key, kept);
    return kept;
  };

  async function keep(file: string, beside: string): Promise<KeptPhoto> {
    const places = [
      join(beside, file),
      join(beside, PHOTOS, file),
      ...(photos === undefined ? [] : [join(photos, file)]),
    ];
    for (const path of places) {
      const bytes = await readRegularFile(path, { most: LARGEST, followLinks: false }).catch(() => undefined);
      if (bytes) return { file: await copy(file, bytes), sha256: sha(bytes) };
    }
    // Handed in before, and kept since.
    const own = await readRegularFile(join(out, folder, PHOTOS, file), {
      most: LARGEST,
      followLinks: false,
    }).catch(() => undefined);
    return { file, sha256: own ? sha(own) : '' };
  }

  async function copy(file: string, bytes: Buffer): Promise<string> {
    const into = await ownFolder(join(out, folder), PHOTOS);
    const there = await readRegularFile(join(into, file), { most: LARGEST, followLinks: false }).catch(
      () => undefined,
    );
    if (there?.equals(bytes)) return file;
    const isTaken = await lstat(join(into, file)).then(
      () => true,
      () => false,
    );
    // Another photo of that name stays as it is.
    const name = isTaken ? `${sha(bytes).slice(0, 8)}-${file}` : file;
    await writeWholeFile(join(into, name), bytes);
    return name;
  }
}

const sha = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
