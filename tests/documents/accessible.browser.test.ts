import { readdirSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { APPENDICES } from '../../src/model/appendices.js';
import { DOCUMENT_KINDS, type DocumentContext } from '../../src/documents/parts/context.js';
import { renderDocuments } from '../../src/documents/render.js';
import type { Plan } from '../../src/model/plan.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { RunningBrowser } from '../../src/print/browser.js';
import { startBrowser } from '../../src/print/browser.js';
import { embeddedFonts } from '../../src/print/fonts.js';
import { loadFonts } from '../../src/print/page.js';
import { demoPlan, demoPlans } from './fixtures/demo-plans.js';
import { draftPlan, housePlan } from './fixtures/plans.js';
import { recordOf } from './fixtures/records.js';
import { stressPlan } from './fixtures/stress.js';
import { MEASURING_SCRIPT } from '../../src/print/measured-blocks.js';
import type { MeasuredBlock } from '../../src/model/print.js';

// The one with the most in it comes last: axe has looked at most of it by then.
const plans = new Map<string, Plan>(
  [draftPlan(), housePlan(), ...demoPlans(), stressPlan()].map((plan) => [plan.job, plan]),
);

// The widths that the named pages give, since a screen has one width for all: landscape letter and landscape tabloid; permit
// sheets state their own.
const WIDTHS =
  '<style>body{width:509pt}#schedule{width:689pt}.sheet:not(:has(.frame)),.schedule-sheet{width:1087pt}.label-sheet{width:612pt}</style>';

/** Blocks of permit sheets, measured in the page that shows the documents. */
const measuredHere = async (html: string): Promise<readonly MeasuredBlock[]> => {
  await page.setContent(html, { waitUntil: 'load' });
  return (await page.evaluate(MEASURING_SCRIPT)) as readonly MeasuredBlock[];
};

let browser: RunningBrowser;
let page: Page;
let context: DocumentContext;
let marked: string;

beforeAll(async () => {
  const fonts = await embeddedFonts();
  marked = await markedTemplates();
  context = {
    settings: defaultSettings(),
    date: '2025-03-14',
    fonts: fonts.kit,
    measure: measuredHere,
    templatesFolder: marked,
  };
  browser = await startBrowser();
  page = await browser.browser.newPage();
  await page.setViewport({ width: 1700, height: 1000 });
  // As the printer does it: the page keeps them while one document after another is put in.
  const families = "Plex; Atkinson; 'DejaVu Sans Condensed'; αł";
  await loadFonts(page, fonts.facesFor(families));
}, 120_000);

afterAll(async () => {
  await browser.end();
  await rm(marked, { recursive: true, force: true });
});

/** Runs in the page: names what is wider or higher than its box, and SVG texts that leave their drawing. */
const OVERFLOWING = `(() => {
  const found = [];
  const boxes = 'td,th,dd,dt,li,p,h1,h2,h3,h4,caption,.panel,.word,.says,.draft-box,.label,.stamp,figcaption';
  for (const element of document.querySelectorAll(boxes)) {
    const wide = element.scrollWidth - element.clientWidth;
    const high = element.scrollHeight - element.clientHeight;
    // What is cut off on purpose ends in dots.
    const clamped = getComputedStyle(element).webkitLineClamp !== 'none';
    if (!clamped && element.clientWidth > 0 && (wide > 1 || high > 3)) {
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

/** Runs in the page: what axe finds in the document, or in these parts of `main`. */
function violationsIn(parts?: readonly number[]): string {
  const context =
    parts === undefined
      ? 'document'
      : `{ include: ${JSON.stringify(parts)}.map((part) => document.querySelector('main').children[part]) }`;
  // What passes isn't asked for: axe needn't gather it.
  return `axe.run(${context}, { resultTypes: ['violations'] }).then(({ violations }) =>
  violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html.slice(0, 120)).slice(0, 3).join(' | ')))`;
}

/** Runs in the page: the markup of these parts of `main`. */
function markup(parts: readonly number[]): string {
  return `${JSON.stringify(parts)}.map((part) => document.querySelector('main').children[part].outerHTML).join('')`;
}

/**
 * Runs in the page: every structure of the document, each with the first part of `main` that has it (-1: the document itself).
 * Two documents of the same structures are the same to axe, but for the words: each element with all that it stands in
 * (classes, so colours; roles, languages; empty or not), attributes without a value, headings by their order, ids that are
 * there twice. A class for a column's width is one to it, and a picture is one thing with a name, whatever its shapes;
 * texts in it count by their colour.
 */
const STRUCTURES = `(() => {
  const VALUES = ['class', 'role', 'scope', 'lang', 'dir', 'type', 'colspan', 'rowspan', 'tabindex', 'aria-hidden'];
  const told = ({ name, value }) =>
    '[' + name + (value.trim() === '' ? '=' : VALUES.includes(name) ? '=' + value.replace(/\\bw\\d+\\b/, 'w') : '') + ']';
  const parts = [...document.querySelector('main').children];
  const found = new Map();
  const add = (structure, part) => found.has(structure) || found.set(structure, part);
  const walk = (element, above, picture, within) => {
    const part = within < 0 ? parts.indexOf(element) : within;
    const name = element.tagName.toLowerCase();
    const chain = picture ? above + ' ' + name + (element.getAttribute('fill') ?? '') : above + ' > ' + name + [...element.attributes].map(told).sort().join('');
    if (!picture || name === 'text' || name === 'title') add(chain + (element.textContent.trim() === '' ? ' empty' : ''), part);
    const isPicture = picture || element.matches('svg[role=img]');
    for (const child of element.children) walk(child, picture ? above : chain, isPicture, part);
  };
  walk(document.documentElement, '', false, -1);
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  if (new Set(ids).size < ids.length) add('one id twice in ' + document.title, -1);
  const headings = [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map((h) => h.tagName);
  headings.forEach((tag, index) => add('heading ' + (headings[index - 1] ?? 'none') + ' then ' + tag, -1));
  return [...found];
})()`;

const TEMPLATES = fileURLToPath(new URL('../../templates', import.meta.url));
const templateNames = (): string[] =>
  readdirSync(TEMPLATES, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.hbs'));

/** A folder of the templates as they are, each with a comment that names it. */
async function markedTemplates(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'shuntbook-templates-'));
  for (const name of templateNames()) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(
      join(folder, name),
      `${await readFile(join(TEMPLATES, name), 'utf8')}<!-- of ${name} -->`,
    );
  }
  return folder;
}

async function open(html: string): Promise<void> {
  await page.setContent(html.replace('</head>', `${WIDTHS}</head>`), { waitUntil: 'load' });
  // Plex and Atkinson, each latin and latin-ext, and DejaVu Sans Condensed; regular and bold.
  expect(await page.evaluate('document.fonts.ready.then((fonts) => fonts.size)')).toBe(10);
}

describe('the measuring in a browser', () => {
  it.each([
    ['text wider than its box', 'li { white-space: nowrap; overflow: hidden; width: 90pt; }'],
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
      .replace(/<svg([^>]*) aria-label="[^"]*"([^>]*)>(?:<title>[^<]*<\/title>)?/, '<svg$1$2>')
      .replace('</style>', 'h2 { color: #ccc; }</style>')
      .replace('<html lang="en">', '<html>');
    await open(spoilt);
    await page.evaluate(axe.source);
    const found = String(await page.evaluate(violationsIn()));
    for (const rule of ['svg-img-alt', 'color-contrast', 'html-has-lang']) expect(found).toContain(rule);
  });
});

/** Templates that several documents share. */
const SHARED: ReadonlySet<string> = new Set(templateNames());

/** Structures and templates that axe has looked at. */
const looked = {
  structures: new Set<string>(),
  templates: new Set<string>(),
  blocks: new Set<string>(),
  whole: new Set<string>(),
};

/** Lets axe look at the open document, or at those parts of it that have a structure that it hasn't looked at before. */
async function lookedAt(fileName: string, html: string): Promise<unknown> {
  const structures = (await page.evaluate(STRUCTURES)) as [string, number][];
  const unseen = structures.filter(([structure]) => !looked.structures.has(structure));
  if (unseen.length === 0) return [];
  const parts = [...new Set(unseen.map(([, part]) => part))];
  await page.evaluate(axe.source);
  // The first of each kind as a whole, for the rules about whole pages.
  const whole = parts.includes(-1) || !looked.whole.has(fileName);
  if (whole) looked.whole.add(fileName);
  const violations = await page.evaluate(violationsIn(whole ? undefined : parts));
  for (const [structure] of structures) looked.structures.add(structure);
  const seen = whole ? html : String(await page.evaluate(markup(parts)));
  for (const [, name = ''] of seen.matchAll(/<!-- of (\S+) -->/g)) looked.templates.add(name);
  for (const [, name = ''] of seen.matchAll(/<div class="block ([a-z]+)"/g))
    looked.blocks.add(
      SHARED.has(`contents/${name}.hbs`) ? `contents/${name}.hbs` : `permit-sheet/${name}.hbs`,
    );
  return violations;
}

describe.each([...plans.keys()])('the documents of %s in a browser', (job) => {
  it('fit their boxes and leave axe nothing to find', async () => {
    const plan = plans.get(job);
    if (plan === undefined) throw new Error(job);
    const appendices = APPENDICES;
    for (const { fileName, html } of await renderDocuments(plan, { ...context, appendices })) {
      await open(html);
      expect(await page.evaluate(OVERFLOWING), `${job}, ${fileName}`).toEqual([]);
      expect(await lookedAt(fileName, html), `${job}, ${fileName}`).toEqual([]);
    }
  }, 300_000);
});

describe('the documents of a job as built, in a browser', () => {
  it.each(['UF-102', 'UF-114'])(
    'of %s fit their boxes and leave axe nothing to find',
    async (job) => {
      const plan = demoPlan(job);
      const record = recordOf(plan, {
        state: 'as built with deviations',
        entry: (_, one) => ({ ...one, leadLength: 1.4, change: 'conduit blocked, the longer way round' }),
        reading: (one) => (one.kind === 'volts' || one.due ? one : { ...one, found: 'dark' }),
      });
      for (const { fileName, html } of await renderDocuments(plan, { ...context, record })) {
        await open(html);
        expect(await page.evaluate(OVERFLOWING), `${job}, ${fileName}`).toEqual([]);
        expect(await lookedAt(fileName, html), `${job}, ${fileName}`).toEqual([]);
      }
    },
    300_000,
  );
});

describe('what axe looked at', () => {
  it('holds something of every template but that of the report, which has a test of its own', () => {
    // The page in which blocks are measured is never printed; on their sheets they stand without the comments of their templates.
    const own = templateNames().filter(
      (name) =>
        !name.startsWith('report/') &&
        name !== 'partials/report-fact.hbs' &&
        name !== 'permit-sheet/measure.hbs',
    );
    expect([...new Set([...looked.templates, ...looked.blocks])].sort()).toEqual(own.sort());
    expect(looked.whole.size).toBe(DOCUMENT_KINDS.length + 2);
  });
});
