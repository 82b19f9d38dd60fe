import { PDFDocument, PDFName, PDFString, PDFHexString } from '@cantoo/pdf-lib';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobOf } from '../../bench/jobs-of-size.mjs';
import { ownWords } from '../../bench/measure-paper/own-words.mjs';
import { shuntbook } from '../commands/command.js';
import {
  contentOf,
  nodesOf,
  readPrinted,
  type PrintedDocument,
  type PrintedPage,
  type TagNode,
} from './printed.js';

const PAPERS = ['tabloid', 'a3', 'letter', 'a4', 'arch-d'] as const;
/** Points, landscape: ANSI/ASME Y14.1 and ISO 216. */
const SIZES = {
  tabloid: [1224, 792],
  a3: [1190.55, 841.89],
  letter: [792, 612],
  a4: [841.89, 595.28],
  'arch-d': [2592, 1728],
} as const;
const ADDRESS = '3 Sorrel Bank\nQuillmarsh, Umberfold County';

// The list lies at an absolute path, which no sheet may tell.
const work = mkdtempSync(join(tmpdir(), 'shuntbook-papers-'));
const list = join(work, 'lists', 'sorrel_bank.csv');
const sheets = join(work, 'sheets');
const printed = new Map<string, PrintedDocument>();

const demo = (name: string): string => join('fixtures', 'demo', name);
const file = (paper: string, name: string, again = ''): string =>
  join(work, `${paper}${again}`, 'SIZE-6', name);

async function dataSheet(pages: number): Promise<Uint8Array> {
  const of = await PDFDocument.create();
  for (let i = 0; i < pages; i += 1) of.addPage([300, 400]);
  return of.save();
}

async function pack(paper: string, out: string, more: readonly string[]): Promise<void> {
  const settings = join(work, `${paper}.json`);
  const own = JSON.parse(readFileSync(demo('settings.json'), 'utf8')) as object;
  writeFileSync(settings, JSON.stringify({ ...own, permitPaper: paper }));
  const beside = ['--catalogue', demo('catalogue.csv'), '--library', demo('library.csv')];
  const told = await shuntbook([
    'pack',
    list,
    ...beside,
    '--settings',
    settings,
    '--out',
    out,
    '--date',
    '2025-03-14',
    '--quiet',
    ...more,
  ]);
  expect(told.status, told.err).toBe(0);
}

beforeAll(async () => {
  mkdirSync(join(work, 'lists'));
  mkdirSync(sheets);
  const csv = jobOf(6).replace('"3 Sorrel Bank, Quillmarsh, Umberfold County"', `"${ADDRESS}"`);
  expect(csv).toContain(ADDRESS);
  writeFileSync(list, csv);
  writeFileSync(join(sheets, 'WK-MALLOW.pdf'), await dataSheet(2));
  writeFileSync(join(sheets, 'WK-FOXGLOVE.pdf'), 'no PDF at all');
  const appendix = ['--with', 'working,sources', '--cutsheets', sheets];
  for (const paper of PAPERS) {
    await pack(paper, join(work, paper), appendix);
    await pack(paper, join(work, `${paper}-again`), appendix);
    printed.set(paper, await readPrinted(readFileSync(file(paper, 'permit-sheet.pdf'))));
  }
}, 600_000);

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

function of(paper: string): PrintedDocument {
  const found = printed.get(paper);
  if (!found) throw new Error(`nothing was printed on ${paper}`);
  return found;
}

/** The texts of a page in the order of its tags, each piece of marked content as one. */
function tagged(page: PrintedPage): string[] {
  return contentOf(page.tags).map((id) =>
    page.texts
      .filter(({ content }) => content === id)
      .map(({ text }) => text)
      .join(' ')
      .trim(),
  );
}

const textOf = (value: unknown): string =>
  value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : '';

