import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { answered, BROKEN, COMPANY, linesOf, writeBatch, writeLines } from '../batch/question-batches.js';
import { installedProgram, start, type Ended } from './program.js';

const JOBS = 60;
const PACK = ['closeout-pack.pdf', 'permit-sheet.pdf', 'owner-sheet.pdf', 'labels.pdf', 'schedule.csv'];

const program = installedProgram();

it('60 jobs, five of them broken, are 60 complete packs once their questions are answered; only what the answers changed is printed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'shuntbook-sixty-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const out = join(folder, 'out');
  const broken = new Map(BROKEN.map(({ breaks }, i) => [11 * i + 3, breaks]));
  const ids = writeBatch(folder, JOBS, broken);
  const brokenIds = [...broken.keys()].map((index) => ids[index] ?? '');
  const pack = (...more: readonly string[]): Promise<Ended> =>
    start(
      [
        process.execPath,
        program.cli,
        'pack',
        'list.csv',
        ...COMPANY,
        '--out',
        'out',
        '--date',
        '2026-03-02',
        ...more,
      ],
      folder,
    ).ended;
  const lacks = (job: string): string[] => PACK.filter((name) => !existsSync(join(out, job, name)));
  const times = (job: string): number[] =>
    PACK.filter((name) => !lacks(job).includes(name)).map((name) => statSync(join(out, job, name)).mtimeMs);

  const first = await pack();
  expect(first.status, first.err).toBe(1);
  const drafts = linesOf(join(out, 'report.csv')).filter((line) => line['status'] !== 'complete');
  expect(drafts.map((line) => [line['job'], line['status']])).toEqual(brokenIds.map((job) => [job, 'draft']));
  const before = new Map(ids.map((job) => [job, times(job)]));

  // The file of questions itself, filled in where it lies.
  const questions = join(out, 'questions.csv');
  const answersOf = (job: string) => BROKEN[brokenIds.indexOf(job)]?.answers ?? {};
  writeLines(questions, answered(linesOf(questions), answersOf));
  const second = await pack('--answers', join('out', 'questions.csv'));
  expect(second.status, second.err).toBe(0);
  const report = linesOf(join(out, 'report.csv'));
  expect(report.map((line) => line['job'])).toEqual(ids);
  expect(new Set(report.map((line) => line['status']))).toEqual(new Set(['complete']));
  expect(ids.flatMap(lacks)).toEqual([]);
  const printed = report.filter((line) => line['done'] === 'printed').map((line) => line['job']);
  expect(printed).toEqual(brokenIds);
  for (const job of ids.filter((id) => !brokenIds.includes(id))) {
    expect(times(job), job).toEqual(before.get(job));
  }
  // A second look at the same answers prints nothing more.
  const third = await pack('--answers', join('out', 'questions.csv'));
  expect(third.status, third.err).toBe(0);
  expect(linesOf(join(out, 'report.csv')).filter((line) => line['done'] !== 'unchanged')).toEqual([]);
}, 1_200_000);
