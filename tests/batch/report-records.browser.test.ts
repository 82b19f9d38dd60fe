import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reportPage, type ReportedJob, type ReportSource } from '../../src/batch/report-page.js';
import type { RecordState } from '../../src/model/record.js';
import type { RegisteredJob } from '../../src/model/register.js';
import { startBrowser, type RunningBrowser } from '../../src/print/browser.js';
import { registerOf } from '../../src/register/of-record.js';
import { entryOf, housingOf, readingOf, recordOf } from '../register/records.js';

const DATE = '2026-04-01';
const HOSTILE = '<img src=x onerror="document.title=\'ran\'">{{x}}';

/** A job whose record came back with a protector replaced, and a light that is still to be looked at. */
function registered(job: string, state: RecordState): RegisteredJob {
  const night = { state: 'night', found: '', due: true } as const;
  const record = recordOf(job, {
    housings: [
      housingOf('P-1', {
        place: HOSTILE,
        entries: [
          entryOf(),
          entryOf({
            outcome: 'replaced',
            serials: [{ serial: '004900', dateCode: '' }],
            serialRemoved: ['004100'],
            date: '2026-01-02',
            reason: HOSTILE,
          }),
        ],
      }),
    ],
    readings: [readingOf('P-1', { ...night, date: '2026-01-02' })],
  });
  const { lines, checks } = registerOf(record, DATE);
  const replaced = lines.filter(({ replacedOn }) => replacedOn !== '');
  return { job, folder: job, state, hanging: 1, replaced, checks };
}

function reported(job: string, state: RecordState): ReportedJob {
  return {
    line: {
      job,
      folder: job,
      basis: 'nec-2023',
      status: 'complete',
      done: 'unchanged',
      protectors: 1,
      missing: 0,
      conflict: 0,
      confirm: 0,
      jobName: '',
      address: '',
      revision: '',
      record: state,
    },
    placed: [],
    unchecked: [],
    documents: [],
    ...(state === 'planned' ? {} : { registered: registered(job, state) }),
  };
}

const source: ReportSource = {
  date: DATE,
  lists: { all: 1, unreadable: 0 },
  otherUnreadable: 0,
  jobs: [
    reported('B-1', 'planned'),
    reported('B-2', 'as built with deviations'),
    reported('B-3', 'record open'),
  ],
  items: [],
  models: [],
  orders: [],
  changes: undefined,
  all: 3,
};

describe('what report.html says of records', () => {
  let folder: string;
  let browser: RunningBrowser;
  let page: Page;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'shuntbook-report-'));
    const file = join(folder, 'report.html');
    await writeFile(file, await reportPage(source, undefined));
    browser = await startBrowser();
    page = await browser.browser.newPage();
    await page.goto(pathToFileURL(file).href);
  });
  afterAll(async () => {
    await browser.end();
    await rm(folder, { recursive: true, force: true });
  });
  const texts = async (selector: string): Promise<string[]> =>
    (await page.evaluate(
      `Array.from(document.querySelectorAll(${JSON.stringify(selector)}), (e) => e.textContent.trim().replace(/\\s+/g, ' '))`,
    )) as string[];

  it('tells the state of each job, what is due there and what was replaced', async () => {
    expect(await texts('#jobs tbody td:nth-child(2)')).toEqual([
      'complete',
      'completeas built with deviations',
      'completerecord open',
    ]);
    expect(await texts('section[aria-labelledby=records-heading] > p')).toEqual([
      '4 checks due, 2 of them overdue: checks due, for a calendar. What hangs where: register.',
    ]);
    const [first] = await texts('.records > li');
    expect(first).toContain(
      'B-2: as built with deviations, 1 protector on record, next check 2026-01-02 (overdue)',
    );
    expect(await texts('.records > li:first-child details li')).toEqual([
      `2026-01-02 (overdue): Look at the light of P-1 while: night, ${HOSTILE}`,
      `2027-01-02: Yearly look at P-1, ${HOSTILE}`,
      `P-1: WK-TEASEL 004100, fitted 2025-03-14, replaced 2026-01-02 by 004900: ${HOSTILE}`,
    ]);
    expect(await page.title()).not.toBe('ran');
  });

  it('names the tables that are made of records', async () => {
    const links = (await page.evaluate(
      `Array.from(document.querySelectorAll('header a'), (a) => a.getAttribute('href'))`,
    )) as string[];
    expect(links).toEqual(expect.arrayContaining(['register.csv', 'checks-due.csv', 'checks-due.ics']));
  });

  it('filters jobs by the state of their record', async () => {
    await page.click('input[value="as built with deviations"]');
    expect(await texts('#shown')).toEqual(['2 of 3 jobs found']);
    await page.reload();
  });

  it('has no finding of axe', async () => {
    await page.evaluate(axe.source);
    await page.evaluate(`document.querySelectorAll('details').forEach((d) => { d.open = true; })`);
    expect(await page.evaluate(`axe.run(document).then((r) => r.violations.map((v) => v.id))`)).toEqual([]);
  });

  it('says nothing of records where no job has one', async () => {
    const html = await reportPage({ ...source, jobs: [reported('B-1', 'planned')], all: 1 }, undefined);
    const body = html.slice(html.indexOf('<body>'), html.indexOf('<script>'));
    expect(body).toContain('every fact is there');
    expect(/register\.csv|checks-due|id="records-heading"|name="record"/.exec(body)).toBe(null);
  });
});
