import { spawn } from 'node:child_process';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockOutput } from '../../src/output/lock.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-lock-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** The id of a process that has ended. */
async function deadPid(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '']);
  await new Promise((resolve) => child.once('exit', resolve));
  return child.pid ?? 0;
}

describe('the lock on an output folder', () => {
  it('is taken over from a process that is dead, by one run alone', async () => {
    await writeFile(
      join(folder, 'lock-7'),
      JSON.stringify({ host: hostname(), pid: await deadPid(), life: '' }),
    );
    const asked = await Promise.allSettled([lockOutput(folder, 'out'), lockOutput(folder, 'out')]);
    const got = asked.flatMap((a) => (a.status === 'fulfilled' ? [a.value] : []));
    expect(got.length).toBe(1);
    for (const lock of got) {
      expect(lock.tookOver).toBe(true);
      expect(await readdir(folder)).toEqual(['lock-8']);
      await lock.release();
    }
  });
});
