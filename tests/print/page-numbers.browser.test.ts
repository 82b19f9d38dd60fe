import { describe, expect, it } from 'vitest';
import { pageMark } from '../../src/model/page-mark.js';
import { withPrinter } from '../../src/print/printer.js';
import { readPrinted } from '../documents/printed.js';

const STYLE = `html { font-family: Plex; } section { break-before: page; }
  .page-mark { display: inline-block; width: 3em; white-space: nowrap; color: #000001; }`;

/** A document with a table of contents, sections on the pages of these numbers, and more text on its first page. */
function documentOf(at: readonly number[], more = ''): string {
  const entries = at.map(
    (_, i) => `<li><a href="#s${i}"><span class="page-mark">${pageMark(i)}</span>Part ${'ABC'[i]}</a></li>`,
  );
  const last = Math.max(1, ...at);
  const pages = Array.from({ length: last - 1 }, (_, i) => {
    const id = at.indexOf(i + 2);
    return `<section${id < 0 ? '' : ` id="s${id}"`}><h2>Page</h2></section>`;
  });
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title><style>${STYLE}</style></head>
<body><h1>Contents</h1><ul>${entries.join('')}</ul>${more}${pages.join('')}</body></html>`;
}

async function textOf(html: string, contents: readonly string[]): Promise<string> {
  const metadata = {
    title: 't',
    author: 'a',
    subject: 's',
    keywords: [],
    language: 'en',
    created: new Date(0),
  };
  const bytes = await withPrinter({ pages: 1 }, (printer) =>
    printer.print({ html, metadata: { ...metadata, contents } }),
  );
  const [page] = (await readPrinted(bytes)).pages;
  return (page?.text ?? '').replace(/\s+/g, ' ');
}

describe('the numbers of a table of contents', () => {
  it('are those of the pages, of one digit or of several', async () => {
    const text = await textOf(documentOf([2, 9, 113]), ['s0', 's1', 's2']);
    expect(text).toMatch(/2 Part A .*9 Part B .*113 Part C/);
  });

  it('are left out for a place that is not there', async () => {
    const text = await textOf(documentOf([2, 3]), ['s0', 'elsewhere']);
    expect(text).toMatch(/2 Part A/);
    expect(text).not.toMatch(/\d Part B/);
  });

  it('take the place of no text that a list wrote, be it a mark', async () => {
    const text = await textOf(
      documentOf([2], `<p>${pageMark(0)}</p><p>&lt;span class="page-mark">${pageMark(0)}&lt;</p>`),
      ['s0'],
    ).catch((error: unknown) => String(error));
    expect(text).toContain(`${pageMark(0)} <span class="page-mark">${pageMark(0)}<`);
    expect(text).toMatch(/2 Part A/);
  });
});
