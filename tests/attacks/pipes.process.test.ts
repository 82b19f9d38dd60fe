import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, afterEach, describe, expect, it } from 'vitest';
import { installedProgram, start, writeLists, type Ended, type Running } from '../faults/program.js';
import { inTime } from '../../src/output/in-time.js';
import { runs, until } from '../print/browser-processes.js';

const program = installedProgram();
let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-pipes-'));
  await writeLists(join(folder, 'lists'), 2);
});
afterEach(async () => {
  // One that hangs would outlive the test.
  for (const { child } of started.splice(0)) child.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true });
});

const started: Running[] = [];
const begin = (...words: string[]): Running => {
  const running = start(words, folder);
  started.push(running);
  return running;
};

const pipe = (...path: string[]): void => {
  execFileSync('mkfifo', [join(folder, ...path)]);
};
const command = (...args: string[]): string[] => [process.execPath, program.cli, ...args];
/** Runs in a process of its own: what waits for a pipe in this one would keep the test from ending. */
const plan = (...more: string[]): Promise<Ended> =>
  begin(...command('plan', 'lists', '--out', 'out', ...more)).ended;

describe('a pipe that nobody writes to', () => {
  it('in place of a file that is written is replaced by the file', async () => {
    // Of each job one file, so that none is written for another's sake.
    const names = ['T-01/plan.json', 'T-02/schedule.csv', '.shuntbook/last-run.json', 'report.csv'];
    expect(await plan()).toMatchObject({ status: 0 });
    const before = await Promise.all(names.map((name) => readFile(join(folder, 'out', name), 'utf8')));
    for (const name of names) {
      await rm(join(folder, 'out', name));
      pipe('out', name);
    }
    expect(await plan()).toMatchObject({ status: 0 });
    for (const [index, name] of names.entries()) {
      const after = await readFile(join(folder, 'out', name), 'utf8');
      expect(after.slice(0, 20), name).toBe(before[index]?.slice(0, 20));
    }
  });

  it('in place of the record of packs ends the run with a sentence', async () => {
    await mkdir(join(folder, 'out', '.shuntbook'), { recursive: true });
    pipe('out', '.shuntbook', 'packs.ndjson');
    const ended = await plan();
    expect(ended.status).toBe(70);
    expect(ended.err).toContain('output/not-a-file');
    expect(ended.err).not.toMatch(/^\s+at /m);
  });

  it('in place of a lock is none', async () => {
    await mkdir(join(folder, 'out', '.shuntbook'), { recursive: true });
    pipe('out', '.shuntbook', 'lock-1');
    expect(await plan()).toMatchObject({ status: 0 });
  });

  it('in a folder of lists is no list', async () => {
    pipe('lists', 'more.csv');
    const ended = await plan();
    expect(ended).toMatchObject({ status: 0 });
    expect(await readdir(join(folder, 'out'))).toContain('T-02');
  });

  it(
    'among photos, or in place of the logo, keeps no pack from being printed',
    { timeout: 300_000 },
    async () => {
      await mkdir(join(folder, 'photos', 'T-01'), { recursive: true });
      pipe('photos', 'T-01', 'PNL.png');
      pipe('lists', 'logo.png');
      await writeFile(join(folder, 'lists', 'settings.json'), '{ "company": { "logo": "logo.png" } }');
      const args = ['pack', 'lists', '--job', 'T-01', '--photos', 'photos', '--out', 'out'];
      expect(await begin(...command(...args)).ended).toMatchObject({ status: 0 });
      expect(await readdir(join(folder, 'out', 'T-01'))).toContain('closeout-pack.pdf');
      expect(await readFile(join(folder, 'out', 'open-items.csv'), 'utf8')).toContain(
        'batch/picture-not-used',
      );
    },
  );
});

describe('a place where the system makes no folders', () => {
  it.each(['/proc/nothere', '/proc/nothere/below'])(
    '%s for --out ends the run with a sentence',
    async (out) => {
      const ended = await begin(...command('plan', 'lists', '--out', out)).ended;
      expect(ended.status).toBe(70);
      expect(ended.err).toContain('output/not-written');
      expect(ended.err).not.toMatch(/ENOENT|^\s+at /m);
    },
  );

  it('for the cache and for temporary files ends the run with a sentence', async () => {
    const args = ['env', 'HOME=/proc/h', 'XDG_CACHE_HOME=/proc/c', 'TMPDIR=/proc/t'];
    const ended = await begin(...args, ...command('pack', 'lists', '--out', 'out')).ended;
    expect(ended.status).toBe(70);
    expect(ended.err).toContain('print/no-browser');
    expect(ended.err).not.toMatch(/^\s+at /m);
  });
});

describe('a run that waits for a pipe', () => {
  /** Whether a process takes care of SIGTERM itself (`proc(5)`: a mask, signal n at bit n - 1). */
  const catches = async (pid: number): Promise<boolean> => {
    // One that has ended takes care of none.
    const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '');
    const mask = /^SigCgt:\s*([0-9a-f]+)$/m.exec(status)?.[1] ?? '0';
    return ((BigInt(`0x${mask}`) >> 14n) & 1n) === 1n;
  };

  it('is ended by a second signal, whatever it waits for', async () => {
    pipe('first.csv');
    pipe('second.csv');
    /** Starts a run and sends it a signal while it waits for the second list; where it was still reading the first, that ended it. */
    const signalled = async (): Promise<Running> => {
      const running = begin(...command('plan', 'first.csv', 'second.csv', '--out', 'out'));
      // Opens only once the run reads the other end.
      await writeFile(join(folder, 'first.csv'), 'job,tag,kind\nF-1,PNL,panel\n');
      process.kill(running.pid, 'SIGTERM');
      await until(async () => !(await catches(running.pid)));
      return running;
    };
    let running = await signalled();
    for (let early = 0; early < 10 && !runs(running.pid); early += 1) {
      expect(await running.ended).toMatchObject({ status: 130 });
      running = await signalled();
    }
    process.kill(running.pid, 'SIGTERM');
    expect(await running.ended).toMatchObject({ signal: 'SIGTERM' });
  });
});

it('a disk that never answers is given up with a sentence', async () => {
  const never = new Promise<never>(() => undefined);
  await expect(inTime('out/plan.json', never, 20)).rejects.toMatchObject({
    exitStatus: 70,
    note: { code: 'output/no-answer', values: { path: 'out/plan.json' } },
  });
  expect(await inTime('out/plan.json', Promise.resolve(3))).toBe(3);
});
