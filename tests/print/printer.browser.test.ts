import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PDFParse } from '../../bench/pdf-readers.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Note } from '../../src/model/open-item.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { finishPdf } from '../../src/print/pdf.js';
import { readPdfObjects } from '../../src/print/pdf-objects.js';
import { withPrinter, type Printer, type PrintOrder } from '../../src/print/printer.js';

const metadata = {
  title: 'Handover pack: Hütte (A)',
  author: 'An invented company',
  subject: 'Job 7',
  keywords: ['surge protection', 'schedule'],
  language: 'es',
  created: new Date('2026-03-04T00:00:00Z'),
};

const style = `@page { size: letter; margin: 20mm; @bottom-right { content: counter(page) " of " counter(pages); font: 8pt "DejaVu Sans"; } }
  body { font-family: "DejaVu Sans"; } .narrow { font-family: "DejaVu Sans Condensed"; } h2 { break-before: page; }`;

const order = (body: string, head = ''): PrintOrder => ({
  html: `<!doctype html><html lang="es"><head><meta charset="utf-8"><title>x</title><style>${style}</style>${head}</head><body>${body}</body></html>`,
  metadata,
});

const table = `<h1>Schedule</h1><table><thead><tr><th>tag</th><th>part</th></tr></thead>${Array.from(
  { length: 90 },
  (_, i) => `<tr><td>P-${i + 1}</td><td class="narrow">part <b>${i}</b></td></tr>`,
).join('')}</table><h2>Notes</h2><p>12 µF, 5 Ω, ½</p>`;

async function read(
  pdf: Uint8Array,
): Promise<{ text: string; pages: string[]; info: Record<string, unknown> }> {
  const parser = new PDFParse({ data: pdf.slice() });
  const text = await parser.getText();
  const info = await parser.getInfo();
  await parser.destroy();
  return {
    text: text.text.normalize('NFKC'),
    pages: text.pages.map((p) => p.text),
    info: info.info as Record<string, unknown>,
  };
}

/** Runs a test with a printer that is held open. */
function holdPrinter(notices: Note[]): { printer: () => Printer; close: () => Promise<void> } {
  let give: (printer: Printer) => void = () => undefined;
  let done: () => void = () => undefined;
  const ready = new Promise<Printer>((resolve) => (give = resolve));
  const finished = new Promise<void>((resolve) => (done = resolve));
  const held = withPrinter({ pages: 2, onNotice: (n) => notices.push(n) }, async (printer) => {
    give(printer);
    await finished;
  });
  let printer: Printer | undefined;
  void ready.then((p) => (printer = p));
  return {
    printer: () => {
      if (!printer) throw new Error('the printer is not ready');
      return printer;
    },
    close: async () => {
      done();
      await held;
    },
  };
}

