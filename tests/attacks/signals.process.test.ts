import { execFileSync, spawn } from 'node:child_process';
import { mkdtemp, open, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { installedProgram, start, writeLists } from '../faults/program.js';

// Ctrl-C and SIGTERM are heard while lists are read and jobs are planned, however much there is still to do.

const program = installedProgram();
let folder: string;
// Seconds of planning, while what the first job told is heard at once.
const JOBS = 1500;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'shuntbook-signals-'));
  await writeLists(join(folder, 'lists'), JOBS);
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe.each(['SIGINT', 'SIGTERM'] as const)('%s', (signal) => {
  it('while lists are read ends the run with 130 and makes nothing', async () => {
    const child = spawn(process.execPath, [program.cli, 'plan', 'lists', '-', '--out', signal], {
      cwd: folder,
      stdio: ['pipe', 'ignore', 'pipe'],
    });
    let err = '';
    child.stderr.on('data', (data: Buffer) => (err += data.toString()));
    const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
    // More than a pipe holds: once it is gone the program reads, and so listens to signals.
    await new Promise((resolve) => child.stdin.write('job,tag,kind\n'.padEnd(1_000_000, '\n'), resolve));
    child.kill(signal);
    child.stdin.end('J,A,array\n');
    expect(await ended).toBe(130);
    expect(err).toContain('batch/interrupted-reading');
    expect(await readdir(folder)).not.toContain(signal);
  });

  it.each(['library', 'catalogue'])('while the %s is read ends the run with 130, too', async (what) => {
    const pipe = join(folder, `${what}-${signal}.csv`);
    execFileSync('mkfifo', [pipe]);
    const out = `${what}-${signal}`;
    const running = start(
      [process.execPath, program.cli, 'plan', 'lists', `--${what}`, pipe, '--out', out],
      folder,
    );
    const file = await open(pipe, 'w');
    const heading = what === 'library' ? 'maker,model,kind\n' : 'part,channels,mcov_ac\n';
    // More than a pipe holds, as above; what follows is some more to read.
    await file.writeFile(heading.padEnd(1_000_000, '\n'));
    running.child.kill(signal);
    await file.writeFile('\u00e9\u00a0,\r\n'.repeat(1_000_000));
    await file.close();
    const ended = await running.ended;
    expect(ended).toMatchObject({ status: 130, signal: null });
    expect(ended.err).toContain('batch/interrupted-reading');
    expect(await readdir(folder)).not.toContain(out);
  });

  it('while jobs are planned ends the run with 130 and says how far it came', async () => {
    const out = `planned-${signal}`;
    const running = start([process.execPath, program.cli, 'plan', 'lists', '--out', out], folder);
    running.child.stderr?.once('data', () => running.child.kill(signal));
    const ended = await running.ended;
    expect(ended).toMatchObject({ status: 130, signal: null });
    expect(await readFile(join(folder, out, 'open-items.csv'), 'utf8')).toContain('batch/interrupted');
    const report = await readFile(join(folder, out, 'report.csv'), 'utf8');
    expect(report.trim().split('\r\n').length).toBeLessThan(JOBS);
  });
});
