import { saying } from '../in-english.js';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changesSince, type LastRun } from '../../src/batch/last-run.js';
import { reportPage, type ReportedJob } from '../../src/batch/report-page.js';
import { FIELD_GUIDE } from '../../src/model/field-guide.js';
import type { OpenItem } from '../../src/model/open-item.js';
import { itemAt, note } from '../../src/model/message.js';
import { PLACE_MESSAGES } from '../../src/model/messages/place.js';
import { readPrinted } from '../documents/printed.js';
import { startBrowser, type RunningBrowser } from '../../src/print/browser.js';
import type { ReportLine } from '../../src/output/tables.js';

const HOSTILE = '<script>document.title = "ran"</script><img src=x onerror="document.title=\'ran\'">{{x}}';

const job = (
  name: string,
  more: Partial<ReportLine> = {},
  documents = ['closeout-pack.pdf'],
): ReportedJob => ({
  line: {
    job: name,
    folder: name.replace(/[^\w.-]/g, '-'),
    basis: 'nec-2023',
    status: 'complete',
    done: 'printed',
    protectors: 3,
    missing: 0,
    conflict: 0,
    confirm: 2,
    jobName: `The ${name}`,
    address: `${name.length} Quillmarsh Lane`,
    revision: 'B',
    record: 'planned',
    ...more,
  },
  placed: [
    { tag: 'P-1', part: `WK-${name.slice(0, 4)}`, place: 'Shed / wall', guards: [`INV-${name.slice(0, 3)}`] },
  ],
  unchecked: ['230.67'],
  documents,
});

const item = (message: string, more: Partial<OpenItem> = {}): OpenItem => ({
  code: 'fact/run-length',
  severity: 'missing',
  values: saying(message, { expected: 'a length', hint: 'Fill it in.' }),
  equipment: '',
  file: 'jobs.csv',
  line: 3,
  column: 'run_length',
  who: 'designer',
  ...more,
});

const jobs = [
  job('B-10', { protectors: 10 }),
  job('B-9', { protectors: 9, status: 'draft', missing: 1, done: 'unchanged' }),
  job(HOSTILE, { status: 'failed', done: 'nothing', protectors: 0 }, []),
  job('C-1', { protectors: 2, basis: 'iec' }),
];
const usedDefault = (rows: readonly string[]) => ({
  ...itemAt(note(PLACE_MESSAGES.defaultsUsed, { field: 'outdoors', value: 'no', rows, why: null }), {
    file: 'jobs.csv',
    line: 3,
    column: 'outdoors',
  }),
  equipment: rows[0] ?? '',
});
const items = [
  {
    job: '',
    item: item('A folder is left.', {
      code: 'batch/folder-left',
      severity: 'confirm',
      who: 'office',
      line: 0,
      column: '',
    }),
  },
  { job: 'B-9', item: item('The run of CC-1 has no length.') },
  { job: HOSTILE, item: item(HOSTILE, { who: 'utility' }) },
  ...['B-10', 'C-1'].map((name) => ({
    job: name,
    item: item('The basis is a default.', { code: 'default/basis', severity: 'confirm' }),
  })),
  { job: 'B-10', item: usedDefault(['CC-1', 'CC-2', 'CC-3', 'CC-4', 'INV']) },
  { job: 'C-1', item: usedDefault(['INV']) },
];
const source = {
  date: '2026-05-06',
  lists: { all: 60, unreadable: 1 },
  otherUnreadable: 0,
  jobs,
  items,
  orders: [
    { job: 'B-10', part: 'WK', quantity: 6, draft: false },
    { job: 'B-9', part: 'WK', quantity: 3, draft: true },
  ],
  models: [
    {
      maker: 'Whirligust',
      model: HOSTILE,
      jobs: ['B-9', 'C-1'],
      facts: ['open_circuit_voltage' as const, 'poles' as const],
      near: 'Whirligust WG-3',
    },
    { maker: 'Peatmoor', model: 'PM-1', jobs: ['B-10'], facts: [] },
  ],
  changes: ['B-9 was complete and is draft.'],
  all: 4,
};

