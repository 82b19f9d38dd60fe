import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { freshFolder, projectPath, shuntbook, type Told } from './command.js';

const CATALOGUE = projectPath('fixtures/demo/catalogue.csv');

interface Item {
  readonly job: string;
  readonly severity: string;
  readonly code: string;
  readonly message: string;
  readonly file: string;
  readonly line: number;
  readonly column: string;
  readonly found: string;
}
interface Result {
  readonly exitStatus: number;
  readonly jobs: readonly { readonly job: string; readonly folder: string; readonly status: string }[];
  readonly openItems: readonly Item[];
  readonly unreadable: readonly Item[];
}

/** Plans lists and hands back what the command told, as text and as its JSON. */
async function plan(
  lists: readonly string[],
  more: readonly string[] = [],
): Promise<Told & { out: string; folder: string; result: Result }> {
  const folder = freshFolder();
  const told = await shuntbook([
    'plan',
    ...lists,
    '--catalogue',
    CATALOGUE,
    '--out',
    folder,
    '--json',
    ...more,
  ]);
  return { ...told, folder, result: JSON.parse(told.out) as Result };
}

const bad = (name: string): string => projectPath(`fixtures/bad/${name}`);

/** The sound job of every list here is written and isn't spoilt by the other. */
function expectGoodJob(folder: string, result: Result): void {
  expect(result.jobs.map((j) => [j.job, j.status])).toContainEqual(['GOOD', 'complete']);
  expect(readdirSync(join(folder, 'GOOD')).sort()).toEqual([
    'plan.json',
    'schedule.csv',
    'site-facts.csv',
    'site-readings.csv',
    'site-record.csv',
  ]);
}

describe('a file that can not be read at all', () => {
  it.each([
    ['a missing file', 'never-there.csv', /never-there\.csv/],
    ['an empty file', 'empty.csv', /empty/i],
    ['a folder without lists', 'no-lists', /list/i],
    ['a list without a heading', 'no-heading.csv', /heading/i],
  ])('%s ends with 2 and one message; the other list is planned', async (_, name, says) => {
    const { status, err, folder, result } = await plan([bad(name), bad('good.csv')]);
    expect(status).toBe(2);
    expect(result.exitStatus).toBe(2);
    expect(result.unreadable).toHaveLength(1);
    // By its name: the list was given by its path on this machine.
    expect(result.unreadable[0]?.file).toBe(name);
    expect(result.unreadable[0]?.message).toMatch(says);
    expect(err.split(`[${String(result.unreadable[0]?.code)}]`)).toHaveLength(2);
    expectGoodJob(folder, result);
  });

  it('a missing catalogue ends with 2, and all is planned without parts', async () => {
    const folder = freshFolder();
    const told = await shuntbook([
      'plan',
      bad('good.csv'),
      '--catalogue',
      bad('nowhere.csv'),
      '--out',
      folder,
      '--json',
    ]);
    expect(told.status).toBe(2);
    expect(readdirSync(join(folder, 'GOOD'))).toContain('plan.json');
  });
});

describe('a wrong row or cell', () => {
  // File, line, column of the fault, and how the message is known.
  it.each([
    ['a row without a kind', 'no-kind.csv', 5, 'kind', /kind/],
    ['an unknown kind', 'unknown-kind.csv', 5, 'kind', /flux-condenser/],
    ['quantity 0', 'quantity-zero.csv', 5, 'quantity', /quantity/i],
    ['quantity -1', 'quantity-negative.csv', 5, 'quantity', /quantity/i],
    ['quantity 2.5', 'quantity-fraction.csv', 5, 'quantity', /quantity/i],
    ['two rows with one tag', 'tag-twice.csv', 5, 'tag', /LOAD.*line 5.*line 6/],
    ['a connection to a tag that is not there', 'connects-to-nothing.csv', 5, 'connects_to', /NOWHERE/],
    ['a circle of connections', 'circle.csv', 5, 'connects_to', /circle/],
  ])('%s is an open item with its place, and ends with 1', async (_, name, line, column, says) => {
    const { status, folder, result } = await plan([bad(name)]);
    expect(status).toBe(1);
    const grave = result.openItems.filter((i) => i.severity !== 'confirm');
    const [item, ...others] = grave.filter((i) => says.test(`${i.message} ${i.found}`));
    expect(item).toMatchObject({ job: 'BAD', file: name, line, column });
    expect(others).toEqual([]);
    expect(result.jobs.find((j) => j.job === 'BAD')?.status).toBe('draft');
    expectGoodJob(folder, result);
  });

  it('a catalogue row without MCOV is left out with its place, and held against no job', async () => {
    const folder = freshFolder();
    const catalogue = bad('catalogue-without-mcov.csv');
    const told = await shuntbook([
      'plan',
      bad('good.csv'),
      '--catalogue',
      catalogue,
      '--out',
      folder,
      '--json',
    ]);
    expect(told.status).toBe(0);
    const result = JSON.parse(told.out) as Result;
    const items = result.openItems.filter((i) => i.file === 'catalogue-without-mcov.csv');
    expect(items).toHaveLength(1);
    expect(items[0]).toMatchObject({ job: '', severity: 'confirm', line: 15 });
    expect(items[0]?.message).toMatch(/WK-CLOVER/);
    expect(told.err).toContain('WK-CLOVER');
  });

  it('shows at most five of one kind a file and counts the rest', async () => {
    const folder = freshFolder();
    const list = join(folder, 'many.csv');
    const rows = Array.from({ length: 12 }, (_, i) => `J,L${String(i)},flux-${String(i)},SVC`);
    writeFileSync(list, ['job,tag,kind,connects_to', ...rows].join('\n'));
    const told = await shuntbook(['plan', list, '--out', join(folder, 'out')]);
    expect(told.err.match(/^(missing|conflict) .*many\.csv, line \d+, kind  job J$/gm)).toHaveLength(5);
    expect(told.err).toMatch(/and 7 more of /);
  });
});

