import { beforeAll, describe, expect, it } from 'vitest';
import { vocabularyOf } from '../../bench/measure-paper/broken-words.mjs';
import { shrunkTo } from '../../bench/measure-paper/edges.mjs';
import { linesOf } from '../../bench/measure-paper/lines.mjs';
import { measurePage, type Measured } from '../../bench/measure-paper/measure-page.mjs';
import type { Page } from '../../bench/measure-paper/page.mjs';
import { readPrinted } from '../../bench/measure-paper/read-page.mjs';
import { titleStrip } from '../../bench/measure-paper/title-strip.mjs';
import { withPrinter } from '../../src/print/printer.js';

// The measuring reads what the browser really prints: sizes after every transform, words that it cuts, pages that it shrinks.

/** A letter page, 25 mm at its left edge, in a font of the house. */
const html = (body: string): string => `<!doctype html><html lang="en"><head><title>Measured</title><style>
@page { size: letter; margin: 20mm 20mm 20mm 25mm; @bottom-left { content: "running head"; font: 9pt "Plex" } }
body { margin: 0; font: 10pt "Plex" }
td { border: 1px solid; width: 20mm; overflow-wrap: anywhere }
table { table-layout: fixed; width: 20mm }
</style></head><body><h1>Title</h1><p>To confirm the readings</p>${body}</body></html>`;

const BODIES = {
  good: '<table><tr><th>Step</th></tr><tr><td>to confirm everything</td></tr></table>',
  small:
    '<svg width="60mm" height="20mm" viewBox="0 0 60 20" role="img" aria-label="A box"><text x="1" y="9" font-size="3">drawn</text></svg><p style="transform: scale(0.8); width: 40mm">scaled</p>',
  cut: '<table><tr><td>documentation</td><td>to be</td></tr></table><p>documentation</p>',
  wide: '<div style="width: 260mm; border: 1px solid">wider than the sheet</div>',
  over: '<style>@page { margin-left: 13mm }</style><p style="position: absolute; top: 0">readings taken over the title</p>',
  strip:
    '<section><div><p>body</p></div><header style="font-size: 8pt; margin-top: 150mm"><p>Seal and signature</p><p><span>1 of 2</span> <span>NTS</span></p></header></section>',
} as const;

const pages = new Map<string, Page>();
beforeAll(async () => {
  await withPrinter({}, async (printer) => {
    for (const [name, body] of Object.entries(BODIES)) {
      const created = new Date('2025-03-14T00:00:00Z');
      const metadata = {
        title: 'Measured',
        author: 'tests',
        subject: '',
        keywords: [],
        language: 'en',
        created,
      };
      const bytes = await printer.print({ html: html(body), metadata });
      const [page] = await readPrinted(bytes);
      if (page) pages.set(name, page);
    }
  });
});

function printed(name: keyof typeof BODIES): Page {
  const page = pages.get(name);
  if (!page) throw new Error(`${name} was not printed`);
  return page;
}

function measured(name: keyof typeof BODIES): Measured {
  return measurePage('permit-sheet', printed(name), null, [
    vocabularyOf(['the documentation', 'to confirm']),
  ]);
}

const found = (name: keyof typeof BODIES): string[] =>
  measured(name).findings.map((finding) => finding.found.split(':')[0] ?? '');

describe('a page as it is printed', () => {
  it('has its words by line, its roles, its real sizes and its edge', () => {
    expect(linesOf(printed('good').texts)).toContainEqual(['to confirm', 'everything']);
    const { least, left } = measured('good');
    expect(
      Object.fromEntries(Object.entries(least).map(([role, { points }]) => [role, points.toFixed(1)])),
    ).toEqual({
      heading: '20.0',
      body: '10.0',
      table: '10.0',
      margin: '9.0',
    });
    expect(left).toBeCloseTo(25, 0);
    expect(found('good')).toEqual(['margin of 9.00 pt']);
  });

  it('has the size of text in a picture and in what is scaled', () => {
    const { least } = measured('small');
    // 3 mm and 0.8 of 10 points.
    expect(least.drawing?.points).toBeCloseTo((3 / 25.4) * 72, 1);
    expect(least.body?.points).toBeCloseTo(8, 1);
  });

  it('tells the word that a cell cuts', () => {
    expect(measured('cut').findings.map((finding) => finding.found)).toContainEqual(
      expect.stringMatching(/^1 broken words: docu\S*\/\S*$/),
    );
  });

  it('tells that the browser shrank it, though its running head kept its size', () => {
    expect(shrunkTo(printed('good'))).toBeNull();
    expect(shrunkTo(printed('wide'))).toBeLessThan(0.9);
    expect(measured('wide').least.margin?.points).toBeCloseTo(9, 1);
    expect(measured('wide').least.body?.points).toBeLessThan(9);
  });

  it('tells text too near to the edge, and over other text', () => {
    expect(measured('over').left).toBeCloseTo(13, 0);
    expect(found('over')).toEqual([
      'margin of 9.00 pt',
      expect.stringMatching(/^text 13\.\d mm from the left edge$/),
      '1 overlaps',
    ]);
  });

  it('has its title strip by what that says', () => {
    const strip = titleStrip(printed('strip'));
    expect([...(strip?.texts ?? [])].map(({ text }) => text)).toEqual([
      'Seal and signature',
      '1 of 2',
      'NTS',
    ]);
    expect(measured('strip').least['title strip']?.points).toBeCloseTo(8, 1);
    expect(titleStrip(printed('good'))).toBeNull();
  });
});
