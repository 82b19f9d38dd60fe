import { lstat, mkdir, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { note } from '../model/message.js';

/**
 * Makes a folder with those above it, where they aren't there. One step at a time: Node's own way asks for ever where the
 * system makes no folders (`/proc`), and names the wrong reason on a disk that may only be read.
 * @param folder its path
 * @throws the system's error of the first folder that can't be made
 */
export async function makeFolder(folder: string): Promise<void> {
  const refused = await makeOne(folder);
  if (refused === undefined) return;
  const above = dirname(folder);
  if (!isCode(refused, 'ENOENT') || above === folder || (await isFolder(above))) throw refused;
  await makeFolder(above);
  const again = await makeOne(folder);
  if (again !== undefined) throw again;
}

/**
 * Makes a folder of ours below the output folder. The output folder itself may be reached through a link, what is below
 * it never: a link there would let our files land, and be removed, wherever it leads.
 * @param out the output folder, or a folder that this function made in it; made where it isn't there
 * @param names of the folders below it, from the uppermost
 * @returns the path of the last one
 * @throws Failure `output/link` (70) where one of them is a link; the system's error where it can't be made
 */
export async function ownFolder(out: string, ...names: readonly string[]): Promise<string> {
  await makeFolder(out);
  let path = out;
  for (const name of names) {
    path = join(path, name);
    const refused = await makeOne(path);
    if (await isLink(path)) throw new Failure(note(OUTPUT_MESSAGES.link, { path }), EXIT.failed);
    if (refused !== undefined) throw refused;
  }
  return path;
}

/** True where a folder stands at that path itself: no link, no file. */
export async function isFolderItself(path: string): Promise<boolean> {
  return lstat(path).then(
    (state) => state.isDirectory(),
    () => false,
  );
}

async function makeOne(folder: string): Promise<Error | undefined> {
  try {
    await mkdir(folder);
    return undefined;
  } catch (error) {
    // Whatever the system says of making it: what is there needn't be made.
    if (await isFolder(folder)) return undefined;
    return error instanceof Error ? error : new Error(String(error));
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (state) => state.isDirectory(),
    () => false,
  );
}

async function isLink(path: string): Promise<boolean> {
  return lstat(path).then(
    (state) => state.isSymbolicLink(),
    () => false,
  );
}

/** True for an error of the system with that code. */
export function isCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}
