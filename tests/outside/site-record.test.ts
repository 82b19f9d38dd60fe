import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shuntbook } from '../commands/command.js';
import { filledByAnother } from '../site-forms/fill-forms.js';

// The form that a pack gives the crew, filled in, as programs of others see it.
const out = mkdtempSync(join(tmpdir(), 'shuntbook-form-'));
const form = join(out, 'UF-102', 'site-record.pdf');
const filled = join(out, 'filled.pdf');

beforeAll(async () => {
  const told = await shuntbook([
    'pack',
    'fixtures/demo',
    '--job',
    'UF-102',
    '--date',
    '2025-03-14',
    '--quiet',
    '--out',
    out,
  ]);
  expect(told.status, told.err).toBe(0);
  const written = new Map([
    ['P-3.serial', 'INV-0042'],
    ['P-3.ground_point', 'barra de tierra, señal 4'],
    ['P-3.1.light.utility-on', 'lit'],
  ]);
  writeFileSync(filled, await filledByAnother(readFileSync(form), written));
}, 300_000);

afterAll(() => {
  rmSync(out, { recursive: true, force: true });
});

function run(program: string, ...args: string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8' });
  expect(status, stderr).toBe(0);
  return stdout;
}

describe('the form of a job, as other programs see it', () => {
  it('is sound, a form without scripts, and tagged', () => {
    run('qpdf', '--check', form);
    const info = run('pdfinfo', form);
    expect(info).toMatch(/Form:\s+AcroForm/);
    expect(info).toMatch(/JavaScript:\s+no/);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(run('pdfinfo', '-struct', form)).toMatch(/^\s+Form/m);
  });

  it('shows what was filled in', () => {
    const before = run('pdftotext', '-layout', form, '-');
    const after = run('pdftotext', '-layout', filled, '-');
    for (const value of ['INV-0042', 'barra de tierra, señal 4']) {
      expect(before).not.toContain(value);
      expect(after).toContain(value);
    }
    const shown = (text: string): number => text.match(/\bON\b/g)?.length ?? 0;
    expect(shown(after)).toBe(shown(before) + 1);
  });
});
