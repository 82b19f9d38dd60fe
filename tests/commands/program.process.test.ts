import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { PDFParse } from '../../bench/pdf-readers.mjs';
import { describe, expect, it } from 'vitest';
import { DOCUMENT_KINDS } from '../../src/documents/parts/context.js';
import { installedProgram } from '../faults/program.js';
import { freshFolder, projectPath } from './command.js';

const run = promisify(execFile);
const program = installedProgram();
const { cli } = program;

interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

async function shell(script: string): Promise<Ended> {
  try {
    const { stdout, stderr } = await run('bash', ['-o', 'pipefail', '-c', script], { cwd: program.folder });
    return { status: 0, stdout, stderr };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { status: code, stdout, stderr };
  }
}

describe('the program as a process', () => {
  it('ends with the exit status that the command names', async () => {
    const wrong = await shell(`"${process.execPath}" "${cli}" pack`);
    expect(wrong.status).toBe(64);
    expect(wrong.stdout).toBe('');
    const missing = await shell(`"${process.execPath}" "${cli}" plan nowhere.csv --out "${freshFolder()}"`);
    expect(missing.status).toBe(2);
    expect(missing.stderr).toContain('nowhere.csv');
    expect(missing.stderr).not.toMatch(/\n\s+at /);
  });

  it('ends quietly when the reader closes the pipe', async () => {
    const ended = await shell(`"${process.execPath}" "${cli}" rules --json | head -c 1`);
    expect(ended).toEqual({ status: 0, stdout: '{', stderr: '' });
  });

  it('reads standard input', async () => {
    const ended = await shell(
      `cat fixtures/bad/good.csv | "${process.execPath}" "${cli}" plan - --out "${freshFolder()}" --json`,
    );
    expect(JSON.parse(ended.stdout)).toMatchObject({ command: 'plan', jobs: [{ job: 'GOOD' }] });
  });
});

describe('a hostile name in print', () => {
  it('prints as typed and runs nowhere', { timeout: 300_000 }, async () => {
    const out = freshFolder();
    const ended = await shell(
      `"${process.execPath}" "${cli}" pack fixtures/bad/names.csv --job NAMES --catalogue fixtures/demo/catalogue.csv --out "${out}"`,
    );
    expect(ended.status).toBe(0);
    const parser = new PDFParse({
      data: new Uint8Array(readFileSync(join(out, 'NAMES', 'closeout-pack.pdf'))),
    });
    const { text } = await parser.getText();
    await parser.destroy();
    for (const name of ['<script>alert(1)</script>', '{{x}} / =1+1', '{{{y}}}']) expect(text).toContain(name);
  });
});

describe("README's program", () => {
  it('imports the package and prints the documents of a job', { timeout: 300_000 }, async () => {
    const [, source] = /```js\n(.*?)```/s.exec(readFileSync(projectPath('README.md'), 'utf8')) ?? [];
    const { stdout } = await run(process.execPath, ['--input-type=module', '--eval', source ?? ''], {
      cwd: program.folder,
    });
    const lines = stdout.trim().split('\n');
    const printed = lines.filter((line) => line.startsWith('UF-102 '));
    // With the library the job is complete, so that it has labels too.
    expect(printed).toHaveLength(DOCUMENT_KINDS.length);
    for (const line of printed) expect(line).toMatch(/\.pdf true$/);
    const items = lines.filter((line) => !line.startsWith('UF-102 '));
    expect(items).toContainEqual(expect.stringMatching(/^confirm default\/\S+ \S*grid\.csv \d+/));
    expect(items.filter((line) => !line.startsWith('confirm '))).toEqual([]);
  });
});
