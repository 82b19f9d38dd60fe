import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserProcesses, runs, until } from '../print/browser-processes.js';
import {
  differences,
  halfFiles,
  installedProgram,
  packsBelow,
  start,
  writeLists,
  type Running,
} from './program.js';

// More than three runs make before each is stopped, and the rest.
const JOBS = 10;
const program = installedProgram();
let folder: string;
let undisturbed: ReadonlyMap<string, Buffer>;

const pack = (out: string): Running =>
  start([process.execPath, program.cli, 'pack', 'lists', '--out', out, '--date', '2026-05-06'], folder);
const folders = async (out: string): Promise<string[]> =>
  (await readdir(join(folder, out)).catch(() => [])).filter((n) => n.startsWith('T-'));

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-faults-'));
  await writeLists(join(folder, 'lists'), JOBS);
  expect(await pack('undisturbed').ended).toMatchObject({ status: 0 });
  undisturbed = await packsBelow(join(folder, 'undisturbed'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe('a run of the program', () => {
  it('stopped by one signal, by another, and killed, leaves nothing half done, and the next run completes', async () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const made = (await folders('stopped')).length;
      const running = pack('stopped');
      await until(async () => (await folders('stopped')).length > made);
      const browsers = browserProcesses(running.pid);
      process.kill(running.pid, signal);
      expect(await running.ended, signal).toMatchObject({ status: 130 });
      await until(() => !browsers.some((b) => runs(b.pid)));
      expect(halfFiles(await packsBelow(join(folder, 'stopped')))).toEqual([]);
      // The report so far.
      const report = await readFile(join(folder, 'stopped', 'report.csv'), 'utf8');
      expect(report.trim().split('\r\n')).toHaveLength((await folders('stopped')).length + 1);
      expect(await readFile(join(folder, 'stopped', 'open-items.csv'), 'utf8')).toContain(
        'batch/interrupted',
      );
    }
    const made = (await folders('stopped')).length;
    const running = pack('stopped');
    await until(async () => (await folders('stopped')).length > made);
    const browsers = browserProcesses(running.pid);
    expect(browsers.length).toBeGreaterThan(0);
    process.kill(running.pid, 'SIGKILL');
    expect(await running.ended).toMatchObject({ signal: 'SIGKILL' });
    await until(() => !browsers.some((b) => runs(b.pid)));
    expect(halfFiles(await packsBelow(join(folder, 'stopped')))).toEqual([]);
    expect((await folders('stopped')).length).toBeLessThan(JOBS);
    expect(await pack('stopped').ended).toMatchObject({ status: 0 });
    expect(differences(await packsBelow(join(folder, 'stopped')), undisturbed)).toEqual([]);
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
    expect(items.match(/,documents\/template,/g)).toHaveLength(JOBS);
    expect(await folders('thrown')).toEqual([]);
  });

  it('whose browser is killed prints everything all the same, the same bytes, and lets no other run write there', async () => {
    expect(undisturbed.size).toBe(JOBS * 10 + 10);
    const first = pack('shared');
    await until(async () => (await folders('shared')).length > 0);
    const browser = browserProcesses(first.pid).find((b) => b.type === 'browser');
    process.kill(browser?.pid ?? 0, 'SIGKILL');
    const second = await pack('shared').ended;
    expect(second.status).toBe(75);
    expect(second.err).toContain(`process ${first.pid}`);
    expect(await first.ended).toMatchObject({ status: 0, signal: null });
    expect(differences(await packsBelow(join(folder, 'shared')), undisturbed)).toEqual([]);
  });
});