describe('report.html', () => {
  let folder: string;
  let browser: RunningBrowser;
  let page: Page;
  const asked: string[] = [];
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'shuntbook-report-'));
    const file = join(folder, 'report.html');
    await writeFile(file, await reportPage(source, undefined));
    browser = await startBrowser();
    page = await browser.browser.newPage();
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(file).href);
  });
  afterAll(async () => {
    await browser.end();
    await rm(folder, { recursive: true, force: true });
  });

  // Text, since the types of a page's objects are none of this program's.
  const texts = async (selector: string): Promise<string[]> =>
    (await page.evaluate(
      `Array.from(document.querySelectorAll(${JSON.stringify(selector)}), (e) => e.textContent)`,
    )) as string[];
  const attributes = async (selector: string, name: string): Promise<(string | null)[]> =>
    (await page.evaluate(
      `Array.from(document.querySelectorAll(${JSON.stringify(selector)}), (e) => e.getAttribute(${JSON.stringify(name)}))`,
    )) as (string | null)[];
  const findings = async (): Promise<unknown> => {
    await page.evaluate(axe.source);
    return page.evaluate(
      `axe.run(document, { rules: { 'color-contrast': { enabled: true } } }).then((r) => r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html).join(' ').slice(0, 300)))`,
    );
  };
  const visible = async (): Promise<string[]> =>
    (await page.evaluate(
      `Array.from(document.querySelectorAll('#jobs tbody tr')).filter((row) => !row.hidden).map((row) => row.cells[0].childNodes[0].textContent)`,
    )) as string[];

  it('opens from disk and asks for nothing', async () => {
    expect(await page.title()).toBe('Surge protection packs: report of the batch');
    expect(asked.filter((url) => !url.startsWith('data:font/'))).toHaveLength(1);
    expect(await visible()).toEqual(['B-10', 'B-9', HOSTILE, 'C-1']);
    expect(await texts('#shown')).toEqual(['4 of 4 jobs found']);
  });

  it('counts the lists, and says which could not be read', async () => {
    expect((await texts('header > p')).slice(0, 2)).toEqual([
      '2026-05-06: 60 lists, 1 unreadable; 4 jobs: 2 complete, 1 draft, 1 failed.',
      '1 list could not be read: see the open items of the office. Jobs that stand on such a list alone are not in this report.',
    ]);
    expect(await attributes('header a', 'href')).toEqual([
      'order-list.csv',
      '#job-1',
      'open-items.csv',
      'report.csv',
      'order-list.csv',
      'missing-models.csv',
      'questions.csv',
    ]);
    expect(await texts('header > p')).toContain(
      '9 parts to order: 6 for complete jobs, 3 for drafts: order list.',
    );
    expect(await texts('header > p')).toContain('2 jobs at 3 Quillmarsh Lane: B-9, C-1.');
    expect(await attributes('section > p a[href^=questions]', 'href')).toEqual([
      'questions-office.csv',
      'questions-designer.csv',
      'questions-utility.csv',
    ]);
    const whole = await reportPage({ ...source, lists: { all: 1, unreadable: 0 } }, undefined);
    expect(whole).toContain('2026-05-06: 1 list; 4 jobs:');
    expect(whole).not.toContain('could not be read');
  });

  it('tells each model that the library lacks with the facts that are asked of it and the model that is near', async () => {
    const heading = 'section[aria-labelledby=models-heading]';
    expect(await texts(`${heading} .models > li > b`)).toEqual([`Whirligust ${HOSTILE}`, 'Peatmoor PM-1']);
    expect(await texts(`${heading} .models > li > p > b`)).toEqual(['Whirligust WG-3']);
    const facts = await texts(`${heading} .models > li > ul > li`);
    expect(facts.map((one) => one.split(':')[0])).toEqual(['open_circuit_voltage', 'poles']);
    const none = await reportPage({ ...source, models: [] }, undefined);
    expect(none).not.toContain('models-heading"');
  });

  it('brings the letters that it is set in, and no others', async () => {
    const drawn = (await page.evaluate(
      `document.fonts.ready.then(() => Array.from(document.fonts, (f) => f.family + ' ' + f.weight + ' ' + f.status))`,
    )) as string[];
    expect(drawn.sort()).toEqual(['Plex 400 loaded', 'Plex 700 loaded']);
  });

  it('shows hostile text as it was typed', async () => {
    expect(await page.$$eval('img', (e) => e.length)).toBe(0);
    expect(await page.$$eval('script', (e) => e.length)).toBe(1);
    expect(await page.title()).not.toBe('ran');
  });

  it('sorts by each heading, numbers as numbers, there and back', async () => {
    const click = (n: number): Promise<void> => page.click(`#jobs thead th:nth-child(${n}) button`);
    await click(1);
    expect(await visible()).toEqual([HOSTILE, 'B-9', 'B-10', 'C-1']);
    expect((await attributes('#jobs thead th', 'aria-sort'))[0]).toBe('ascending');
    await click(5);
    expect(await visible()).toEqual([HOSTILE, 'C-1', 'B-9', 'B-10']);
    await click(5);
    expect(await visible()).toEqual(['B-10', 'B-9', 'C-1', HOSTILE]);
  });

  it('filters by status, by what was done and by words', async () => {
    await page.click('input[value="failed"]');
    expect(await visible()).toEqual(['B-10', 'B-9', 'C-1']);
    await page.click('input[value="unchanged"]');
    expect(await visible()).toEqual(['B-10', 'C-1']);
    await page.click('input[value="unchanged"]');
    await page.type('#search', 'LENGTH b-9');
    expect(await visible()).toEqual(['B-9']);
    expect(await texts('#shown')).toEqual(['1 of 4 jobs found']);
    expect(page.url()).toMatch(/report\.html$/);
  });

  it.each([
    ['a job', 'b-9', ['B-9']],
    ['a name', 'the b-10', ['B-10']],
    ['an address', '4 quillmarsh', ['B-10']],
    ['the tag of equipment', 'inv-c-1', ['C-1']],
    ['a part', 'wk-b-9', ['B-9']],
    ['a protector', 'p-1 shed', ['B-10', 'B-9', HOSTILE, 'C-1']],
  ])('finds %s', async (_, words, found) => {
    await page.reload();
    await page.type('#search', words);
    expect(await visible()).toEqual(found);
  });

  it('narrows the open items by the same search', async () => {
    await page.reload();
    await page.type('#search', 'b-9');
    const left = `Array.from(document.querySelectorAll('.facts > li')).filter((f) => !f.hidden).map((f) => f.textContent.trim().slice(0, 36))`;
    const found = (await page.evaluate(left)) as string[];
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('The run of CC-1');
    expect(await texts('#jobs tbody tr:nth-child(2) a')).toContain('closeout pack (draft)');
  });

  it('unfolds what was found inside a fold, and folds it again', async () => {
    await page.reload();
    const open = async (): Promise<unknown> =>
      page.evaluate(
        `Array.from(document.querySelectorAll('#jobs tbody tr:not([hidden]) .fold details'), (d) => d.open)`,
      );
    expect(await open()).toEqual([false, false, false, false]);
    await page.type('#search', 'wk-b-9');
    expect(await open()).toEqual([true]);
    await page.evaluate(`search.value = ''; search.dispatchEvent(new Event('input', { bubbles: true }))`);
    expect(await open()).toEqual([false, false, false, false]);
  });

  it('links each document, tells each fact once with the jobs that share it, says what changed', async () => {
    expect(await attributes('#jobs a[href$=pdf]', 'href')).toEqual([
      'B-10/closeout-pack.pdf',
      'B-9/closeout-pack.pdf',
      'C-1/closeout-pack.pdf',
    ]);
    expect(await texts('h3')).toEqual(['office', 'designer', 'utility']);
    expect(await texts('#jobs td:last-child details p')).toContain(
      'designer: The run of CC-1 has no length.',
    );
    expect(await attributes('#jobs td[data-label=Confirm] a', 'href')).toContain('#items-heading');
    expect(await texts('section > .facts .more')).toContain(`run_length: ${FIELD_GUIDE.run_length.means}`);
    // What holds a pack back stands open; what is to confirm is folded.
    expect(await texts('section > .facts .do')).toEqual(['Fill it in.', 'Fill it in.']);
    expect(await texts('section > details > summary')).toEqual([
      '1 fact to confirm, 1 place',
      '2 facts to confirm, 4 places',
      '1 change',
      'nec-2023: 1',
      'iec: 1',
    ]);
    expect(await texts('details .facts > li > p:first-child')).toEqual([
      'confirm A folder is left. batch/folder-left',
      'confirm The basis is a default. default/basis',
      'confirm outdoors isn’t stated: taken as no. default/used',
    ]);
    expect(await texts('details .facts li li')).toEqual([
      'B-10 jobs.csv, line 3, run_length',
      'C-1 jobs.csv, line 3, run_length',
      'B-10 CC-1 to CC-4, INV jobs.csv, line 3, outdoors',
      'C-1 INV jobs.csv, line 3, outdoors',
    ]);
    expect(await texts('.changes li')).toEqual(['B-9 was complete and is draft.']);
    expect(await texts('.clauses p')).toEqual(['230.67', '230.67']);
  });

  it.each([390, 1280])('stays within a screen of %d pixels', async (width) => {
    await page.setViewport({ width, height: 800 });
    await page.reload();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    // No status and no basis is broken, no first column squeezed: each stands on one line.
    const lines = await page.evaluate(
      `Array.from(document.querySelectorAll('.status, .whole'), (e) => e.getClientRects().length && e.scrollWidth <= e.clientWidth + 1)`,
    );
    expect(new Set(lines as unknown[])).toEqual(new Set([true]));
  });

  it('has no finding of axe at 390 and 1280 pixels, unfolded, and as it is printed', async () => {
    for (const width of [390, 1280]) {
      await page.setViewport({ width, height: 800 });
      await page.reload();
      expect(await findings()).toEqual([]);
      await page.evaluate(`document.querySelectorAll('details').forEach((d) => { d.open = true; })`);
      expect(await findings()).toEqual([]);
    }
    await page.emulateMediaType('print');
    expect(await findings()).toEqual([]);
    await page.emulateMediaType();
  });

  it('prints landscape, what is folded too, nothing beyond the sheet', async () => {
    await page.setViewport({ width: 1280, height: 800 });
    await page.reload();
    const { pages } = await readPrinted(await page.pdf({ preferCSSPageSize: true }));
    for (const { width, height, texts: pieces } of pages) {
      expect(width).toBeGreaterThan(height);
      expect(pieces.filter(({ left, right }) => left < 0 || right > width)).toEqual([]);
    }
    const text = pages.map((one) => one.text).join(' ');
    for (const words of ['CC-1 to CC-4, INV', 'WK-B-9', 'every fact is there', 'Conflict'])
      expect(text).toContain(words);
    // The page leaves nothing folded on the screen unfolded.
    expect(await page.evaluate(`document.querySelectorAll('details[open]').length`)).toBe(1);
  });

  it('shows fifty of a thousand jobs at first, and finds any', async () => {
    const many = Array.from({ length: 1000 }, (_, i) => job(`J-${String(i + 1)}`));
    const html = await reportPage({ ...source, jobs: many, items: [], all: 1000 }, undefined);
    const file = join(folder, 'many.html');
    await writeFile(file, html);
    await page.goto(pathToFileURL(file).href);
    const onScreen = `Array.from(document.querySelectorAll('#jobs tbody tr'), (r) => r).filter((r) => r.offsetHeight > 0).length`;
    expect(await page.evaluate(onScreen)).toBe(50);
    await page.type('#search', 'the j-777');
    expect(await visible()).toEqual(['J-777']);
    expect(await page.evaluate(onScreen)).toBe(1);
    await page.reload();
    await page.click('#beyond button');
    expect(await page.evaluate(onScreen)).toBe(1000);
  });

  it('says that a run was stopped', async () => {
    const html = await reportPage({ ...source, items: [], changes: undefined, all: 9 }, undefined);
    expect(html).toContain('4 of 9 jobs are in this report');
    expect(html).not.toContain('order-list.csv');
    expect(html).toContain('This is the first run into this folder.');
    expect(html).toContain('Nothing is open.');
  });
});

describe('what changed since the last run', () => {
  const open = (equipment: string, message: string) => ({ code: 'x', equipment, values: saying(message) });
  const run = (...list: LastRun['jobs']): LastRun => ({ date: '2026-05-06', jobs: list });

  it('names jobs that are new, gone or of another status, and items that came or went', () => {
    const before = run(
      {
        job: 'A',
        status: 'draft',
        blocking: [open('A', 'The run has no length.'), open('B', 'No part fits.')],
      },
      { job: 'B', status: 'complete', blocking: [] },
      { job: 'C', status: 'complete', blocking: [] },
    );
    const now = run(
      { job: 'A', status: 'draft', blocking: [open('B', 'No part fits.'), open('A', 'Voc is not stated.')] },
      { job: 'C', status: 'failed', blocking: [] },
      { job: 'D', status: 'complete', blocking: [] },
    );
    expect(changesSince(before, now)).toEqual([
      'A, supplied: The run has no length.',
      'A, newly open: Voc is not stated.',
      'C was complete and is failed.',
      'D is new: complete.',
      'B is on no list any more.',
    ]);
    expect(changesSince(now, now)).toEqual([]);
  });
});
