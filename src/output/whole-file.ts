import { constants } from 'node:fs';
import { open, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { refusalText } from '../words/refusals.js';
import { note } from '../model/message.js';
import { inTime } from './in-time.js';
import { isCode, makeFolder } from './make-folder.js';

/** A file to write: its name in the folder, and its bytes or text (written as UTF-8). */
export interface FileToWrite {
  readonly name: string;
  readonly content: Uint8Array | string;
}

/** A file that is made piece by piece, so that it never stands in memory whole. */
export interface FileInPieces {
  readonly name: string;
  readonly pieces: Iterable<string>;
}

const TEMPORARY = /^\.shuntbook-.*\.tmp$/;
const temporaryName = (name: string): string => `.shuntbook-${name}.tmp`;

/**
 * Writes files so that each appears whole or not at all: under a temporary name in the same folder, flushed to the
 * disk, then renamed; at last the folder itself is flushed. A name that was a file before is replaced in one step.
 * @param folder where; made where it isn't there
 * @param files what
 * @throws Failure (`output/not-written`) where the disk is full or may not be written to; no temporary file stays
 */
export async function writeWhole(
  folder: string,
  files: readonly (FileToWrite | FileInPieces)[],
): Promise<void> {
  await inTime(folder, writeAll(folder, files));
}

async function writeAll(folder: string, files: readonly (FileToWrite | FileInPieces)[]): Promise<void> {
  const written: string[] = [];
  try {
    await makeFolder(folder);
    const results = await Promise.allSettled(
      files.map(async (file) => {
        const temporary = join(folder, temporaryName(file.name));
        written.push(temporary);
        await writeFlushed(temporary, 'pieces' in file ? file.pieces : [file.content]);
      }),
    );
    for (const result of results) if (result.status === 'rejected') throw result.reason;
    for (const file of files) await rename(join(folder, temporaryName(file.name)), join(folder, file.name));
    await flushFolder(folder);
  } catch (error) {
    await Promise.all(written.map((path) => rm(path, { force: true }).catch(() => undefined)));
    throw notWritten(folder, error);
  }
}

/** The failure to tell where the disk refused something. */
export function notWritten(path: string, error: unknown): Failure {
  if (error instanceof Failure) return error;
  const because = refusalText(error) ?? (error instanceof Error ? error.message : String(error));
  return new Failure(note(OUTPUT_MESSAGES.notWritten, { path, because }), EXIT.failed, { cause: error });
}

async function writeFlushed(path: string, pieces: Iterable<Uint8Array | string>): Promise<void> {
  // A link that someone put there under the temporary name is never followed.
  await rm(path, { force: true });
  const file = await open(path, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, 0o666);
  try {
    // Each goes on where the one before ended.
    for (const piece of pieces) await file.writeFile(piece);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function flushFolder(folder: string): Promise<void> {
  // Windows can't flush a folder, and needn't.
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } catch (error) {
    // Some network disks refuse to flush a folder.
    if (!isCode(error, 'EINVAL')) throw error;
  } finally {
    await handle.close();
  }
}

/**
 * Writes one file whole or not at all.
 * @param path where; its folder is made where it isn't there
 * @param content its bytes or text
 * @throws Failure as {@link writeWhole}
 */
export function writeWholeFile(path: string, content: Uint8Array | string): Promise<void> {
  return writeWhole(dirname(path), [{ name: basename(path), content }]);
}

/**
 * Removes temporary files that a killed run left in a folder and in the folders right below it.
 * @param folder the output folder, which this run holds
 */
export async function sweepTemporaryFiles(folder: string): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true });
  const below = entries.filter((e) => e.isDirectory()).map((e) => join(folder, e.name));
  for (const place of [folder, ...below]) {
    for (const name of await readdir(place)) {
      if (TEMPORARY.test(name)) await rm(join(place, name), { force: true });
    }
  }
}
