import { spawn } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, inject, it } from 'vitest';
import { RecordSchema } from '../../src/model/record.js';
import { freshFolder, projectPath, shuntbook } from '../commands/command.js';

const MOMENTS = 20;
const JOBS = ['UF-102', 'UF-108', 'UF-109'];

/** Runs `record` in a process of its own. @param kill ms until it is killed; undefined: never */
async function record(out: string, kill?: number): Promise<number | null> {
  const args = [
    join(inject('program'), 'dist/cli.js'),
    'record',
    projectPath('fixtures/demo/returns'),
    '--out',
    out,
  ];
  const child = spawn(process.execPath, [...args, '--no-pack', '--date', '2026-05-01', '--quiet'], {
    stdio: 'ignore',
  });
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  if (kill !== undefined) {
    await wait(kill);
    child.kill('SIGKILL');
  }
  return ended;
}

const textOf = (out: string, job: string): string => readFileSync(join(out, job, 'record.json'), 'utf8');

it('a record that is killed at any moment leaves nothing half written, and the next one is whole', async () => {
  const plans = join(freshFolder(), 'out');
  for (const job of JOBS)
    await shuntbook([
      'plan',
      projectPath('fixtures/demo'),
      '--job',
      job,
      '--out',
      plans,
      '--date',
      '2026-03-01',
      '--quiet',
    ]);
  const whole = join(freshFolder(), 'out');
  cpSync(plans, whole, { recursive: true });
  const began = performance.now();
  expect(await record(whole)).toBe(1);
  const took = performance.now() - began;
  const out = join(freshFolder(), 'out');
  cpSync(plans, out, { recursive: true });
  for (let moment = 1; moment <= MOMENTS; moment += 1) {
    await record(out, (took * moment) / (MOMENTS + 1));
    for (const job of JOBS)
      if (existsSync(join(out, job, 'record.json')))
        expect(RecordSchema.safeParse(JSON.parse(textOf(out, job))).success).toBe(true);
  }
  expect(await record(out)).toBe(1);
  for (const job of JOBS) {
    expect(textOf(out, job)).toBe(textOf(whole, job));
    expect(readdirSync(join(out, job)).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  }
  for (const name of ['record-items.csv', 'register.csv', 'checks-due.csv'])
    expect(readFileSync(join(out, name), 'utf8')).toBe(readFileSync(join(whole, name), 'utf8'));
});
