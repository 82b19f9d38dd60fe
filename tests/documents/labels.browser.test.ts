import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocument } from '../../src/documents/render.js';
import type { Settings } from '../../src/model/settings.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { startBrowser, type RunningBrowser } from '../../src/print/browser.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { housePlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';
import { setByHand } from './fixtures/set-by-hand.js';

type Grid = Partial<Settings['labels']>;

async function contextOf(labels: Grid): Promise<DocumentContext> {
  const settings = SettingsSchema.parse({ labels });
  return { settings, date: '2025-03-14', fonts: (await embeddedFonts()).standAloneKit, measure: setByHand };
}

let running: RunningBrowser;
beforeAll(async () => {
  running = await startBrowser();
});
afterAll(() => running.end());

describe('a sheet of labels in a browser', () => {
  it.each<[string, Grid]>([
    ['of the default', {}],
    ['of 3 x 10', { columns: 3, rows: 10 }],
    ['of 6 x 12, the smallest', { columns: 6, rows: 12, marginTop: 8, gapColumns: 2 }],
    ['of one', { columns: 1, rows: 1 }],
  ])('keeps its words inside the labels on a grid %s', { timeout: 120_000 }, async (_name, grid) => {
    const context = await contextOf(grid);
    const page = await running.browser.newPage();
    for (const plan of [...demoPlans(), housePlan(), { ...stressPlan(), submittable: true }].flatMap(
      (one) => [one, { ...one, ownerLanguage: one.ownerLanguage === 'es' ? 'en' : 'es' }],
    )) {
      const { html } = await renderDocument('labels', plan, context);
      await page.setContent(html, { waitUntil: 'load' });
      const over =
        await page.evaluate(`document.fonts.ready.then(() => [...document.querySelectorAll('.label')]
          .filter((l) => l.scrollWidth > l.clientWidth + 1 || l.scrollHeight > l.clientHeight + 1)
          .map((l) => l.textContent))`);
      expect(over).toEqual([]);
    }
  });
});
