import { randomUUID } from 'node:crypto';
import { link, readFile, readdir, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { note } from '../model/message.js';
import { makeFolder, notWritten } from './whole-file.js';

/** The lock on an output folder. */
export interface OutputLock {
  /** True where a run that was killed held the folder before: its leavings are to be swept. */
  readonly tookOver: boolean;
  /** Gives the folder back; never fails. */
  readonly release: () => Promise<void>;
}

/** What a lock says of its holder. `life` tells two processes of one id apart; `` where the system doesn't say. */
const holderSchema = z.object({ host: z.string(), pid: z.number().int(), life: z.string() });
type Holder = z.infer<typeof holderSchema>;

interface Lock {
  readonly number: number;
  readonly path: string;
}

const BEAT = 10_000;
// The holder of another machine on a shared disk can't be asked; one that missed this many ms of beats is dead.
const SILENCE = 120_000;

/**
 * Takes the lock on an output folder. Locks are numbered files; each is made in one step, whole, by whoever is first
 * to link the next number, so two runs that find a dead one's lock can't both take it over.
 * @param folder the folder that holds the locks, inside the output folder; made where it isn't there
 * @param out the output folder, as messages name it
 * @throws Failure `output/held` (exit 75) where another run holds it; `output/not-written` (70) where it can't be written to
 */
export async function lockOutput(folder: string, out: string): Promise<OutputLock> {
  const self: Holder = { host: hostname(), pid: process.pid, life: await lifeOf(process.pid) };
  try {
    await makeFolder(folder);
    const before = await locksIn(folder);
    const holder = await firstLive(before);
    if (holder) throw held(out, holder);
    const number = Math.max(0, ...before.map((lock) => lock.number)) + 1;
    const own = { number, path: join(folder, `lock-${number}`) };
    if (!(await make(own.path, self))) throw held(out, await holderOf(own));
    // Whoever listed the locks earlier than we did may have made another one since: both withdraw.
    const others = (await locksIn(folder)).filter((lock) => lock.path !== own.path);
    const rival = await firstLive(others);
    if (rival) {
      await rm(own.path, { force: true });
      throw held(out, rival);
    }
    for (const dead of others) await rm(dead.path, { force: true });
    const beat = setInterval(
      () => void utimes(own.path, new Date(), new Date()).catch(() => undefined),
      BEAT,
    );
    beat.unref();
    const release = async (): Promise<void> => {
      clearInterval(beat);
      await rm(own.path, { force: true }).catch(() => undefined);
    };
    return { tookOver: before.length > 0, release };
  } catch (error) {
    throw notWritten(folder, error);
  }
}

function held(out: string, holder: Holder | undefined): Failure {
  const who = holder ? `process ${holder.pid} of ${holder.host}` : 'a run that has just begun';
  return new Failure(note(OUTPUT_MESSAGES.held, { out, holder: who }), EXIT.held);
}

async function locksIn(folder: string): Promise<Lock[]> {
  const names = await readdir(folder);
  return names.flatMap((name) => {
    const number = /^lock-(\d{1,9})$/.exec(name)?.[1];
    return number === undefined ? [] : [{ number: Number(number), path: join(folder, name) }];
  });
}

/** Makes the lock, whole; false where the number is taken. */
async function make(path: string, self: Holder): Promise<boolean> {
  const draft = join(dirname(path), `.shuntbook-lock-${randomUUID()}.tmp`);
  await writeFile(draft, JSON.stringify(self));
  try {
    await link(draft, path);
    return true;
  } catch (error) {
    // Gone: whoever just took the folder over swept it away.
    if (isCode(error, 'EEXIST') || isCode(error, 'ENOENT')) return false;
    // A disk without hard links: exclusive creation is as single, only not whole at once.
    return await writeFile(path, JSON.stringify(self), { flag: 'wx' }).then(
      () => true,
      (second: unknown) => {
        if (isCode(second, 'EEXIST')) return false;
        throw second;
      },
    );
  } finally {
    await rm(draft, { force: true });
  }
}

const isCode = (error: unknown, code: string): boolean =>
  error instanceof Error && 'code' in error && error.code === code;

async function firstLive(locks: readonly Lock[]): Promise<Holder | undefined> {
  for (const lock of locks) {
    const holder = await holderOf(lock);
    if (holder && (await isLive(lock, holder))) return holder;
  }
  return undefined;
}

async function holderOf(lock: Lock): Promise<Holder | undefined> {
  const text = await readFile(lock.path, 'utf8').catch(() => undefined);
  if (text === undefined) return undefined;
  try {
    return holderSchema.parse(JSON.parse(text));
  } catch {
    // Half written on a disk without hard links, or damaged: its age decides.
    return { host: '', pid: 0, life: '' };
  }
}

async function isLive(lock: Lock, holder: Holder): Promise<boolean> {
  if (holder.host !== hostname()) {
    const touched = await stat(lock.path).then(
      (s) => s.mtimeMs,
      () => 0,
    );
    return Date.now() - touched < SILENCE;
  }
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if (!isCode(error, 'EPERM')) return false;
  }
  return holder.life === '' || holder.life === (await lifeOf(holder.pid));
}

/** What tells this life of a process id from another: the machine's start and the process's (Linux; else ``). */
async function lifeOf(pid: number): Promise<string> {
  if (process.platform !== 'linux') return '';
  try {
    const [boot, state] = await Promise.all([
      readFile('/proc/sys/kernel/random/boot_id', 'utf8'),
      readFile(`/proc/${pid}/stat`, 'utf8'),
    ]);
    // Field 22, counted after the name in brackets, which may hold blanks.
    const started = state.slice(state.lastIndexOf(')') + 2).split(' ')[19] ?? '';
    return `${boot.trim()}:${started}`;
  } catch {
    return '';
  }
}
