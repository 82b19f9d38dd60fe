import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobOf } from '../../bench/jobs-of-size.mjs';
import { shuntbook } from '../commands/command.js';
import { readPrinted, type PrintedDocument } from './printed.js';

// The title strip keeps inside its frame whatever a job's facts say.

const PAPERS = ['tabloid', 'a3', 'letter', 'a4', 'arch-d'] as const;
/** mm from the edge of the paper to the frame, as `paper.ts` has it. */
const LEFT = 20;
const EDGE = { tabloid: 10, a3: 10, letter: 7, a4: 7, 'arch-d': 10 } as const;
const MM = 72 / 25.4;

const long = (length: number, words: string): string =>
  words
    .repeat(Math.ceil(length / words.length))
    .slice(0, length)
    .trim();
const ADDRESS = [1, 2, 3, 4]
  .map((n) => `${n} ${long(90, 'Upper Sorrel Bank Lane by the Mill, ')}`)
  .join('\n');
const FACTS = {
  owner: long(200, 'Trustees of the Estate of Quillmarsh and Umberfold '),
  parcel: long(120, '12-345-678/'),
  permit_number: long(80, 'SP-2025-'),
  amendments: long(150, 'Umberfold County ordinance 12, '),
  drawn_by: long(80, 'Anning Tolliver '),
  checked_by: 'W'.repeat(80),
};

const work = mkdtempSync(join(tmpdir(), 'shuntbook-strip-'));
const printed = new Map<string, PrintedDocument>();
const quoted = (text: string): string => `"${text}"`;

/** The job of six protectors with entries that no strip has room for. */
function listOf(): string {
  const [head = '', first = '', ...rest] = jobOf(6).split('\n');
  const stated = first
    .replace('"3 Sorrel Bank, Quillmarsh, Umberfold County"', quoted(ADDRESS))
    .replace('Sorrelbank house', long(140, 'Sorrelbank house and outbuildings '));
  const more = Object.values(FACTS).map(quoted).join(',');
  const blanks = ','.repeat(Object.keys(FACTS).length);
  return [
    `${head},${Object.keys(FACTS).join(',')}`,
    `${stated},${more}`,
    ...rest.map((row) => (row === '' ? row : `${row}${blanks}`)),
  ].join('\n');
}

beforeAll(async () => {
  const demo = (name: string): string => join('fixtures', 'demo', name);
  const list = join(work, 'list.csv');
  writeFileSync(list, listOf());
  for (const paper of PAPERS) {
    const out = join(work, paper);
    mkdirSync(out);
    const settings = join(work, `${paper}.json`);
    const own = JSON.parse(readFileSync(demo('settings.json'), 'utf8')) as object;
    writeFileSync(settings, JSON.stringify({ ...own, permitPaper: paper }));
    const beside = ['--catalogue', demo('catalogue.csv'), '--library', demo('library.csv')];
    const options = ['--settings', settings, '--out', out, '--date', '2025-03-14', '--quiet'];
    const told = await shuntbook(['pack', list, ...beside, ...options]);
    expect(told.status, told.err).toBe(0);
    printed.set(paper, await readPrinted(readFileSync(join(out, 'SIZE-6', 'permit-sheet.pdf'))));
  }
}, 600_000);

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

describe.each(PAPERS)('the title strip of entries that are far too long, on %s', (paper) => {
  const pages = () => printed.get(paper)?.pages ?? [];

  it('stands inside the frame of every sheet', () => {
    expect(pages().length).toBeGreaterThan(0);
    for (const { texts, width, height } of pages())
      for (const { text, left, right, bottom, top } of texts) {
        if (text.trim() === '') continue;
        expect(left, text).toBeGreaterThanOrEqual(LEFT * MM);
        expect(right, text).toBeLessThanOrEqual(width - EDGE[paper] * MM);
        expect(bottom, text).toBeGreaterThanOrEqual(EDGE[paper] * MM);
        expect(top, text).toBeLessThanOrEqual(height - EDGE[paper] * MM);
      }
  });

  it('says all that a strip says, each entry from its beginning, and shows where it goes on', () => {
    for (const page of pages()) {
      const said = page.text.replace(/\s+/g, ' ');
      for (const words of [
        'FOR PERMIT',
        'Job SIZE-6',
        'Reviewer’s stamp',
        'NEC (NFPA 70), 2023 edition',
        'NTS',
      ])
        expect(said).toContain(words);
      expect(said).toMatch(/Owner Trustees of the Estate/);
      expect(said).toMatch(/Permit no. SP-2025-SP-/);
      expect(said).toMatch(/Checked WWW/);
      const cut = page.texts.filter(({ text }) => text.includes('…'));
      expect(cut.length).toBeGreaterThanOrEqual(6);
    }
  });

  it('prints no two lines of it over each other', () => {
    for (const { texts } of pages()) {
      const seen = texts.filter(({ text }) => text.trim() !== '');
      for (const [i, a] of seen.entries())
        for (const b of seen.slice(i + 1)) {
          const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const high = Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom);
          const isOver = wide > 2 && high > 0.5 * Math.min(a.top - a.bottom, b.top - b.bottom);
          expect(isOver, `${a.text} over ${b.text}`).toBe(false);
        }
    }
  });
});
