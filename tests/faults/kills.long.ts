import { mkdtemp, rm } from 'node:fs/promises';
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

const KILLS = 20;
const program = installedProgram();
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-kills-'));
  await writeLists(join(folder, 'lists'), 40);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const pack = (out: string): Running =>
  start([process.execPath, program.cli, 'pack', 'lists', '--out', out, '--date', '2026-05-06'], folder);

/** Waits for a run, and kills it after a time unless it has ended before. */
async function killAfter(running: Running, ms: number): Promise<boolean> {
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
  process.kill(running.pid, 'SIGKILL');
  await running.ended;
  await until(() => !browsers.some((b) => runs(b.pid)));
  return true;
}

describe(`a batch of 40 jobs, killed at ${KILLS} random moments`, () => {
  it(
    'leaves no half file and no browser, and ends as one that nobody disturbed',
    { timeout: 1_800_000 },
    async () => {
      const begun = performance.now();
      expect(await pack('undisturbed').ended).toMatchObject({ status: 0 });
      const whole = performance.now() - begun;
      const undisturbed = await packsBelow(join(folder, 'undisturbed'));
      expect(undisturbed.size).toBe(40 * 6 + 3);
      const moments: number[] = [];
      let round = 0;
      while (moments.length < KILLS) {
        round += 1;
        const out = `killed-${round}`;
        for (;;) {
          // Anywhere in a run, also while it starts and while it writes its reports.
          const moment = Math.random() * whole;
          const killed = moments.length < KILLS && (await killAfter(pack(out), moment));
          expect(halfFiles(await packsBelow(join(folder, out))), `after a kill at ${moment} ms`).toEqual([]);
          if (!killed) break;
          moments.push(Math.round(moment));
        }
        expect(await pack(out).ended).toMatchObject({ status: 0 });
        expect(
          differences(await packsBelow(join(folder, out)), undisturbed),
          `moments ${moments.join(', ')}`,
        ).toEqual([]);
      }
      console.log(`killed at ms: ${moments.join(', ')} of ${Math.round(whole)}, in ${round} folders`);
    },
  );
});
