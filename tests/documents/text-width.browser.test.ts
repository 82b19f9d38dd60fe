import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { lineWidth, textWidth } from '../../src/documents/parts/text-width.js';
import { startBrowser, type RunningBrowser } from '../../src/print/browser.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { loadFonts } from '../../src/print/page.js';

const FAMILIES = ['Plex', 'Atkinson', 'DejaVu Sans Condensed'] as const;
const LINES = [
  'PV array, 2 strings',
  'AVATAR To. 1147 V, "10 AWG" (N)',
  '600 V ≤ 1000 V → Ω µs √3 ☐ ≥',
  'Łódź Ærø señor Straße, ½ × 3²',
  'Ж λ αβγ • – — … “x” ‘y’',
  '0123456789',
];

let browser: RunningBrowser;
let page: Page;

beforeAll(async () => {
  browser = await startBrowser();
  page = await browser.browser.newPage();
  const text = `${FAMILIES.map((family) => `;${family}`).join('')};${LINES.join('')}`;
  await loadFonts(page, (await embeddedFonts()).facesFor(text));
}, 60_000);
afterAll(() => browser.end());

it('is the width that the browser gives a line without kerning', async () => {
  for (const family of FAMILIES) {
    for (const weight of [400, 700] as const) {
      const style = `font: ${weight} 100px '${family}', 'DejaVu Sans Condensed'; font-kerning: none; font-variant-ligatures: none; white-space: pre`;
      const spans = LINES.map((line) => `<div><span>${line}</span></div>`).join('');
      await page.setContent(`<body style="${style}">${spans}</body>`);
      const widths = (await page.evaluate(
        '[...document.querySelectorAll("span")].map((s) => s.getBoundingClientRect().width)',
      )) as number[];
      LINES.forEach((line, i) => {
        expect(lineWidth(line, 100, weight, family), `${family} ${weight} ${line}`).toBeCloseTo(
          widths[i] ?? 0,
          0,
        );
      });
    }
  }
});

it('is in mm for a size in points: 72 points are 25.4 mm', () => {
  expect(textWidth('Plan', 72)).toBeCloseTo(lineWidth('Plan', 25.4), 9);
  expect(textWidth('Plan', 10, 700)).toBeGreaterThan(textWidth('Plan', 10, 400));
});
