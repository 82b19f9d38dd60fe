import { readlinkSync } from 'node:fs';
import { lstat, mkdir, readdir, rm, stat } from 'node:fs/promises';
import { homedir, hostname, tmpdir } from 'node:os';
import { dirname, isAbsolute, join } from 'node:path';
import { refusalText } from '../words/refusals.js';

/** Where caches of this user may lie, best first. */
function candidates(): string[] {
  const { env } = process;
  const own: string[] = [];
  const given = process.platform === 'win32' ? env['LOCALAPPDATA'] : env['XDG_CACHE_HOME'];
  if (given !== undefined && isAbsolute(given)) own.push(join(given, 'shuntbook'));
  const home = homeFolder();
  if (home !== undefined && process.platform === 'darwin')
    own.push(join(home, 'Library', 'Caches', 'shuntbook'));
  if (home !== undefined) own.push(join(home, '.cache', 'shuntbook'));
  own.push(join(tmpdir(), `shuntbook-${process.getuid?.() ?? 'user'}`));
  return own.filter((folder) => isAbsolute(folder));
}

/** The user's home; undefined: the environment names none, and the machine knows no such user. */
export function homeFolder(): string | undefined {
  try {
    return homedir();
  } catch {
    return undefined;
  }
}

/** A folder that was tried and why it can't be used. */
export interface RefusedFolder {
  readonly folder: string;
  readonly because: string;
}

/**
 * A cache folder that only this user can write to, made where it isn't there (mode 0700).
 * A folder that another user could have planted is never used: it would hold the program that prints.
 * @param refused takes the folders that were passed over, with the reason
 * @returns its path, or undefined where none can be had
 */
export async function privateCacheFolder(refused: RefusedFolder[]): Promise<string | undefined> {
  for (const folder of candidates()) {
    try {
      await makePrivate(folder);
      const because = await whyNotPrivate(folder);
      if (because === undefined) return folder;
      refused.push({ folder, because });
    } catch (error) {
      const because = refusalText(error) ?? (error instanceof Error ? error.message : String(error));
      refused.push({ folder, because });
    }
  }
  return undefined;
}

/** Makes a folder and those above it, one by one: Node's own way never ends where the system makes no folders (`/proc`). */
async function makePrivate(folder: string): Promise<void> {
  try {
    await mkdir(folder, { mode: 0o700 });
  } catch (error) {
    const above = dirname(folder);
    if (await isFolder(folder)) return;
    if (above === folder || (await isFolder(above))) throw error;
    await makePrivate(above);
    await mkdir(folder, { mode: 0o700 });
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (state) => state.isDirectory(),
    () => false,
  );
}

/**
 * Says why a folder or file isn't this user's alone.
 * @returns the reason, or undefined where it is
 */
export async function whyNotPrivate(path: string): Promise<string | undefined> {
  const state = await lstat(path);
  if (state.isSymbolicLink()) return 'it is a link';
  if (process.getuid && state.uid !== process.getuid()) return 'it belongs to another user';
  if (process.platform !== 'win32' && (state.mode & 0o022) !== 0) return 'others may write to it';
  return undefined;
}

let made = 0;

/** A name that no other process of this or another machine uses: `<purpose>@<host>[.<PID namespace>]@<process id>@<number>`. */
export function nameOfThisProcess(purpose: string): string {
  made += 1;
  return [purpose, countsIds(), process.pid, made].join('@');
}

/** Who counts the ids of processes here: the machine, and on Linux a namespace of it. */
function countsIds(): string {
  const host = hostname().replace(/[^A-Za-z0-9.-]/g, '-');
  try {
    const space = /\d+/.exec(readlinkSync('/proc/self/ns/pid'))?.[0] ?? '';
    return `${host}.${space}`;
  } catch {
    return host;
  }
}

/**
 * Removes what processes that were killed left in the cache folder (temporary unpacking, browser profiles).
 * @param folder the cache folder
 */
export async function sweepCacheFolder(folder: string): Promise<void> {
  const own = nameOfThisProcess('').split('@');
  for (const name of await readdir(folder)) {
    const [, host, pid, number] = name.split('@');
    if (number === undefined || host !== own[1] || isAlive(Number(pid))) continue;
    await rm(join(folder, name), { recursive: true, force: true }).catch(() => undefined);
  }
}

/** True while a process of that id runs on this machine, whoever owns it. */
function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
