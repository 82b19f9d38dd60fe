import { lstat } from 'node:fs/promises';
import { readRegularFile } from '../output/regular-file.js';
import type { FileToWrite } from '../output/whole-file.js';
import { fingerprint, type Fingerprint } from './fingerprint.js';
import type { PackRecord } from './pack-records.js';

/** A file of a pack as the record of its folder names it. */
export type RecordedFile = PackRecord['files'][number];

/** Bytes; no file of a pack is nearly as large. */
const LARGEST = 1_000_000_000;

/** Tells whether a file is as it was written: one that someone edited, deleted or put a link to isn't. */
export async function isIntact(path: string, file: RecordedFile): Promise<boolean> {
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

/** True where a file stands there itself, whatever is in it: no link, no folder. */
export async function isFileItself(path: string): Promise<boolean> {
  return lstat(path).then(
    (state) => state.isFile(),
    () => false,
  );
}

/** The fingerprint of a content as a file holds it: a text counts other characters than bytes. */
export function bytesFingerprint(content: FileToWrite['content']): Fingerprint {
  return fingerprint(typeof content === 'string' ? Buffer.from(content, 'utf8') : content);
}

/** The fingerprint of what a file holds; `` where it is none that can be read. */
export async function contentOf(path: string): Promise<Fingerprint> {
  return readRegularFile(path, { most: LARGEST, followLinks: false }).then(fingerprint, () => '');
}
