import { mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockOutput } from '../../src/output/lock.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-lock-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const foreign = (host: string, pid: number, life = ''): string => JSON.stringify({ host, pid, life });

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

  it('is taken over from an earlier life of a process id', async () => {
    await writeFile(join(folder, 'lock-1'), foreign(hostname(), process.pid, 'another start:1'));
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
});
