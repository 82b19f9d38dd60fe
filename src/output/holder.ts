import { readFile, readlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { isCode } from './make-folder.js';

/** A process as another run can look for it. */
export interface ProcessName {
  readonly host: string;
  readonly pid: number;
  /** Tells two processes of one id apart; `` where the system doesn't say. */
  readonly life: string;
  /** The PID namespace that counts the id; `` where the system has none. */
  readonly space: string;
}

/** This process. */
export async function thisProcess(): Promise<ProcessName> {
  const [life, space] = await Promise.all([lifeOf('self'), ownSpace()]);
  return { host: hostname(), pid: process.pid, life, space };
}

/**
 * Tells whether a process lives, where this process can know.
 * @param holder who is asked about
 * @returns undefined where it can't: another machine, or another PID namespace of this one, where the same id is another process
 */
export async function aliveHere({ host, pid, life, space }: ProcessName): Promise<boolean | undefined> {
  if (host !== hostname() || pid <= 0 || space !== (await ownSpace())) return undefined;
  // Started at another time, it is this machine before it was started anew, or another one of the same name.
  if (life !== '' && !life.startsWith(`${await startOfMachine()}:`)) return undefined;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (!isCode(error, 'EPERM')) return false;
  }
  if (life === '') return true;
  // A `/proc` of another namespace tells of other processes under our ids.
  if (!(await isOwnProc())) return undefined;
  return life === (await lifeOf(pid));
}

async function ownSpace(): Promise<string> {
  if (process.platform !== 'linux') return '';
  // Beside its number, which the first namespace of every machine shares, stands nothing that could tell more.
  return readlink('/proc/self/ns/pid').catch(() => 'unknown');
}

async function isOwnProc(): Promise<boolean> {
  return (await readlink('/proc/self').catch(() => '')) === String(process.pid);
}

/** What tells this life of a process id from another: the machine's start and the process's (Linux; else ``). */
async function lifeOf(pid: number | 'self'): Promise<string> {
  if (process.platform !== 'linux') return '';
  try {
    const [boot, state] = await Promise.all([startOfMachine(), readFile(`/proc/${pid}/stat`, 'utf8')]);
    // Field 22, counted after the name in brackets, which may hold blanks.
    const started = state.slice(state.lastIndexOf(')') + 2).split(' ')[19] ?? '';
    return boot === '' ? '' : `${boot}:${started}`;
  } catch {
    return '';
  }
}

/** A name of this start of the machine, which no other start has; `` where the system doesn't say. */
async function startOfMachine(): Promise<string> {
  return readFile('/proc/sys/kernel/random/boot_id', 'utf8').then(
    (text) => text.trim(),
    () => '',
  );
}
