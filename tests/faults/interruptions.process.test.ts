import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserProcesses, runs, until } from '../print/browser-processes.js';
import {
  differences,
  halfFiles,
  installProgram,
  packsBelow,
  start,
  writeLists,
  type Program,
  type Running,
} from './program.js';

let program: Program;
let folder: string;
let undisturbed: ReadonlyMap<string, Buffer>;

const pack = (out: string): Running =>
  start([process.execPath, program.cli, 'pack', 'lists', '--out', out, '--date', '2026-05-06'], folder);
const folders = async (out: string): Promise<string[]> =>
  (await readdir(join(folder, out)).catch(() => [])).filter((n) => n.startsWith('T-'));

beforeAll(async () => {
  program = await installProgram();
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-faults-'));
  await writeLists(join(folder, 'lists'), 8);
  expect(await pack('undisturbed').ended).toMatchObject({ status: 0 });
  undisturbed = await packsBelow(join(folder, 'undisturbed'));
});
afterAll(async () => {
  await program.remove();
  await rm(folder, { recursive: true, force: true });
});

describe('a run of the program', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)(
    'stopped by %s writes the report so far and ends with 130',
    async (signal) => {
      const running = pack(signal);
      await until(async () => (await folders(signal)).length > 0);
      const browsers = browserProcesses(running.pid);
      process.kill(running.pid, signal);
      expect(await running.ended).toMatchObject({ status: 130 });
      await until(() => !browsers.some((b) => runs(b.pid)));
      const made = await packsBelow(join(folder, signal));
      expect(halfFiles(made)).toEqual([]);
      const report = await readFile(join(folder, signal, 'report.csv'), 'utf8');
      expect(report.trim().split('\r\n')).toHaveLength((await folders(signal)).length + 1);
      expect(await readFile(join(folder, signal, 'open-items.csv'), 'utf8')).toContain('batch/interrupted');
      expect(await pack(signal).ended).toMatchObject({ status: 0 });
      expect(differences(await packsBelow(join(folder, signal)), undisturbed)).toEqual([]);
    },
  );

  it('killed outright leaves no half file and no browser, and the next run completes', async () => {
    const running = pack('killed');
    await until(async () => (await folders('killed')).length > 1);
    const browsers = browserProcesses(running.pid);
    expect(browsers.length).toBeGreaterThan(0);
    process.kill(running.pid, 'SIGKILL');
    expect(await running.ended).toMatchObject({ signal: 'SIGKILL' });
    await until(() => !browsers.some((b) => runs(b.pid)));
    expect(halfFiles(await packsBelow(join(folder, 'killed')))).toEqual([]);
    expect(await pack('killed').ended).toMatchObject({ status: 0 });
    expect(differences(await packsBelow(join(folder, 'killed')), undisturbed)).toEqual([]);
  });

  it('whose browser is killed prints everything all the same', async () => {
    const running = pack('browser-killed');
    await until(async () => (await folders('browser-killed')).length > 0);
    const browser = browserProcesses(running.pid).find((b) => b.type === 'browser');
    process.kill(browser?.pid ?? 0, 'SIGKILL');
    expect(await running.ended).toMatchObject({ status: 0, signal: null });
    expect(differences(await packsBelow(join(folder, 'browser-killed')), undisturbed)).toEqual([]);
  });

  it('whose template throws fails every job with one message each, in whatever thread it was rendered', async () => {
    await mkdir(join(folder, 'templates', 'labels'), { recursive: true });
    await writeFile(join(folder, 'templates', 'labels', 'document.hbs'), '<p>{{nothing.of.that.name}}</p>');
    const command = [
      process.execPath,
      program.cli,
      'pack',
      'lists',
      '--out',
      'thrown',
      '--templates',
      'templates',
    ];
    expect(await start(command, folder).ended).toMatchObject({ status: 70 });
    const items = await readFile(join(folder, 'thrown', 'open-items.csv'), 'utf8');
    expect(items.match(/,documents\/template,/g)).toHaveLength(8);
    expect(await folders('thrown')).toEqual([]);
  });

  it('makes the same bytes again, and ends with 75 where another run writes to the same folder', async () => {
    expect(undisturbed.size).toBe(8 * 6 + 3);
    const first = pack('shared');
    await until(async () => (await folders('shared')).length > 0);
    const second = await pack('shared').ended;
    expect(second.status).toBe(75);
    expect(second.err).toContain(`process ${first.pid}`);
    expect(await first.ended).toMatchObject({ status: 0 });
    expect(differences(await packsBelow(join(folder, 'shared')), undisturbed)).toEqual([]);
  });
});