describe('a printer', () => {
  const notices: Note[] = [];
  let held: ReturnType<typeof holdPrinter>;
  beforeAll(() => {
    held = holdPrinter(notices);
  });
  afterAll(() => held.close());
  const print = (o: PrintOrder): Promise<Uint8Array> => held.printer().print(o);

  it('prints text that reads back, with metadata, language, tags and bookmarks', async () => {
    const pdf = await print(order(table));
    const { text, pages, info } = await read(pdf);
    expect(text).toContain('P-90');
    expect(text).toContain('12 \u03bcF, 5 \u03a9');
    expect(pages.length).toBeGreaterThan(2);
    expect(pages[0]).toContain(`1 of ${pages.length}`);
    expect(pages.filter((p) => p.includes('tag')).length).toBe(pages.length - 1);
    expect(info).toMatchObject({
      Title: metadata.title,
      Author: metadata.author,
      Subject: metadata.subject,
      Keywords: 'surge protection, schedule',
      CreationDate: "D:20260304000000+00'00'",
      Language: 'es',
    });
    const parser = new PDFParse({ data: pdf.slice() });
    const outline = (await parser.getInfo()).outline as { title: string; items: { title: string }[] }[];
    expect(outline.map((o) => [o.title, o.items.map((i) => i.title)])).toEqual([['Schedule', ['Notes']]]);
    await parser.destroy();
  });

  it('gives the same bytes for the same order, in a fresh page and in a used one', async () => {
    const first = await print(order(table));
    await print(order('<table><tr><th>other</th></tr></table>'));
    const again = await Promise.all([print(order(table)), print(order(table))]);
    for (const pdf of again) expect(Buffer.compare(pdf, first)).toBe(0);
    await withPrinter({ pages: 1 }, async (printer) => {
      expect(Buffer.compare(await printer.print(order(table)), first)).toBe(0);
    });
  });

  it('embeds every font and names none but the shipped ones', async () => {
    const { fonts } = finishPdf(await rawPrint(order(table)), metadata);
    expect(new Set(fonts.map((f) => f.name))).toEqual(
      new Set(['DejaVuSans', 'DejaVuSans-Bold', 'DejaVuSansCondensed', 'DejaVuSansCondensed-Bold']),
    );
    expect(fonts.every((f) => f.embedded && !f.type3)).toBe(true);
    expect(notices.filter((n) => n.code === 'print/font-missing')).toEqual([]);
  });

  it('leaves the fonts of a stand-alone page out, since it brings them', async () => {
    const { standAloneKit } = await embeddedFonts();
    const fontsOf = standAloneKit.css(order('<p>one <b>two</b></p>').html);
    // Both of the families that the styles name, regular and bold.
    expect(fontsOf.split('\n').map((rule) => rule.slice(0, 10))).toEqual(Array(4).fill('@font-face'));
    const whole = await print(order('<p>one <b>two</b></p>', `<style>${fontsOf}</style>`));
    const bare = await print(order('<p>one <b>two</b></p>', '<style></style>'));
    expect(Buffer.compare(whole, bare)).toBe(0);
  });

  it('runs no script, asks for no file and no host', async () => {
    const asked: string[] = [];
    const server = createServer((request, response) => {
      asked.push(request.url ?? '');
      response.end('');
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const host = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const pdf = await print(
      order(
        `<p>before</p><script>document.body.textContent = "ran"</script><img src="x" onerror="document.body.textContent='ran'">
         <img src="${host}/img"><iframe src="${host}/frame"></iframe><iframe src="file:///etc/passwd"></iframe>
         <object data="${host}/object"></object><a href="${host}/a">link</a>
         <iframe srcdoc="<script>parent.document.body.textContent='ran'</script>"></iframe>`,
        `<link rel="stylesheet" href="${host}/css"><meta http-equiv="refresh" content="0;url=${host}/refresh">
         <style>@import url(${host}/import); @font-face { font-family: f; src: url(${host}/font); } p { font-family: f, "DejaVu Sans"; }</style>`,
      ),
    );
    await new Promise((resolve) => server.close(resolve));
    const { text } = await read(pdf);
    expect(text).toContain('before');
    expect(text).not.toContain('ran');
    expect(text).not.toContain('root:');
    expect(asked).toEqual([]);
  });

  it('keeps names of table cells in what a person wrote', async () => {
    const title = 'node00000009';
    const pdf = await print(order(`${table}<h1>${title}</h1>`));
    const parser = new PDFParse({ data: pdf.slice() });
    const outline = (await parser.getInfo()).outline as { title: string }[];
    await parser.destroy();
    expect(outline.map((o) => o.title)).toContain(title);
  });

  async function rawPrint(o: PrintOrder): Promise<Uint8Array> {
    const { startBrowser } = await import('../../src/print/browser.js');
    const { openPage } = await import('../../src/print/page.js');
    const { browser, end } = await startBrowser();
    try {
      const page = await openPage(browser, await embeddedFonts());
      return await page.print(o.html);
    } finally {
      await end();
    }
  }

  it('makes the file smaller than the browser does', async () => {
    const raw = await rawPrint(order(table));
    const { bytes } = finishPdf(raw, metadata);
    expect(bytes.length).toBeLessThan(raw.length / 2);
    expect(readPdfObjects(raw).objects.length).toBeGreaterThan(100);
  });
});
