import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { JobList, Sheet } from '../model/list.js';

/** A fingerprint: 32 hex digits of the SHA-256 of everything that it stands for. */
export type Fingerprint = string;

/**
 * The fingerprint of texts and bytes in their order.
 * @param parts what it stands for; a part's length counts, so that no two lists of parts look alike
 */
export function fingerprint(...parts: readonly (string | Uint8Array)[]): Fingerprint {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(`${part.length}:`).update(part);
  return hash.digest('hex').slice(0, 32);
}

/** As {@link fingerprint}, of plain data. */
export function dataFingerprint(value: object | string | number | boolean | null): Fingerprint {
  return fingerprint(JSON.stringify(value));
}

/** Files read at a time: enough to be fast, and few enough for a machine that lets a program open few. */
const READERS = 8;

/**
 * The fingerprint of a folder's files: relative paths and contents.
 * @param folder an existing folder
 * @param takes which files count, by relative path
 */
export async function folderFingerprint(
  folder: string,
  takes: (path: string) => boolean,
): Promise<Fingerprint> {
  const names = (await readdir(folder, { recursive: true })).filter(takes).sort();
  const contents = names.map((): (string | Buffer)[] => []);
  const waiting = names.entries();
  const reader = async (): Promise<void> => {
    for (const [index, name] of waiting) {
      const path = join(folder, name);
      if ((await stat(path)).isFile()) contents[index] = [name, await readFile(path)];
    }
  };
  await Promise.all(Array.from({ length: READERS }, reader));
  return fingerprint(...contents.flat());
}

/**
 * The fingerprint of the program itself: a rule or a template that changed makes every pack be made again.
 * It reads what runs, so it needs no version number that someone could forget to raise.
 */
export async function programFingerprint(): Promise<Fingerprint> {
  const program = fileURLToPath(new URL('..', import.meta.url));
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const [code, templates, manifest] = await Promise.all([
    folderFingerprint(program, (path) => /\.[jt]s$/.test(path) && !path.endsWith('.d.ts')),
    folderFingerprint(join(root, 'templates'), () => true),
    // Names the versions of the browser and of the fonts.
    readFile(join(root, 'package.json')),
  ]);
  return fingerprint(code, templates, manifest);
}

/**
 * Gives the fingerprints of jobs as they were read: every fact with its cell, line and column, since all of them are printed.
 * @returns a function that keeps what it learnt about sheets that jobs share
 */
export function jobFingerprints(): (job: JobList) => Fingerprint {
  const sheets = new WeakMap<Sheet, Fingerprint>();
  const ofSheet = (sheet: Sheet): Fingerprint => {
    const known = sheets.get(sheet) ?? dataFingerprint(sheet);
    sheets.set(sheet, known);
    return known;
  };
  return (job) =>
    dataFingerprint([
      job.job,
      job.facts,
      [...job.unreadable],
      ofSheet(job.sheet),
      job.line,
      job.items,
      job.lost,
      job.accepted ?? [],
      job.rows.map((row) => [ofSheet(row.sheet), row.line, row.facts, [...row.unreadable]]),
    ]);
}
