import { saying } from '../in-english.js';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changesSince, type LastRun } from '../../src/batch/last-run.js';
import { reportPage, type ReportedJob } from '../../src/batch/report-page.js';
import type { OpenItem } from '../../src/model/open-item.js';
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
    ...more,
  },
  name: `The ${name}`,
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
    item: item('The basis is a default.', { severity: 'confirm' }),
  })),
];

describe('report.html', () => {
  let folder: string;
  let browser: RunningBrowser;
  let page: Page;
  const asked: string[] = [];
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'shuntbook-report-'));
    const file = join(folder, 'report.html');
    await writeFile(
      file,
      await reportPage(
        { date: '2026-05-06', jobs, items, changes: ['B-9 was complete and is draft.'], all: 4 },
        undefined,
      ),
    );
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
  const visible = async (): Promise<string[]> =>
    (await page.evaluate(
      `Array.from(document.querySelectorAll('#jobs tbody tr')).filter((row) => !row.hidden).map((row) => row.cells[0].childNodes[0].textContent)`,
    )) as string[];

  it('opens from disk and asks for nothing', async () => {
    expect(await page.title()).toBe('Surge protection packs: report of the batch');
    expect(asked).toHaveLength(1);
    expect(await visible()).toEqual(['B-10', 'B-9', HOSTILE, 'C-1']);
    expect(await texts('#shown')).toEqual(['4 of 4 jobs shown']);
    expect(await texts('header p')).toEqual(['2026-05-06: 4 jobs, 2 complete, 1 draft, 1 failed.']);
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
    expect(await texts('#shown')).toEqual(['1 of 4 jobs shown']);
    expect(page.url()).toMatch(/report\.html$/);
  });

  it('links each document, groups open items by who can supply them, says what changed', async () => {
    expect(await attributes('#jobs a', 'href')).toEqual([
      'B-10/closeout-pack.pdf',
      'B-9/closeout-pack.pdf',
      'C-1/closeout-pack.pdf',
    ]);
    expect(await texts('summary')).toEqual(['office: 1', 'designer: 3', 'utility: 1']);
    expect(await attributes('details', 'open')).toEqual([null, '', '']);
    const shared = await texts('details tbody tr');
    expect(
      shared.some((text) => text.includes('B-10; C-1') && text.includes('The basis is a default.')),
    ).toBe(true);
    expect(await texts('main li')).toEqual([
      'B-9 was complete and is draft.',
      // The clauses behind required protectors that nobody has checked.
      'nec-2023: 230.67',
      'iec: 230.67',
      'run_length isn’t stated: 2 jobs',
    ]);
  });

  it('says that a run was stopped', async () => {
    const html = await reportPage(
      { date: '2026-05-06', jobs, items: [], changes: undefined, all: 9 },
      undefined,
    );
    expect(html).toContain('4 of 9 jobs are in this report');
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
