import { cp, mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
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

// Runs that make the packs of yesterday anew are killed, or told to stop, at random moments: at each, every file in `--out` is whole,
// as yesterday's run or today's makes it, and what is left holds no later run.

/** Of each command; `SHUNTBOOK_KILLS=100 npm run faults` makes two hundred. */
const KILLS = Number(process.env['SHUNTBOOK_KILLS'] ?? 10);
/** Jobs: planning one takes a hundredth of what printing it takes. */
const JOBS = { pack: 4, plan: 40 };
type Make = keyof typeof JOBS;

const program = installedProgram();
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-kills-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** What lies in a folder, and right in the folders of it. */
async function below(at: string): Promise<string[]> {
  const entries = await readdir(at, { withFileTypes: true });
  const inside = entries.filter((e) => e.isDirectory()).map((e) => readdir(join(at, e.name)));
  return [...entries.map((e) => e.name), ...(await Promise.all(inside)).flat()].sort();
}

/** Starts a run over one of the two lists; what is temporary lands in a folder that is looked at in the end. */
function run(make: Make, lists: 'old' | 'new', out: string): Running {
  const options = ['--out', join(make, out), '--date', '2026-05-06'];
  const own = join(folder, make, 'tmp');
  const environment = ['env', `TMPDIR=${own}`, `XDG_CACHE_HOME=${own}`];
  return start([...environment, process.execPath, program.cli, make, join(make, lists), ...options], folder);
}

/** Waits for a run, and sends it a signal after a time unless it has ended before. */
async function stopAfter(running: Running, ms: number, signal: 'SIGKILL' | 'SIGTERM'): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<'late'>((resolve) => {
    timer = setTimeout(() => {
      resolve('late');
    }, ms);
  });
  const first = await Promise.race([running.ended, late]);
  clearTimeout(timer);
  if (first !== 'late') return false;
  const browsers = browserProcesses(running.pid);
  process.kill(running.pid, signal);
  await running.ended;
  await until(() => !browsers.some((b) => runs(b.pid)));
  return true;
}

type Files = ReadonlyMap<string, Buffer>;
const isOfAJob = (name: string): boolean => name.includes('/');

/** Files that are lost, half, or neither yesterday's nor today's; those of the whole run tell how far it came. */
function wrong(found: Files, before: Files, after: Files): string[] {
  const lost = [...before.keys()].filter((name) => !found.has(name));
  const strange = [...found].filter(([name, bytes]) => {
    if (!isOfAJob(name) || /(?:^|\/)\.shuntbook-[^/]*\.tmp$/.test(name)) return false;
    return ![before, after].some((whole) => whole.get(name)?.equals(bytes));
  });
  return [...lost, ...halfFiles(found), ...strange.map(([name]) => name)];
}

/** The reports of a run, which are left out where packs are compared. */
async function reports(out: string): Promise<Files> {
  const names = (await readdir(out)).filter((name) => name.startsWith('report.'));
  return new Map(
    await Promise.all(names.map(async (name) => [name, await readFile(join(out, name))] as const)),
  );
}

describe.each(['plan', 'pack'] as const)('%s', (make) => {
  it(
    `killed and stopped ${KILLS} times leaves no half file and ends as one that nobody disturbed`,
    { timeout: 7_200_000 },
    async () => {
      const at = (name: string): string => join(folder, make, name);
      await mkdir(at('tmp'), { recursive: true });
      await writeLists(at('old'), JOBS[make], 20);
      await writeLists(at('new'), JOBS[make], 30);
      expect(await run(make, 'old', 'yesterday').ended).toMatchObject({ status: 0 });
      const before = await packsBelow(at('yesterday'));
      await cp(at('yesterday'), at('today'), { recursive: true, preserveTimestamps: true });
      const begun = performance.now();
      expect(await run(make, 'new', 'today').ended).toMatchObject({ status: 0 });
      const whole = performance.now() - begun;
      const after = await packsBelow(at('today'));
      const changed = differences(before, after).filter(isOfAJob);
      expect(changed.length).toBeGreaterThanOrEqual(JOBS[make]);
      const ownNames = await readdir(join(at('today'), '.shuntbook'), { recursive: true });
      const temporary = await below(at('tmp'));

      const moments: string[] = [];
      let rounds = 0;
      while (moments.length < KILLS) {
        rounds += 1;
        const out = `killed-${rounds}`;
        await cp(at('yesterday'), at(out), { recursive: true, preserveTimestamps: true });
        for (;;) {
          // Anywhere in a run, also while it starts and while it writes its reports.
          const moment = Math.random() * whole;
          const signal = moments.length % 2 === 0 ? 'SIGKILL' : 'SIGTERM';
          const stopped = moments.length < KILLS && (await stopAfter(run(make, 'new', out), moment, signal));
          const told = `after ${signal} at ${moment} ms`;
          expect(wrong(await packsBelow(at(out)), before, after), told).toEqual([]);
          expect(halfFiles(await reports(at(out))), told).toEqual([]);
          if (!stopped) break;
          moments.push(`${signal} ${Math.round(moment)}`);
        }
        expect(await run(make, 'new', out).ended, moments.join(', ')).toMatchObject({ status: 0 });
        expect(differences(await packsBelow(at(out)), after), moments.join(', ')).toEqual([]);
        // No lock, no record and no kept plan more than where nobody disturbed.
        expect(await readdir(join(at(out), '.shuntbook'), { recursive: true })).toEqual(ownNames);
        await rm(at(out), { recursive: true });
      }
      expect(await below(at('tmp'))).toEqual(temporary);
      console.log(`${make}: ${moments.join(', ')} ms of ${Math.round(whole)}, in ${rounds} folders`);
    },
  );
});
