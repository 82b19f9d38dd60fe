import { constants } from 'node:fs';
import { lstat, open, stat, type FileHandle } from 'node:fs/promises';
import { inTime } from './in-time.js';

/** Why something isn't read: it is no file but a pipe, a device, a folder or a link, or larger than what is taken. */
export class NotAFile extends Error {
  override readonly name = 'NotAFile';
}

/** What is read, and what isn't. */
export interface Reading {
  /** Bytes; a larger file isn't read. */
  readonly most: number;
  /** False: a link isn't read either. */
  readonly followLinks: boolean;
}

/**
 * Reads a file that someone else may have put there: never waits for a pipe or a device, as plain reading would, for ever.
 * @param path where
 * @param reading what is taken
 * @throws NotAFile; Failure `output/no-answer` (70) where the disk doesn't answer; the system's error
 */
export function readRegularFile(path: string, reading: Reading): Promise<Buffer> {
  return inTime(path, read(path, reading));
}

async function read(path: string, reading: Reading): Promise<Buffer> {
  // Asked before it is opened too, since opening a device can do something by itself.
  const before = await (reading.followLinks ? stat : lstat)(path);
  if (!before.isFile()) throw new NotAFile(before.isSymbolicLink() ? 'it is a link' : 'it is no file');
  const file = await openPlain(path, constants.O_RDONLY | constants.O_NONBLOCK, reading.followLinks);
  try {
    const { size } = await file.stat();
    if (size > reading.most) throw new NotAFile(`it is larger than ${reading.most / 1_000_000} MB`);
    return await file.readFile();
  } finally {
    await file.close();
  }
}

/**
 * Opens a file of ours to write at its end, made where it isn't there.
 * @throws NotAFile where a link, a pipe or anything else but a file stands there; the system's error
 */
export function openToAppend(path: string): Promise<FileHandle> {
  const flags = constants.O_WRONLY | constants.O_APPEND | constants.O_CREAT | constants.O_NONBLOCK;
  return inTime(path, openPlain(path, flags, false));
}

async function openPlain(path: string, flags: number, followLinks: boolean): Promise<FileHandle> {
  // Windows has no such flags (they are 0 there), and no such pipes among its files.
  const file = await open(path, followLinks ? flags : flags | constants.O_NOFOLLOW).catch(
    (error: unknown) => {
      const code = error instanceof Error && 'code' in error ? error.code : '';
      if (code === 'ELOOP') throw new NotAFile('it is a link');
      // Of a pipe that nobody reads, a socket, a folder.
      if (code === 'ENXIO' || code === 'EISDIR') throw new NotAFile('it is no file');
      throw error;
    },
  );
  const state = await file.stat();
  if (state.isFile()) return file;
  await file.close();
  throw new NotAFile('it is no file');
}
