import { describe, expect, it } from 'vitest';
import { renderDocuments } from '../../src/documents/render.js';
import { defaultSettings } from '../../src/model/settings.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { withPrinter } from '../../src/print/printer.js';
import { housePlan } from '../documents/fixtures/plans.js';
import { readPrinted, type PrintedPage } from '../documents/printed.js';

/** Points from an edge of the page within which the margins say document, job, date and page. */
const MARGIN = 46;

/** Texts of a margin that lie on another, from left to right. */
function overprinted(page: PrintedPage): string[] {
  const margins = page.texts.filter((t) => t.top < MARGIN || t.bottom > page.height - MARGIN);
  return margins.flatMap((a) =>
    margins
      .filter(
        (b) => b !== a && b.left >= a.left && b.left < a.right - 0.3 && b.bottom < a.top && a.bottom < b.top,
      )
      .map((b) => `${a.text} on ${b.text}`),
  );
}

describe('a name without a blank that is wider than its place', () => {
  it.each([
    ['of the job', { job: 'J-1', jobName: 'W'.repeat(120) }],
    ['that is the id of the job', { job: 'MW'.repeat(60), jobName: '' }],
  ])(
    '%s is cut with an ellipsis in the margins, and prints over nothing',
    { timeout: 300_000 },
    async (_, names) => {
      const plan = { ...housePlan(), ...names };
      const { kit } = await embeddedFonts();
      const created = new Date('2025-03-14T00:00:00Z');
      await withPrinter({}, async (printer) => {
        const documents = await renderDocuments(plan, {
          settings: defaultSettings(),
          date: '2025-03-14',
          fonts: kit,
          measure: printer.measure,
        });
        for (const { fileName, html, metadata } of documents) {
          const printed = await readPrinted(
            await printer.print({ html, metadata: { ...metadata, created } }),
          );
          printed.pages.forEach((page, index) => {
            expect(overprinted(page), `${fileName}, page ${index + 1}`).toEqual([]);
          });
          // Permit sheets name the job in their title strip.
          const isStrip = fileName === 'permit-sheet.pdf';
          const feet = printed.pages.flatMap((page) => page.texts.filter((t) => isStrip || t.top < MARGIN));
          if (fileName !== 'labels.pdf')
            expect(
              feet.some((t) => t.text.endsWith('…')),
              fileName,
            ).toBe(true);
        }
      });
    },
  );
});
