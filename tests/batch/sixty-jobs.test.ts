import { join } from 'node:path';
import { expect, it } from 'vitest';
import { freshFolder, shuntbook } from '../commands/command.js';
import { answered, BROKEN, COMPANY, linesOf, writeBatch, writeLines } from './question-batches.js';

const JOBS = 60;

it('the questions of 60 jobs, five of them broken, answered by a script, end in 60 complete packs at the second run; what didn’t change isn’t made again', async () => {
  const folder = freshFolder();
  const out = join(folder, 'out');
  const broken = new Map(BROKEN.map(({ breaks }, i) => [11 * i + 3, breaks]));
  const ids = writeBatch(folder, JOBS, broken);
  const brokenIds = [...broken.keys()].map((index) => ids[index] ?? '');
  const run = ['plan', join(folder, 'list.csv'), ...COMPANY, '--out', out, '--date', '2026-03-02'];
  const first = await shuntbook(run);
  expect(first.status, first.err).toBe(1);
  const drafts = linesOf(join(out, 'report.csv')).filter((line) => line['status'] !== 'complete');
  expect(drafts.map((line) => line['job'])).toEqual(brokenIds);

  const answersOf = (job: string) => BROKEN[brokenIds.indexOf(job)]?.answers ?? {};
  const file = join(folder, 'answers.csv');
  writeLines(file, answered(linesOf(join(out, 'questions.csv')), answersOf));
  const second = await shuntbook([...run, '--answers', file]);
  const report = linesOf(join(out, 'report.csv'));
  const open = linesOf(join(out, 'open-items.csv')).filter((item) => item['severity'] !== 'confirm');
  expect(open.map((item) => [item['job'], item['code'], item['message']])).toEqual([]);
  expect(second.status, second.err).toBe(0);
  expect(report).toHaveLength(JOBS);
  expect(report.filter((line) => line['done'] !== 'unchanged').map((line) => line['job'])).toEqual(brokenIds);
});
