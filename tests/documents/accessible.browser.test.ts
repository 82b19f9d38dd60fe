import axe from 'axe-core';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocuments } from '../../src/documents/render.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { RunningBrowser } from '../../src/print/browser.js';
import { startBrowser } from '../../src/print/browser.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan } from './fixtures/plans.js';
import { stressPlan } from './fixtures/stress.js';

const plans = new Map<string, Plan>(
  [...demoPlans(), housePlan(), draftPlan(), stressPlan()].map((plan) => [plan.job, plan]),
);

// The widths that the named pages give, since a screen has one width for all: landscape letter and landscape tabloid.
const WIDTHS =
  '<style>body{width:520pt}#schedule{width:700pt}.sheet,.schedule-sheet{width:1098pt}.label-sheet{width:612pt}</style>';

let browser: RunningBrowser;
let page: Page;
let context: DocumentContext;

beforeAll(async () => {
  context = { settings: defaultSettings(), date: '2025-03-14', fonts: (await embeddedFonts()).standAloneKit };
  browser = await startBrowser();
  page = await browser.browser.newPage();
  await page.setViewport({ width: 1700, height: 1000 });
}, 120_000);

afterAll(async () => {
  await browser.end();
});

/** Runs in the page: names what is wider or higher than its box, and SVG texts that leave their drawing. */
const OVERFLOWING = `(() => {
  const found = [];
  const boxes = 'td,th,dd,dt,li,p,h1,h2,h3,h4,caption,.panel,.word,.says,.draft-box,.label,.stamp,figcaption';
  for (const element of document.querySelectorAll(boxes)) {
    const wide = element.scrollWidth - element.clientWidth;
    const high = element.scrollHeight - element.clientHeight;
    if (element.clientWidth > 0 && (wide > 1 || high > 3)) {
      found.push(element.tagName + '.' + element.className + ' +' + wide + ' x +' + high + ': ' + element.textContent.slice(0, 80));
    }
  }
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    for (const text of svg.querySelectorAll('text')) {
      const box = text.getBoundingClientRect();
      const inside = box.left > frame.left - 2 && box.right < frame.right + 2 && box.top > frame.top - 3 && box.bottom < frame.bottom + 3;
      if (!inside) found.push('svg text: ' + text.textContent.slice(0, 80));
    }
  }
  return found;
})()`;

// What passes isn't asked for: axe needn't gather it.
const VIOLATIONS = `axe.run({ resultTypes: ['violations'] }).then(({ violations }) =>
  violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html.slice(0, 120)).slice(0, 3).join(' | ')))`;

async function open(html: string): Promise<void> {
  await page.setContent(html.replace('</head>', `${WIDTHS}</head>`), { waitUntil: 'load' });
  await page.evaluate('document.fonts.ready.then(() => true)');
}

describe('the measuring in a browser', () => {
  it.each([
    ['text wider than its box', 'td { white-space: nowrap; overflow: hidden; }'],
    ['text higher than its box', 'p, li { height: 5pt; overflow: hidden; }'],
    ['text of a drawing that leaves it', 'svg text { transform: translateY(-500px); }'],
  ])('finds %s', async (_, style) => {
    const [pack] = await renderDocuments(housePlan(), context);
    if (pack === undefined) throw new Error('nothing is rendered');
    await open(pack.html);
    expect(await page.evaluate(OVERFLOWING)).toEqual([]);
    await open(pack.html.replace('</style>', `${style}</style>`));
    expect(await page.evaluate(OVERFLOWING)).not.toEqual([]);
  });

  it('leaves axe to find a drawing without words, faint text, a page without a language', async () => {
    const [pack] = await renderDocuments(housePlan(), context);
    if (pack === undefined) throw new Error('nothing is rendered');
    const spoilt = pack.html
      .replace(/<svg([^>]*) aria-label="[^"]*"([^>]*)><title>[^<]*<\/title>/, '<svg$1$2>')
      .replace('</style>', 'h2 { color: #ccc; }</style>')
      .replace('<html lang="en">', '<html>');
    await open(spoilt);
    await page.evaluate(axe.source);
    const found = String(await page.evaluate(VIOLATIONS));
    for (const rule of ['svg-img-alt', 'color-contrast', 'html-has-lang']) expect(found).toContain(rule);
  });
});

describe.each([...plans.keys()])('the documents of %s in a browser', (job) => {
  it('fit their boxes and leave axe nothing to find', async () => {
    const plan = plans.get(job);
    if (plan === undefined) throw new Error(job);
    for (const { fileName, html } of await renderDocuments(plan, context)) {
      await open(html);
      expect(await page.evaluate(OVERFLOWING), `${job}, ${fileName}`).toEqual([]);
      await page.evaluate(axe.source);
      expect(await page.evaluate(VIOLATIONS), `${job}, ${fileName}`).toEqual([]);
    }
  }, 300_000);
});
