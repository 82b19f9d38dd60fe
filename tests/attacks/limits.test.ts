import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import { Failure } from '../../src/model/failure.js';
import { LIMITS } from '../../src/model/limits.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListText } from '../../src/read/list/lists.js';
import { surveySite } from '../../src/site/survey.js';
import { told } from '../../src/words/messages/told.js';

// What is larger than the limits of the contract is told in one sentence, before work on it starts.

const settings = defaultSettings();
const HEADING = 'job,tag,kind,connects_to,quantity,ac_in,building,run_length\n';
const listOf = (rows: readonly string[]): string => `${HEADING}${rows.join('\n')}\n`;
const many = (count: number, row: (i: number) => string): string[] =>
  Array.from({ length: count }, (_, i) => row(i + 1));

/** The note that a job is refused with; undefined: it is planned. */
function refusal(rows: readonly string[]): string | undefined {
  const [job] = readListText('list.csv', listOf(rows), { settings }).jobs;
  if (!job) throw new Error('no job');
  try {
    planJob(job, { catalogue: undefined, settings });
    return undefined;
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    return String(told(error.note).message);
  }
}

/** Services that each get a protector of their own. */
const services = (count: number): string[] => many(count, (i) => `J,S${i},service,,,120/240,,`);

describe('a file', () => {
  const rows = (count: number, end = ''): string =>
    `job,tag,kind\n${many(count, (i) => `J-${i},A,array\n`).join('')}${end}`;

  it('of one row more than the limit is refused', () => {
    const { jobs, unreadable } = readListText('much.csv', rows(LIMITS.fileRows + 1), { settings });
    expect(jobs).toEqual([]);
    expect(unreadable.map((item) => item.code)).toEqual(['file/too-many-rows']);
  });

  it('may have blank lines and totals beyond that', () => {
    const end = `${'\n'.repeat(2 * LIMITS.fileRows + 10)}Total of all rows,,\n`;
    const { jobs, unreadable } = readListText('most.csv', rows(LIMITS.fileRows, end), { settings });
    expect(unreadable).toEqual([]);
    expect(jobs).toHaveLength(LIMITS.fileRows);
  });
});

describe('a cell', () => {
  it('larger than the limit is told in one item', () => {
    const text = `job,tag,kind,run_length,description\nJ,A,array,1 m,${'x'.repeat(LIMITS.cell + 1)}\n`;
    const [job] = readListText('cell.csv', text, { settings }).jobs;
    expect(job?.items.map((item) => `${item.code}:${item.line}:${item.column}`)).toEqual([
      'cell/too-large:2:description',
    ]);
    expect(job?.rows[0]?.unreadable.has('description')).toBe(true);
  });
});

describe('a job', () => {
  it('of more rows than the limit, a quantity counted as so many, is not planned', () => {
    const loads = (quantity: number): string[] => [
      'J,S,service,,,120/240,,',
      ...many(4, (i) => `J,L${i},load,S,1000,120/240,,`),
      `J,M,load,S,${quantity},120/240,,`,
    ];
    expect(refusal(loads(1000))).toBe('Job J has 5001 rows: a job of more than 5000 isn’t planned.');
    expect(refusal(loads(999))).toBeUndefined();
  });

  it('of more rows than the limit is not surveyed either', () => {
    const [job] = readListText('list.csv', listOf(services(LIMITS.jobRows + 1)), { settings }).jobs;
    const site = job && surveySite(job, settings);
    expect(site?.equipments).toEqual([]);
    expect(site?.notes.map((note) => note.code)).toEqual(['job/too-many-rows']);
  });

  it('of more housings than the limit is not planned', () => {
    expect(refusal(services(LIMITS.jobHousings + 1))).toBe(
      'Job J asks for more than 500 housings of protectors: such a job isn’t planned.',
    );
    expect(refusal(services(LIMITS.jobHousings))).toBeUndefined();
  });

  it('whose transfer switch joins hundreds to hundreds is not planned', () => {
    const rows = [
      'J,T,transfer-switch,,,,,',
      ...many(200, (i) => `J,G${i},generator,T,,,,5 ft`),
      ...many(200, (i) => `J,L${i},load,T,,120/240,,5 ft`),
    ];
    expect(refusal(rows)).toMatch(/^The runs of job J follow more than 50000 connections /);
  });
});

describe('a run', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'shuntbook-limits-'));
  });
  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
  });
  const plan = async (name: string, list: string): Promise<Awaited<ReturnType<typeof runBatch>>> => {
    const path = join(folder, `${name}.csv`);
    await writeFile(path, list);
    const out = join(folder, name);
    return runBatch({ make: 'plan', lists: [path], out, date: '2026-05-06', dateGiven: true });
  };

  it('goes on past a job that is too large, writes nothing of it and ends with 2', async () => {
    const list = listOf([...services(LIMITS.jobHousings + 1), 'K,S,service,,,120/240,,']);
    const result = await plan('large', list);
    expect(result.jobs.map((job) => `${job.job} ${job.status} ${job.done}`)).toEqual([
      'J failed nothing',
      'K draft nothing',
    ]);
    expect(result.exitStatus).toBe(2);
    const conflicts = result.items.filter((one) => one.job === 'J').map(({ item }) => item.code);
    expect(conflicts).toEqual(['job/too-many-housings']);
    const written = await readdir(join(folder, 'large'));
    expect(written).toContain('K');
    expect(written).not.toContain('J');
    expect(await readFile(join(folder, 'large', 'open-items.csv'), 'utf8')).toContain(
      'job/too-many-housings',
    );
  });

  it('of more jobs than the limit is not begun', async () => {
    const list = listOf(many(LIMITS.jobs + 1, (i) => `J${i},S,service,,,120/240,,`));
    const result = await plan('jobs', list);
    expect(result.exitStatus).toBe(2);
    expect(result.jobs).toEqual([]);
    expect(result.unreadable.map((item) => item.code)).toEqual(['batch/too-many-jobs']);
    expect(await readdir(folder)).not.toContain('jobs');
  });
});
