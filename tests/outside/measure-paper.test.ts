import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobOf } from '../../bench/jobs-of-size.mjs';
import { vocabularyOf } from '../../bench/measure-paper/broken-words.mjs';
import { DOCUMENTS } from '../../bench/measure-paper/documents.mjs';
import { blankBelow } from '../../bench/measure-paper/ink.mjs';
import { jobFolders, measureJob } from '../../bench/measure-paper/measure-job.mjs';
import { picturesOf } from '../../bench/measure-paper/pictures.mjs';
import { shuntbook } from '../commands/command.js';

// What is measured on pictures of pages, as poppler makes them.

const work = mkdtempSync(join(tmpdir(), 'shuntbook-ink-'));
afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

/** A PDF of pages of 200 by 400 points, each with a black bar whose lower edge is that far above the foot. */
function bars(file: string, feet: readonly number[]): string {
  const kids = feet.map((_, at) => `${10 + 2 * at} 0 R`).join(' ');
  const objects = [
    '1 0 obj <</Type /Catalog /Pages 2 0 R>> endobj',
    `2 0 obj <</Type /Pages /Count ${feet.length} /Kids [${kids}]>> endobj`,
    ...feet.flatMap((foot, at) => {
      const bar = `40 ${foot} 60 20 re f`;
      return [
        `${10 + 2 * at} 0 obj <</Type /Page /Parent 2 0 R /MediaBox [0 0 200 400] /Contents ${11 + 2 * at} 0 R /Resources <<>>>> endobj`,
        `${11 + 2 * at} 0 obj <</Length ${bar.length}>> stream\n${bar}\nendstream endobj`,
      ];
    }),
  ];
  let body = '%PDF-1.7\n';
  const entries = objects.map((object) => {
    const entry = `${object.split(' ')[0] ?? ''} 1\n${String(body.length).padStart(10, '0')} 00000 n \n`;
    body += `${object}\n`;
    return entry;
  });
  const path = join(work, file);
  writeFileSync(
    path,
    `${body}xref\n${entries.join('')}trailer <</Size ${10 + 2 * feet.length} /Root 1 0 R>>\nstartxref\n${body.length}\n%%EOF\n`,
  );
  return path;
}

describe('the picture of a page', () => {
  it('shows how much is blank below the last line, page by page', () => {
    const shares = picturesOf(bars('bars.pdf', [300, 100, 20])).map((picture) => blankBelow(picture, []));
    expect(shares.map((share) => share.toFixed(2))).toEqual(['0.75', '0.25', '0.05']);
  });

  it('isn’t made of what is no PDF', () => {
    const file = join(work, 'no.pdf');
    writeFileSync(file, 'no PDF');
    expect(() => picturesOf(file)).toThrow("pdftoppm can't read");
  });
});

describe('a pack that is measured', () => {
  const out = join(work, 'out');
  beforeAll(async () => {
    const list = join(work, 'six.csv');
    writeFileSync(list, jobOf(6));
    const beside = ['catalogue.csv', 'library.csv', 'settings.json'].flatMap((name) => [
      `--${name.replace(/\..*/, '')}`,
      join('fixtures/demo', name),
    ]);
    const told = await shuntbook(['pack', list, ...beside, '--date', '2025-03-14', '--quiet', '--out', out]);
    expect(told.status, told.err).toBe(0);
  });

  it('has a line for every page of every document', async () => {
    const [folder = '', ...others] = jobFolders(out);
    expect(others).toEqual([]);
    expect(jobFolders(out, 'another job')).toEqual([]);
    const measured = await measureJob(folder, vocabularyOf([]), new Set(DOCUMENTS));
    expect(measured.map(({ job }) => job)).toEqual(measured.map(() => 'SIZE-6'));
    expect(measured.map(({ document }) => document)).toEqual([
      'closeout-pack',
      'labels',
      'owner-sheet',
      'permit-sheet',
      'site-record',
    ]);
    for (const { document, pages } of measured) {
      expect(pages.length, document).toBeGreaterThan(0);
      for (const [at, { page, blank, left, least }] of pages.entries()) {
        expect(page).toBe(at + 1);
        expect(blank, document).toBeLessThan(1);
        expect(left, document).toBeGreaterThan(0);
        expect(Object.keys(least).length, document).toBeGreaterThan(0);
      }
    }
  });

  it('is measured in no more than is asked for', async () => {
    const [folder = ''] = jobFolders(out);
    const measured = await measureJob(folder, vocabularyOf([]), new Set(['labels']));
    expect(measured.map(({ document }) => document)).toEqual(['labels']);
  });
});
