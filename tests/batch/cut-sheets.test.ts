import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSheets } from '../../src/batch/cut-sheets.js';
import { Failure } from '../../src/model/failure.js';
import { appendPdfs } from '../../src/print/append-pdfs.js';

const folder = mkdtempSync(join(tmpdir(), 'shuntbook-cutsheets-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function pdf(pages: number, change: (of: PDFDocument) => void = () => undefined): Promise<Uint8Array> {
  const of = await PDFDocument.create();
  for (let i = 0; i < pages; i += 1) of.addPage([300, 400]);
  change(of);
  return of.save({ addDefaultPage: false });
}

beforeAll(async () => {
  const put = (name: string, bytes: Uint8Array | string): void => {
    writeFileSync(join(folder, name), bytes);
  };
  put('GOOD.pdf', await pdf(3));
  put('CAPITALS.PDF', await pdf(1));
  // A disk may hold é as two characters, where the catalogue has one.
  put('CAFE\u0301.pdf', await pdf(1));
  put('TEXT.pdf', 'A data sheet that somebody saved as text.');
  put('EMPTY.pdf', '');
  put('DAMAGED.pdf', '%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nstartxref\n9\n%%EOF\n');
  const locked = await pdf(1, (of) => {
    of.encrypt({ userPassword: 'invented', ownerPassword: 'invented too' });
  });
  put('LOCKED.pdf', locked);
  put('LARGE.pdf', await pdf(1));
  truncateSync(join(folder, 'LARGE.pdf'), 200_000_000);
  symlinkSync(join(folder, 'GOOD.pdf'), join(folder, 'LINK.pdf'));
  mkdirSync(join(folder, 'FOLDER.pdf'));
  put('UNUSED.pdf', 'Nobody asks for this part.');
});

describe('the data sheets of a folder', () => {
  it('are those of the parts that are asked for, in their order, whatever the case of the ending', async () => {
    const { read } = await openSheets(folder);
    const { sheets, items } = await read(['CAPITALS', 'GOOD', 'CAFÉ']);
    expect(sheets.map(({ part, pages }) => [part, pages])).toEqual([
      ['CAPITALS', 1],
      ['GOOD', 3],
      ['CAFÉ', 1],
    ]);
    expect(items).toEqual([]);
  });

  it('are none for a part whose sheet isn’t there, which is no fault: it is to follow', async () => {
    const { read } = await openSheets(folder);
    expect(await read(['NOWHERE', '../GOOD', 'UNUSE'])).toEqual({ sheets: [], items: [] });
  });

  it.each([
    ['TEXT', 'no-pdf'],
    ['EMPTY', 'no-pdf'],
    ['DAMAGED', 'broken'],
    ['LOCKED', 'locked'],
    ['LARGE', 'no-file'],
    ['LINK', 'no-file'],
    ['FOLDER', 'no-file'],
  ])('name what can’t be taken, and leave the others: %s is %s', async (part, fault) => {
    const { read } = await openSheets(folder);
    const { sheets, items } = await read([part, 'GOOD']);
    expect(sheets.map((sheet) => sheet.part)).toEqual(['GOOD']);
    expect(items).toHaveLength(1);
    expect(items[0]).toMatchObject({ code: 'batch/data-sheet-not-taken', values: { part, sheet: fault } });
    expect(items[0]?.file).toContain(`${part}.pdf`);
  });

  it('of a folder that isn’t there are refused in one message', async () => {
    const missing = join(folder, 'nowhere');
    await expect(openSheets(missing)).rejects.toThrow(Failure);
    await expect(openSheets(missing)).rejects.toMatchObject({
      exitStatus: 64,
      note: { code: 'batch/no-cutsheets' },
    });
  });
});

describe('PDFs behind another one', () => {
  it('are their pages, without links and scripts', async () => {
    const linked = await pdf(2, (of) => {
      const [page] = of.getPages();
      page?.node.set(
        PDFName.of('Annots'),
        of.context.obj([{ Type: 'Annot', Subtype: 'Link', Rect: [0, 0, 9, 9] }]),
      );
    });
    const whole = await appendPdfs(await pdf(1), [
      { bytes: linked, pages: 2 },
      { bytes: await pdf(3), pages: 3 },
    ]);
    const read = await PDFDocument.load(whole);
    expect(read.getPageCount()).toBe(6);
    for (const page of read.getPages()) expect(page.node.Annots()).toBeUndefined();
  });

  it('that are none leave the first as it is, byte for byte', async () => {
    const first = await pdf(1);
    expect(await appendPdfs(first, [])).toBe(first);
  });
});
