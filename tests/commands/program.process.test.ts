import { execFile, execFileSync, spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { PDFParse } from 'pdf-parse';
import { beforeAll, describe, expect, it } from 'vitest';
import { freshFolder, projectPath } from './command.js';

const CLI = projectPath('dist/cli.js');
const ROOT = projectPath('');
const run = promisify(execFile);

beforeAll(() => {
  execFileSync(
    process.execPath,
    [projectPath('node_modules/typescript/bin/tsc'), '-p', 'tsconfig.build.json'],
    {
      cwd: ROOT,
    },
  );
});

interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

async function shell(script: string): Promise<Ended> {
  try {
    const { stdout, stderr } = await run('bash', ['-o', 'pipefail', '-c', script], { cwd: ROOT });
    return { status: 0, stdout, stderr };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { status: code, stdout, stderr };
  }
}

describe('the program as a process', () => {
  it('ends with the exit status that the command names', async () => {
    const wrong = await shell(`"${process.execPath}" "${CLI}" pack`);
    expect(wrong.status).toBe(64);
    expect(wrong.stdout).toBe('');
    const missing = await shell(`"${process.execPath}" "${CLI}" plan nowhere.csv --out "${freshFolder()}"`);
    expect(missing.status).toBe(2);
    expect(missing.stderr).toContain('nowhere.csv');
    expect(missing.stderr).not.toMatch(/\n\s+at /);
  });

  it('ends quietly when the reader closes the pipe', async () => {
    const ended = await shell(`"${process.execPath}" "${CLI}" rules --json | head -c 1`);
    expect(ended).toEqual({ status: 0, stdout: '{', stderr: '' });
  });

  it('reads standard input', async () => {
    const ended = await shell(
      `cat fixtures/bad/good.csv | "${process.execPath}" "${CLI}" plan - --out "${freshFolder()}" --json`,
    );
    expect(JSON.parse(ended.stdout)).toMatchObject({ command: 'plan', jobs: [{ job: 'GOOD' }] });
  });

  it('stopped by SIGTERM ends with 130 and leaves no half file', { timeout: 300_000 }, async () => {
    const out = freshFolder();
    const child = spawn(process.execPath, [CLI, 'pack', 'fixtures/demo', '--out', out], { cwd: ROOT });
    let told = '';
    let stopped = false;
    child.stderr.on('data', (data: Buffer) => {
      told += data.toString();
      if (!stopped && /^1 of 14 /m.test(told)) stopped = child.kill('SIGTERM');
    });
    const status = await new Promise<number | null>((resolve) => child.on('close', resolve));
    expect(status).toBe(130);
    expect(existsSync(join(out, 'report.csv'))).toBe(true);
    for (const folder of readdirSync(out, { withFileTypes: true })) {
      if (!folder.isDirectory() || folder.name.startsWith('.')) continue;
      for (const file of readdirSync(join(out, folder.name)).filter((name) => name.endsWith('.pdf'))) {
        expect(
          readFileSync(join(out, folder.name, file))
            .subarray(-6)
            .toString(),
          file,
        ).toContain('%%EOF');
      }
    }
  });
});

describe('a hostile name in print', () => {
  it('prints as typed and runs nowhere', { timeout: 300_000 }, async () => {
    const out = freshFolder();
    const ended = await shell(
      `"${process.execPath}" "${CLI}" pack fixtures/bad/names.csv --job NAMES --catalogue fixtures/demo/catalogue.csv --out "${out}"`,
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
    const [, program] = /```js\n(.*?)```/s.exec(readFileSync(projectPath('README.md'), 'utf8')) ?? [];
    const { stdout } = await run(process.execPath, ['--input-type=module', '--eval', program ?? ''], {
      cwd: ROOT,
    });
    const lines = stdout.trim().split('\n');
    expect(lines).toContain('UF-102 closeout-pack.pdf true');
    expect(lines).toHaveLength(4);
  });
});