describe.each(PAPERS)('permit sheets on %s', (paper) => {
  it('are of one size, with title, language, bookmarks and tags', async () => {
    const [width, height] = SIZES[paper];
    for (const page of of(paper).pages) {
      expect(Math.abs(page.width - width)).toBeLessThan(1.5);
      expect(Math.abs(page.height - height)).toBeLessThan(1.5);
    }
    expect(of(paper).bookmarks).toBeGreaterThan(4);
    const { catalog, ...pdf } = await PDFDocument.load(readFileSync(file(paper, 'permit-sheet.pdf')), {
      updateMetadata: false,
    }).then((read) => ({ catalog: read.catalog, title: read.getTitle() }));
    expect(pdf.title).toBe('Permit sheets, job SIZE-6');
    expect(textOf(catalog.lookup(PDFName.of('Lang')))).toMatch(/^en/);
    expect(catalog.lookup(PDFName.of('MarkInfo'))?.toString()).toMatch(/\/Marked true/);
  });

  it('are read in the order in which a person reads: title strip, heading, then each table row by row', () => {
    const [first] = of(paper).pages;
    if (!first) throw new Error('no sheet');
    const order = tagged(first);
    const at = (text: RegExp): number => order.findIndex((one) => text.test(one));
    expect(at(/^Lanternfold/)).toBeGreaterThanOrEqual(0);
    expect(at(/^Lanternfold/)).toBeLessThan(at(/^Surge protection:/));
    expect(at(/^Surge protection:/)).toBeLessThan(order.findIndex((one) => /^legend$/i.test(one)));
    let rows = 0;
    for (const page of of(paper).pages) {
      const leftOf = (cell: TagNode): number => {
        const ids = new Set(contentOf(cell));
        return Math.min(...page.texts.filter(({ content }) => ids.has(content)).map(({ left }) => left));
      };
      for (const row of nodesOf(page.tags, (role) => role === 'TR')) {
        const lefts = nodesOf(row, (role) => role === 'TH' || role === 'TD')
          .map(leftOf)
          .filter(Number.isFinite);
        expect(lefts).toEqual([...lefts].sort((a, b) => a - b));
        if (lefts.length > 1) rows += 1;
      }
      const topOf = (row: TagNode): number => {
        const ids = new Set(contentOf(row));
        return Math.max(...page.texts.filter(({ content }) => ids.has(content)).map(({ top }) => top));
      };
      for (const table of nodesOf(page.tags, (role) => role === 'Table')) {
        const tops = nodesOf(table, (role) => role === 'TR')
          .map(topOf)
          .filter(Number.isFinite);
        expect(tops).toEqual([...tops].sort((a, b) => b - a));
      }
    }
    expect(rows).toBeGreaterThan(25);
  });

  it('describe the drawing to whoever can’t see it, and hold every word as text that can be searched', () => {
    const figures = of(paper).pages.flatMap(({ tags }) => nodesOf(tags, (role) => role === 'Figure'));
    const alts = figures.map(({ alt }) => alt ?? '');
    expect(alts.every((alt) => alt !== '')).toBe(true);
    expect(alts.join('\n')).toContain('One-line drawing of job SIZE-6');
    const text = of(paper)
      .pages.map((page) => page.text)
      .join('\n')
      .replace(/\s+/g, ' ');
    for (const words of ['PROTECTION SCHEDULE', 'Workshop / bench wall', '690.7', 'CALCULATION SUMMARY'])
      expect(text.toLowerCase()).toContain(words.toLowerCase());
  });

  it('embed their fonts, and have neither annotations nor layers', () => {
    for (const page of of(paper).pages) {
      expect(page.annotations).toBe(0);
      expect(page.fonts.length).toBeGreaterThan(0);
      for (const font of page.fonts) expect(font, font.name).toMatchObject({ embedded: true, type3: false });
    }
    expect(of(paper).hasLayers).toBe(false);
  });

  it('are the same, byte for byte, made again, and so is their appendix', () => {
    for (const name of ['permit-sheet.pdf', 'permit-appendix.pdf'])
      expect(readFileSync(file(paper, name)).equals(readFileSync(file(paper, name, '-again')))).toBe(true);
  });

  it('print an address of two lines as two lines', () => {
    for (const page of of(paper).pages) {
      const line = (text: string) => page.texts.find((one) => one.text.trim() === text);
      const [upper, lower] = [line('3 Sorrel Bank'), line('Quillmarsh, Umberfold County')];
      expect(upper).toBeDefined();
      expect(lower).toBeDefined();
      expect(upper?.left).toBeCloseTo(lower?.left ?? 0, 0);
      expect((upper?.bottom ?? 0) - (lower?.bottom ?? 0)).toBeGreaterThan(8);
    }
  });

  it('tell no path, no name of a file and no word of the program’s own, wherever the list lies', () => {
    const texts = of(paper).pages.flatMap((page) => [page.text.replace(/\s+/g, ' '), ...tagged(page)]);
    expect(ownWords(texts)).toEqual([]);
    expect(texts.join(' ')).not.toMatch(/sorrel_bank|shuntbook-papers/);
  });
});

describe('the appendix', () => {
  it('holds what was asked for, the data sheets that could be taken, and which are to follow', async () => {
    const bytes = readFileSync(file('tabloid', 'permit-appendix.pdf'));
    const { pages } = await readPrinted(bytes);
    const text = pages
      .map((page) => page.text)
      .join('\n')
      .replace(/\s+/g, ' ');
    for (const words of ['Calculations', 'Where each value comes from', 'WK-MALLOW 2', 'sorrel_bank.csv'])
      expect(text).toContain(words);
    expect(text).toMatch(/To follow: [^.]*WK-FOXGLOVE/);
    // The two pages of the one data sheet are the last.
    for (const page of pages.slice(-2)) expect([page.width, page.height]).toEqual([300, 400]);
    expect(pages.at(-3)?.width).not.toBe(300);
    expect(
      of('tabloid')
        .pages.map((page) => page.text)
        .join(' '),
    ).toMatch(/Data sheets appended: WK-MALLOW; to\s+follow:/);
  });

  it('isn’t there where nothing is asked for', async () => {
    const out = join(work, 'bare');
    await pack('tabloid', out, []);
    expect(() => readFileSync(join(out, 'SIZE-6', 'permit-appendix.pdf'))).toThrow(/ENOENT/);
    const { pages } = await readPrinted(readFileSync(join(out, 'SIZE-6', 'permit-sheet.pdf')));
    expect(pages.map((page) => page.text).join(' ')).toContain(
      'Data sheets of the parts: none appended to these sheets; to follow',
    );
  });
});
