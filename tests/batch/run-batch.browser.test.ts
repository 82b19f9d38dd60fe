import { appendFile, mkdir, readdir, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import type { BatchOptions, BatchResult } from '../../src/batch/batch-options.js';
import { lockOutput } from '../../src/output/lock.js';
import type * as Printers from '../../src/print/printer.js';
import { withPrinter, type Printer } from '../../src/print/printer.js';
import { listOf, smallSteps, workshop, type Workshop } from './stand-ins.js';

const { shared } = vi.hoisted(() => ({ shared: { printer: undefined as Printer | undefined } }));

// One browser for all batches that say nothing of theirs: that each run starts its own and ends it is shown in
// `pages.browser.test.ts`, `broken-templates.browser.test.ts`, `interruptions.process.test.ts`.
vi.mock('../../src/print/printer.js', async (original) => {
  const real = await original<typeof Printers>();
  const withPrinter: typeof real.withPrinter = (options, use) => {
    const { printer } = shared;
    const isOwn = options.browser !== undefined || options.pages !== undefined || printer === undefined;
    return isOwn ? real.withPrinter(options, use) : use(printer);
  };
  return { ...real, withPrinter };
});

let end: () => void;
let ended: Promise<void>;
beforeAll(async () => {
  await new Promise<void>((ready) => {
    ended = withPrinter({}, async (printer) => {
      shared.printer = printer;
      const over = new Promise<void>((resolve) => (end = resolve));
      ready();
      await over;
    });
  });
});
afterAll(async () => {
  end();
  await ended;
});

let shop: Workshop;
beforeEach(async () => {
  shop = await workshop();
});
afterEach(() => shop.remove());

const run = (more: Partial<BatchOptions> = {}): Promise<BatchResult> =>
  runBatch(shop.options(more), smallSteps);
const done = (result: BatchResult): string =>
  result.jobs.map((j) => `${j.job} ${j.status} ${j.done}`).join(', ');
const rows = async (name: string): Promise<Record<string, string>[]> =>
  parse(await shop.read(name), { columns: true });

describe('a batch', () => {
  it('makes a pack for each job and the reports beside them', async () => {
    await shop.write('jobs.csv', listOf(['A-1', 'A-2']));
    const told: string[] = [];
    const result = await run({ onProgress: (p) => told.push(`${p.done}/${p.all} ${p.did}`) });
    expect(done(result)).toBe('A-1 complete printed, A-2 complete printed');
    expect(result.exitStatus).toBe(0);
    expect([...(await shop.tree()).keys()]).toEqual([
      'A-1/closeout-pack.pdf',
      'A-1/labels.pdf',
      'A-1/plan.json',
      'A-1/schedule.csv',
      'A-1/site-facts.csv',
      'A-1/site-readings.csv',
      'A-1/site-record.csv',
      'A-2/closeout-pack.pdf',
      'A-2/labels.pdf',
      'A-2/plan.json',
      'A-2/schedule.csv',
      'A-2/site-facts.csv',
      'A-2/site-readings.csv',
      'A-2/site-record.csv',
      'missing-models.csv',
      'open-items.csv',
      'order-list.csv',
      'questions-designer.csv',
      'questions-installer.csv',
      'questions-maker.csv',
      'questions-office.csv',
      'questions-owner.csv',
      'questions-utility.csv',
      'questions.csv',
      'report.csv',
      'report.html',
    ]);
    expect(await rows('order-list.csv')).toMatchObject([{ part: 'QP-150', quantity: '2', jobs: 'A-1; A-2' }]);
    expect(await rows('report.csv')).toMatchObject([
      { job: 'A-1', folder: 'A-1', basis: 'nec-2023', status: 'complete', done: 'printed', missing: '0' },
      { job: 'A-2' },
    ]);
    expect(told).toEqual(['1/2 printed', '2/2 printed']);
    expect(JSON.parse(await shop.read('A-1/plan.json'))).toMatchObject({
      version: 2,
      job: 'A-1',
      submittable: true,
    });
  });

  it('plans without printing', async () => {
    await shop.write('jobs.csv', listOf(['A-1']));
    const result = await run({ make: 'plan' });
    expect(done(result)).toBe('A-1 complete nothing');
    expect([...(await shop.tree()).keys()].filter((n) => n.startsWith('A-1/'))).toEqual([
      'A-1/plan.json',
      'A-1/schedule.csv',
      'A-1/site-facts.csv',
      'A-1/site-readings.csv',
      'A-1/site-record.csv',
    ]);
    expect(done(await run({ make: 'plan' }))).toBe('A-1 complete unchanged');
    expect(done(await run())).toBe('A-1 complete printed');
    expect(done(await run({ make: 'plan' }))).toBe('A-1 complete unchanged');
  });

  it('says drafts, and names open items of jobs and of no job', async () => {
    await shop.write('jobs.csv', `${listOf(['A-1'])}A-2,,X-1,,\n`);
    await writeFile(join(shop.lists, 'empty.csv'), '');
    const result = await run();
    expect(result.jobs.map((j) => j.status)).toEqual(['complete', 'draft']);
    expect(result.exitStatus).toBe(2);
    const items = await rows('open-items.csv');
    expect(items.find((i) => i['job'] === 'A-2')).toMatchObject({
      code: 'test/no-kind',
      severity: 'missing',
      line: '4',
      column: 'kind',
    });
    expect(items.find((i) => i['file']?.endsWith('empty.csv'))).toMatchObject({ job: '' });
    await rm(join(shop.lists, 'empty.csv'));
    expect((await run()).exitStatus).toBe(1);
  });

  it('goes on where one job fails, and says so', async () => {
    await shop.write('jobs.csv', listOf(['A-1', 'A-2', 'A-3']));
    const planJob: typeof smallSteps.planJob = (job, context) => {
      if (job.job === 'A-2') throw new Error('a fault made on purpose');
      return smallSteps.planJob(job, context);
    };
    const result = await runBatch(shop.options(), { ...smallSteps, planJob });
    expect(done(result)).toBe('A-1 complete printed, A-2 failed nothing, A-3 complete printed');
    expect(result.exitStatus).toBe(70);
    expect((await rows('open-items.csv')).filter((i) => i['job'] === 'A-2').map((i) => i['code'])).toEqual([
      'batch/program-fault',
    ]);
    expect(await readdir(shop.out)).not.toContain('A-2');
  });

  it('keeps to one job, and refuses one that is on no list', async () => {
    await shop.write('jobs.csv', listOf(['A-1', 'a-1']));
    const result = await run({ job: 'a-1' });
    expect(result.jobs.map((j) => j.job)).toEqual(['a-1']);
    expect(result.jobs[0]?.folder).toMatch(/^a-1-[0-9a-f]{8}$/);
    await expect(run({ job: 'B' })).rejects.toMatchObject({
      exitStatus: 64,
      note: { code: 'batch/no-such-job' },
    });
  });

  it('writes nothing outside --out, whatever an id is', async () => {
    await shop.write('jobs.csv', listOf(['../../x', 'CON', 'y'.repeat(300), '.shuntbook', 'report.csv']));
    await run({ make: 'plan' });
    expect((await readdir(shop.folder)).sort()).toEqual(['lists', 'out']);
    expect((await readdir(shop.out)).filter((n) => n.length > 69)).toEqual([]);
  });

  it('leaves the other run alone where the output folder is held', async () => {
    await shop.write('jobs.csv', listOf(['A-1']));
    await mkdir(shop.out);
    const lock = await lockOutput(join(shop.out, '.shuntbook'), 'out');
    await expect(run()).rejects.toMatchObject({ exitStatus: 75 });
    expect(await readdir(shop.out)).toEqual(['.shuntbook']);
    await lock.release();
    expect(done(await run())).toBe('A-1 complete printed');
  });

  it('stops where settings cannot be read, since nothing would be as the company wants it', async () => {
    await shop.write('jobs.csv', listOf(['A-1']));
    await shop.write('settings.json', '{ "paper": "papyrus" }');
    const result = await run();
    expect(result).toMatchObject({ exitStatus: 2, jobs: [] });
    expect(result.unreadable.length).toBe(1);
  });
});

describe('a batch that was made before', () => {
  const noBrowser = { browser: '/nowhere/browser' };

  it('starts no browser where nothing changed, whatever the day', async () => {
    await shop.write('jobs.csv', listOf(['A-1', 'A-2']));
    await run(noBrowser).then((r) => {
      expect(r.exitStatus).toBe(70);
    });
    await run();
    const before = await shop.tree();
    const notices: string[] = [];
    const again = await run({ date: '2026-05-07', onNotice: (n) => notices.push(n.code) });
    expect(done(again)).toBe('A-1 complete unchanged, A-2 complete unchanged');
    expect(notices).toEqual([]);
    const after = await shop.tree();
    for (const [name, bytes] of before)
      if (name.includes('/')) expect(after.get(name)?.equals(bytes)).toBe(true);
    expect(await rows('order-list.csv')).toMatchObject([{ part: 'QP-150', quantity: '2' }]);
  });

  it('prints again what changed, and nothing else', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2']));
    await shop.write('b.csv', listOf(['B-1']));
    await run();
    await shop.write('a.csv', listOf(['A-1', 'A-2']).replace('of A-2', 'of A-2 corrected'));
    expect(done(await run())).toBe('A-1 complete unchanged, A-2 complete printed, B-1 complete unchanged');
    expect(done(await run({ date: '2026-06-01', dateGiven: true }))).toBe(
      'A-1 complete printed, A-2 complete printed, B-1 complete printed',
    );
    expect(done(await run({ force: true, job: 'B-1' }))).toBe('B-1 complete printed');
  });

  it('makes a pack again that someone edited or deleted', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2', 'A-3', 'A-4']));
    await run();
    const before = await shop.tree();
    await appendFile(join(shop.out, 'A-1', 'labels.pdf'), 'x');
    await rm(join(shop.out, 'A-2'), { recursive: true });
    const touched = join(shop.out, 'A-3', 'plan.json');
    await utimes(touched, new Date(), new Date());
    const { size } = await stat(join(shop.out, 'A-4', 'schedule.csv'));
    await writeFile(join(shop.out, 'A-4', 'schedule.csv'), 'y'.repeat(size));
    expect(done(await run())).toBe(
      'A-1 complete printed, A-2 complete printed, A-3 complete unchanged, A-4 complete printed',
    );
    const after = await shop.tree();
    for (const [name, bytes] of before)
      if (name.includes('/')) expect(after.get(name)?.equals(bytes), name).toBe(true);
  });

  it('prints again where settings or photos changed', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2']));
    await shop.write('settings.json', '{ "company": { "name": "One" } }');
    await run();
    await shop.write('settings.json', '{ "company": { "name": "Two" } }');
    expect(done(await run())).toBe('A-1 complete printed, A-2 complete printed');
    const photos = join(shop.folder, 'photos');
    await mkdir(join(photos, 'A-2'), { recursive: true });
    expect(done(await run({ photos }))).toBe('A-1 complete unchanged, A-2 complete unchanged');
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    );
    await writeFile(join(photos, 'A-2', 'CC-1.png'), png);
    const before = (await shop.tree()).get('A-2/labels.pdf')?.length ?? 0;
    expect(done(await run({ photos }))).toBe('A-1 complete unchanged, A-2 complete printed');
    expect((await shop.tree()).get('A-2/labels.pdf')?.length).toBeGreaterThan(before);
    await expect(run({ photos: join(shop.folder, 'none') })).rejects.toMatchObject({ exitStatus: 64 });
  });

  it('names the folder of a job that left the lists, and leaves it', async () => {
    await shop.write('a.csv', listOf(['A-1', 'A-2']));
    await run();
    await shop.write('a.csv', listOf(['A-1']));
    const result = await run();
    expect(result.leftFolders).toEqual(['A-2']);
    expect(await readdir(join(shop.out, 'A-2'))).toHaveLength(7);
    expect((await rows('open-items.csv')).map((i) => i['code'])).toEqual(['batch/folder-left']);
  });

  it('compares a pack with the one before it, also where that is printed again', async () => {
    const { PDFParse } = await import('../../bench/pdf-readers.mjs');
    const says = async (): Promise<string> => {
      const parser = new PDFParse({ data: Uint8Array.from((await shop.tree()).get('A-1/labels.pdf') ?? []) });
      const { text } = await parser.getText();
      await parser.destroy();
      return /was [\p{L} ]+A-1|first pack/u.exec(text)?.[0] ?? text;
    };
    await shop.write('a.csv', listOf(['A-1'], 'Hütte'));
    await run();
    expect(await says()).toBe('first pack');
    await run({ force: true });
    expect(await says()).toBe('first pack');
    await shop.write('a.csv', listOf(['A-1'], 'Two'));
    await run({ make: 'plan' });
    await run();
    expect(await says()).toBe('was Hütte A-1');
    await run({ force: true });
    expect(await says()).toBe('was Hütte A-1');
    await shop.write('a.csv', listOf(['A-1'], 'Three'));
    await run();
    expect(await says()).toBe('was Two A-1');
    expect(await readdir(join(shop.out, '.shuntbook', 'plans'))).toHaveLength(1);
  });
});

describe('a batch that is stopped', () => {
  it('writes the report so far and ends with 130; the next run makes the rest', async () => {
    const jobs = Array.from({ length: 12 }, (_, i) => `A-${i + 1}`);
    await shop.write('a.csv', listOf(jobs));
    const stop = new AbortController();
    const result = await run({
      signal: stop.signal,
      workers: 1,
      onProgress: (p) => {
        if (p.done === 3) stop.abort();
      },
    });
    expect(result).toMatchObject({ exitStatus: 130, interrupted: true });
    expect(result.jobs.length).toBeGreaterThanOrEqual(3);
    expect(result.jobs.length).toBeLessThan(12);
    expect((await rows('report.csv')).length).toBe(result.jobs.length);
    expect((await rows('open-items.csv'))[0]).toMatchObject({ job: '', code: 'batch/interrupted' });
    expect([...(await shop.tree()).keys()]).not.toContain('order-list.csv');
    const rest = await run();
    expect(rest.exitStatus).toBe(0);
    expect(rest.jobs.filter((j) => j.done === 'unchanged').length).toBe(result.jobs.length);
    expect((await rows('order-list.csv'))[0]).toMatchObject({ quantity: '12' });
  });
});
