import { randomUUID } from 'node:crypto';
import { link, open, readdir, rm, stat, type FileHandle } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { EXIT } from '../model/exit-status.js';
import { Failure } from '../model/failure.js';
import { OUTPUT_MESSAGES } from '../model/messages/output.js';
import { note } from '../model/message.js';
import { aliveHere, thisProcess } from './holder.js';
import { inTime } from './in-time.js';
import { isCode, makeFolder } from './make-folder.js';
import { readRegularFile } from './regular-file.js';
import { notWritten } from './whole-file.js';

/** The lock on an output folder. */
export interface OutputLock {
  /** True where a run that was killed held the folder before: its leavings are to be swept. */
  readonly tookOver: boolean;
  /** Gives the folder back; never fails. */
  readonly release: () => Promise<void>;
}

/**
 * What a lock says of its holder. `life` tells two processes of one id apart, `space` is the PID namespace that counts the
 * id; each `` where the system doesn't say.
 */
const holderSchema = z.object({
  host: z.string(),
  pid: z.number().int(),
  life: z.string(),
  space: z.string().default(''),
});
type Holder = z.infer<typeof holderSchema>;

interface Lock {
  readonly number: number;
  readonly path: string;
  /** False for what only has a lock's name: a link, a folder. */
  readonly isFile: boolean;
}

/** How signs of life are given and awaited; ms. */
export interface Beats {
  /** Between two signs of life. */
  readonly beat: number;
  /** Who can't be asked and gave none for so long is dead. */
  readonly silence: number;
}

const BEATS: Beats = { beat: 10_000, silence: 120_000 };
/** Longer than any holder's note; whatever is larger is no lock of ours. */
const LARGEST = 10_000;

/**
 * Takes the lock on an output folder. Locks are numbered files; each is made in one step, whole, by whoever is first
 * to link the next number, so two runs that find a dead one's lock can't both take it over.
 * @param folder the folder that holds the locks, inside the output folder; made where it isn't there
 * @param out the output folder, as messages name it
 * @param beats how signs of life are given and awaited
 * @throws Failure `output/held` (exit 75) where another run holds it; `output/not-written` (70) where it can't be written to
 */
export async function lockOutput(folder: string, out: string, beats: Beats = BEATS): Promise<OutputLock> {
  const self: Holder = await thisProcess();
  try {
    await makeFolder(folder);
    const named = await locksIn(folder);
    const before = named.filter((lock) => lock.isFile);
    const holder = await firstLive(before, beats);
    if (holder) throw held(out, holder);
    const number = Math.max(0, ...named.map((lock) => lock.number)) + 1;
    const own = { number, path: join(folder, `lock-${number}`), isFile: true };
    if (!(await make(own.path, self))) throw held(out, await holderOf(own));
    // Whoever listed the locks earlier than we did may have made another one since: both withdraw.
    const others = (await locksIn(folder)).filter((lock) => lock.isFile && lock.path !== own.path);
    const rival = await firstLive(others, beats);
    if (rival) {
      await rm(own.path, { force: true });
      throw held(out, rival);
    }
    for (const dead of others) await rm(dead.path, { force: true });
    const stop = await beatOn(own.path, self, beats.beat);
    const release = async (): Promise<void> => {
      await stop();
      await rm(own.path, { force: true }).catch(() => undefined);
    };
    return { tookOver: before.length > 0, release };
  } catch (error) {
    throw notWritten(folder, error);
  }
}

/**
 * Gives signs of life. The lock is written anew, and not only dated, so that the disk's own clock dates it: two machines
 * that share a disk needn't agree about the time. The file stays open, so that no link in its place is followed.
 */
async function beatOn(path: string, self: Holder, every: number): Promise<() => Promise<void>> {
  const file: FileHandle = await open(path, 'r+');
  const bytes = Buffer.from(JSON.stringify(self));
  const beat = setInterval(() => void file.write(bytes, 0, bytes.length, 0).catch(() => undefined), every);
  beat.unref();
  return async () => {
    clearInterval(beat);
    await file.close().catch(() => undefined);
  };
}

function held(out: string, holder: Holder | undefined): Failure {
  const who =
    holder === undefined || holder.host === ''
      ? 'a run that its lock doesn’t name'
      : `process ${holder.pid} of ${holder.host}`;
  return new Failure(note(OUTPUT_MESSAGES.held, { out, holder: who }), EXIT.held);
}

async function locksIn(folder: string): Promise<Lock[]> {
  const entries = await inTime(folder, readdir(folder, { withFileTypes: true }));
  return entries.flatMap((entry) => {
    const number = /^lock-(\d+)$/.exec(entry.name)?.[1];
    if (number === undefined) return [];
    // A number that can't be counted on from is a lock all the same.
    const counted = number.length > 15 ? 0 : Number(number);
    return [{ number: counted, path: join(folder, entry.name), isFile: entry.isFile() }];
  });
}

/** Makes the lock, whole; false where the number is taken. */
async function make(path: string, self: Holder): Promise<boolean> {
  const draft = join(dirname(path), `.shuntbook-lock-${randomUUID()}.tmp`);
  await writeNew(draft, self);
  try {
    await link(draft, path);
    return true;
  } catch (error) {
    // Gone: whoever just took the folder over swept it away.
    if (isCode(error, 'EEXIST') || isCode(error, 'ENOENT')) return false;
    // A disk without hard links: exclusive creation is as single, only not whole at once.
    return await writeNew(path, self).then(
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

async function writeNew(path: string, self: Holder): Promise<void> {
  const file = await open(path, 'wx');
  await file.writeFile(JSON.stringify(self)).finally(() => file.close());
}

async function firstLive(locks: readonly Lock[], beats: Beats): Promise<Holder | undefined> {
  for (const lock of locks) {
    const holder = await holderOf(lock);
    if (holder && ((await aliveHere(holder)) ?? (await givesSigns(lock, beats)))) return holder;
  }
  return undefined;
}

async function holderOf(lock: Lock): Promise<Holder | undefined> {
  const bytes = await readRegularFile(lock.path, { most: LARGEST, followLinks: false }).catch(
    (error: unknown) => (isCode(error, 'ENOENT') ? undefined : Buffer.alloc(0)),
  );
  if (bytes === undefined) return undefined;
  try {
    return holderSchema.parse(JSON.parse(bytes.toString('utf8')));
  } catch {
    // Half written on a disk without hard links, or damaged: its signs of life decide.
    return { host: '', pid: 0, life: '', space: '' };
  }
}

/** Tells whether a holder that can't be asked gives signs of life, by the clock of the disk alone. */
async function givesSigns(lock: Lock, { beat, silence }: Beats): Promise<boolean> {
  const dated = await dateOf(lock.path);
  if (dated === undefined) return false;
  const age = (await diskTime(dirname(lock.path))) - dated;
  if (age > -silence) return age < silence;
  // Dated much later than it can have been written: a clock was set back, or someone made it up. Who lives gives the next sign soon.
  await new Promise((resolve) => setTimeout(resolve, 1.5 * beat));
  const later = await dateOf(lock.path);
  return later !== undefined && later !== dated;
}

async function dateOf(path: string): Promise<number | undefined> {
  return stat(path).then(
    (state) => state.mtimeMs,
    () => undefined,
  );
}

/** What the disk takes the time to be; ms. */
async function diskTime(folder: string): Promise<number> {
  const probe = join(folder, `.shuntbook-time-${randomUUID()}.tmp`);
  const file = await open(probe, 'wx');
  try {
    await file.write('.');
    return (await file.stat()).mtimeMs;
  } finally {
    await file.close();
    await rm(probe, { force: true });
  }
}
