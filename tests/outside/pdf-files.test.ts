import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shuntbook } from '../commands/command.js';

// The PDFs of the demo, as two programs of others see them.
const out = mkdtempSync(join(tmpdir(), 'shuntbook-files-'));
const together = join(out, 'together');
const apart = join(out, 'apart');
const sizes = join(out, 'sizes');
const PAPERS = ['tabloid', 'a3', 'letter', 'a4', 'arch-d'] as const;

beforeAll(async () => {
  const pack = ['pack', 'fixtures/demo', '--date', '2025-03-14', '--quiet', '--out'];
  for (const args of [
    [...pack, together],
    [...pack, apart, '--separate'],
  ]) {
    const told = await shuntbook(args);
    // One job of the demo is a draft on purpose.
    expect([0, 1], told.err).toContain(told.status);
  }
  const settings = JSON.parse(readFileSync('fixtures/demo/settings.json', 'utf8')) as object;
  for (const permitPaper of PAPERS) {
    const file = join(out, `${permitPaper}.json`);
    writeFileSync(file, JSON.stringify({ ...settings, permitPaper }));
    const more = ['--job', 'UF-106', '--with', 'working,sources', '--settings', file];
    const told = await shuntbook([...pack, join(sizes, permitPaper), ...more]);
    expect(told.status, told.err).toBe(0);
  }
}, 600_000);

afterAll(() => {
  rmSync(out, { recursive: true, force: true });
});

function pdfsOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.pdf'))
    .map((name) => join(folder, name));
}

interface Ended {
  readonly status: number | null;
  readonly said: string;
}

function run(program: string, args: readonly string[]): Ended {
  const { status, stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8' });
  if (error) throw error;
  return { status, said: `${stdout}${stderr}` };
}

describe.each([
  ['together', together, /^(closeout-pack|permit-sheet|owner-sheet|labels|site-record)\.pdf$/, 16 * 5 - 1],
  ['apart', apart, /^(closeout-pack|permit-sheet-\d|owner-sheet|labels|site-record)\.pdf$/, 16 * 6 - 1],
  [
    'in each size, with their appendix',
    sizes,
    /^(closeout-pack|permit-sheet|permit-appendix|owner-sheet|labels|site-record)\.pdf$/,
    PAPERS.length * 6,
  ],
])('the files of the demo, sheets %s', (_, folder, name, least) => {
  // One job is a draft, which has no labels; sheets apart are two at least.
  it(`are ${String(least)} at least, and qpdf --check finds no fault and warns of nothing`, () => {
    const files = pdfsOf(folder);
    expect(files.length).toBeGreaterThanOrEqual(least);
    for (const file of files) expect(basename(file)).toMatch(name);
    for (const file of files) {
      const { status, said } = run('qpdf', ['--check', file]);
      expect(said, file).toContain('No syntax or stream encoding errors found');
      expect(said, file).not.toMatch(/warning/i);
      expect(status, file).toBe(0);
    }
  });

  it('embed each of their fonts by what pdffonts lists', () => {
    for (const file of pdfsOf(folder)) {
      const { status, said } = run('pdffonts', [file]);
      expect(status, file).toBe(0);
      const fonts = said.trim().split('\n').slice(2);
      expect(fonts.length, file).toBeGreaterThan(0);
      // Name, type, encoding, then embedded, subset, has a table to Unicode, and the object's two numbers.
      for (const font of fonts)
        expect(font, file).toMatch(
          /(?:DejaVuSans|IBMPlexSansCond|AtkinsonHyperlegibleNext).* yes yes yes +\d+ +\d+ *$/,
        );
    }
  });
});

describe('a damaged file', () => {
  it('is one that qpdf --check finds fault with', () => {
    const file = join(out, 'damaged.pdf');
    writeFileSync(file, '%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nstartxref\n9\n%%EOF\n');
    const { status, said } = run('qpdf', ['--check', file]);
    expect(status).not.toBe(0);
    expect(said).not.toContain('No syntax or stream encoding errors found');
  });
});
