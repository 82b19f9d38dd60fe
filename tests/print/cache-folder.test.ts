import { chmod, mkdir, mkdtemp, readdir, rm, stat, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  nameOfThisProcess,
  privateCacheFolder,
  sweepCacheFolder,
  whyNotPrivate,
  type RefusedFolder,
} from '../../src/print/cache-folder.js';

let folder: string;
const before = process.env['XDG_CACHE_HOME'];
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-cache-'));
  process.env['XDG_CACHE_HOME'] = folder;
});
afterEach(async () => {
  if (before === undefined) delete process.env['XDG_CACHE_HOME'];
  else process.env['XDG_CACHE_HOME'] = before;
  await rm(folder, { recursive: true, force: true });
});

describe('the cache folder', () => {
  it("is made for this user alone, in the user's own cache", async () => {
    const refused: RefusedFolder[] = [];
    const made = await privateCacheFolder(refused);
    expect(made).toBe(join(folder, 'shuntbook'));
    expect((await stat(made ?? '')).mode & 0o777).toBe(0o700);
    expect(refused).toEqual([]);
  });

  it('is another one where somebody else may write to it, or could have planted it', async () => {
    await mkdir(join(folder, 'shuntbook'));
    await chmod(join(folder, 'shuntbook'), 0o777);
    const refused: RefusedFolder[] = [];
    expect(await privateCacheFolder(refused)).not.toBe(join(folder, 'shuntbook'));
    expect(refused).toEqual([{ folder: join(folder, 'shuntbook'), because: 'others may write to it' }]);
    await rm(join(folder, 'shuntbook'), { recursive: true });
    await mkdir(join(folder, 'elsewhere'), { mode: 0o700 });
    await symlink(join(folder, 'elsewhere'), join(folder, 'shuntbook'));
    expect(await whyNotPrivate(join(folder, 'shuntbook'))).toBe('it is a link');
  });

  it('is swept of what dead processes left, and of nothing else', async () => {
    const own = nameOfThisProcess('profile');
    const dead = own.replace(`@${process.pid}@`, '@999999999@');
    // In another PID namespace of this machine that id may well be a process that lives.
    const elsewhere = dead.replace(/\.\d+@/, '.1@');
    const kept = [own, elsewhere, 'profile@another-machine@999999999@1', 'browser-1.0.0'];
    for (const name of [dead, ...kept]) await mkdir(join(folder, name));
    expect(elsewhere).not.toBe(dead);
    await sweepCacheFolder(folder);
    expect((await readdir(folder)).sort()).toEqual(kept.sort());
  });
});