describe('a hostile job id', () => {
  it('never writes outside --out', async () => {
    const folder = freshFolder();
    const out = join(folder, 'inner', 'out');
    const told = await shuntbook(['plan', bad('ids.csv'), '--catalogue', CATALOGUE, '--out', out, '--json']);
    const { jobs } = JSON.parse(told.out) as Result;
    expect(readdirSync(folder)).toEqual(['inner']);
    expect(readdirSync(join(folder, 'inner'))).toEqual(['out']);
    const ids = ['../../x', 'CON', '.hidden', 'a/b', 'A'.repeat(300), 'nul.txt'];
    for (const id of ids) {
      const job = jobs.find((j) => j.job === id);
      expect(job?.folder, id).toMatch(/^[A-Za-z0-9_-][A-Za-z0-9._-]*-[0-9a-f]{8}$/);
      expect(job?.folder.length, id).toBeLessThanOrEqual(69);
      expect(readdirSync(join(out, job?.folder ?? ''))).toContain('plan.json');
    }
    expect(new Set(jobs.map((j) => j.folder)).size).toBe(jobs.length);
  });
});

describe('a hostile name', () => {
  it('is kept as typed in the plan, and guarded in the CSVs', async () => {
    const { folder } = await plan([bad('names.csv')]);
    const saved = JSON.parse(readFileSync(join(folder, 'NAMES', 'plan.json'), 'utf8')) as {
      jobName: string;
      site: { equipments: { tag: string; place: string }[] };
    };
    expect(saved.jobName).toBe('<script>alert(1)</script>');
    expect(saved.site.equipments.map((e) => e.tag)).toContain('=1+1');
    expect(saved.site.equipments.map((e) => e.place)).toContain('{{x}} / =1+1');
    for (const file of ['NAMES/schedule.csv', 'open-items.csv', 'report.csv', 'order-list.csv']) {
      const rows = parse(readFileSync(join(folder, file), 'utf8'), { bom: true });
      for (const cell of rows.flat()) expect(cell, file).not.toMatch(/^[\s\0]*[=+@]/);
    }
  });
});

describe('options', () => {
  it('--job plans only that job', async () => {
    const { status, result } = await plan([bad('quantity-zero.csv')], ['--job', 'GOOD']);
    expect(status).toBe(0);
    expect(result.jobs.map((j) => j.job)).toEqual(['GOOD']);
  });

  it('--job of no list ends with 64', async () => {
    const told = await shuntbook(['plan', bad('good.csv'), '--job', 'OTHER', '--out', freshFolder()]);
    expect(told.status).toBe(64);
    expect(told.err).toContain('OTHER');
  });

  it('- reads standard input, under the name of --job where there is no job column', async () => {
    const folder = freshFolder();
    const list = 'tag,kind,place,ac_in,fault_current\nSVC,service,House / hall,120/240,10 kA\n';
    const told = await shuntbook(
      ['plan', '-', '--job', 'J 7', '--catalogue', CATALOGUE, '--out', folder, '--json'],
      {
        stdin: list,
      },
    );
    expect(told.status).toBe(0);
    expect((JSON.parse(told.out) as Result).jobs.map((j) => j.job)).toEqual(['J 7']);
  });

  it('--quiet says nothing where all went well', async () => {
    const told = await shuntbook([
      'plan',
      bad('good.csv'),
      '--catalogue',
      CATALOGUE,
      '--out',
      freshFolder(),
      '--quiet',
    ]);
    expect(told).toEqual({ status: 0, out: '', err: '' });
  });

  it('without --json the table is the result, and people read the rest', async () => {
    const told = await shuntbook([
      'plan',
      bad('quantity-zero.csv'),
      '--catalogue',
      CATALOGUE,
      '--out',
      freshFolder(),
    ]);
    expect(told.out).toMatch(/^job +status +protectors +missing +conflict +confirm +folder\n/);
    expect(told.out).toMatch(/^BAD +draft /m);
    expect(told.err).toMatch(/^BAD is a draft: /m);
    expect(told.err).not.toMatch(/^GOOD is a draft/m);
  });
});
