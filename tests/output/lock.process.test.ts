import { spawn } from 'node:child_process';
import { readFileSync, readlinkSync } from 'node:fs';
import { mkdtemp, readdir, readFile, symlink, mkdir, stat, rm, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockOutput } from '../../src/output/lock.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-lock-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const space = readlinkSync('/proc/self/ns/pid');
const start = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
const foreign = (host: string, pid: number, life = '', of = space): string =>
  JSON.stringify({ host, pid, life, space: of });
const ago = (ms: number): Date => new Date(Date.now() - ms);

/** The id of a process that has ended. */
async function deadPid(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await new Promise((resolve) => child.once('exit', resolve));
  return child.pid ?? 0;
}

describe('the lock on an output folder', () => {
  it('is held by one run, and free once it is released', async () => {
    const lock = await lockOutput(folder, 'out');
    await expect(lockOutput(folder, 'out')).rejects.toMatchObject({
      exitStatus: 75,
      note: { code: 'output/held' },
    });
    await lock.release();
    const again = await lockOutput(folder, 'out');
    expect(again.tookOver).toBe(false);
    await again.release();
    expect(await readdir(folder)).toEqual([]);
  });

  it('is given to one of many that ask at once', async () => {
    const asked = await Promise.allSettled(Array.from({ length: 12 }, () => lockOutput(folder, 'out')));
    const got = asked.flatMap((a) => (a.status === 'fulfilled' ? [a.value] : []));
    expect(got.length).toBe(1);
    for (const lock of got) await lock.release();
  });

  it('is taken over from a process that is dead, by one run alone', async () => {
    await writeFile(join(folder, 'lock-7'), foreign(hostname(), await deadPid()));
    const asked = await Promise.allSettled([lockOutput(folder, 'out'), lockOutput(folder, 'out')]);
    const got = asked.flatMap((a) => (a.status === 'fulfilled' ? [a.value] : []));
    expect(got.length).toBe(1);
    for (const lock of got) {
      expect(lock.tookOver).toBe(true);
      expect(await readdir(folder)).toEqual(['lock-8']);
      await lock.release();
    }
  });

  it('is taken over from an earlier life of a process id', async () => {
    await writeFile(join(folder, 'lock-1'), foreign(hostname(), process.pid, `${start}:1`));
    const lock = await lockOutput(folder, 'out');
    expect(lock.tookOver).toBe(true);
    await lock.release();
  });

  it('is held by another machine while it shows signs of life, and taken over after', async () => {
    const path = join(folder, 'lock-1');
    await writeFile(path, foreign('another-machine', 1));
    await expect(lockOutput(folder, 'out')).rejects.toMatchObject({ exitStatus: 75 });
    const longAgo = new Date(Date.now() - 600_000);
    await utimes(path, longAgo, longAgo);
    const lock = await lockOutput(folder, 'out');
    await lock.release();
  });

  it('of a damaged file is taken over once it is old', async () => {
    const path = join(folder, 'lock-1');
    await writeFile(path, '{"host":');
    await expect(lockOutput(folder, 'out')).rejects.toMatchObject({ exitStatus: 75 });
    const longAgo = new Date(Date.now() - 600_000);
    await utimes(path, longAgo, longAgo);
    await (await lockOutput(folder, 'out')).release();
  });

  it('is not taken from another PID namespace of this machine while it shows signs of life', async () => {
    const path = join(folder, 'lock-1');
    await writeFile(path, foreign(hostname(), await deadPid(), `${start}:1`, 'pid:[1]'));
    await expect(lockOutput(folder, 'out')).rejects.toMatchObject({ exitStatus: 75 });
    await utimes(path, ago(600_000), ago(600_000));
    await (await lockOutput(folder, 'out')).release();
  });

  it('is not taken from another machine of the same name', async () => {
    await writeFile(join(folder, 'lock-1'), foreign(hostname(), await deadPid(), 'another start:1'));
    await expect(lockOutput(folder, 'out')).rejects.toMatchObject({ exitStatus: 75 });
  });

  it('names its PID namespace and dates its signs of life by the clock of the disk', async () => {
    const lock = await lockOutput(folder, 'out', { beat: 20, silence: 120_000 });
    const path = join(folder, 'lock-1');
    expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({ pid: process.pid, space });
    await utimes(path, ago(600_000), ago(600_000));
    while (Date.now() - (await stat(path)).mtimeMs > 300_000)
      await new Promise((resolve) => setTimeout(resolve, 20));
    expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({ pid: process.pid, space });
    await lock.release();
  });

  it('of another machine dated 2030 is taken over where nobody dates it anew, and held where somebody does', async () => {
    const path = join(folder, 'lock-1');
    const later = new Date('2130-01-01T00:00:00Z');
    await writeFile(path, foreign('another-machine', 1));
    await utimes(path, later, later);
    const beats = { beat: 200, silence: 120_000 };
    let seconds = 0;
    const holder = setInterval(() => {
      seconds += 1;
      const next = new Date(later.getTime() + seconds * 1000);
      void utimes(path, next, next);
    }, 20);
    await expect(lockOutput(folder, 'out', beats)).rejects.toMatchObject({ exitStatus: 75 });
    clearInterval(holder);
    const lock = await lockOutput(folder, 'out', beats);
    expect(lock.tookOver).toBe(true);
    await lock.release();
  });

  it('is seen whatever its number', async () => {
    for (const name of ['lock-1234567890', `lock-${'9'.repeat(40)}`]) {
      await writeFile(join(folder, name), foreign('another-machine', 1));
      await expect(lockOutput(folder, 'out'), name).rejects.toMatchObject({ exitStatus: 75 });
      await utimes(join(folder, name), ago(600_000), ago(600_000));
      await (await lockOutput(folder, 'out')).release();
      expect(await readdir(folder)).toEqual([]);
    }
  });

  it('is nothing but a file: a link or a folder in its place is none, and nothing is written through it', async () => {
    await writeFile(join(folder, 'victim'), 'untouched');
    await symlink(join(folder, 'victim'), join(folder, 'lock-1'));
    await mkdir(join(folder, 'lock-2'));
    await (await lockOutput(folder, 'out')).release();
    expect(await readFile(join(folder, 'victim'), 'utf8')).toBe('untouched');
  });
});
