import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runBatch } from '../../src/batch/run-batch.js';
import type { BatchOptions } from '../../src/batch/batch-options.js';
import { freshFolder, projectPath } from '../commands/command.js';
import { answered, BROKEN, linesOf, writeBatch, writeLines } from './question-batches.js';
import { smallDocuments } from './stand-ins.js';

it('prints at the second run what its answers changed, and nothing else', async () => {
  const folder = freshFolder();
  const out = join(folder, 'out');
  const [quantity, kind] = BROKEN;
  if (!quantity || !kind) throw new Error('no broken jobs');
  const mends = [{}, quantity.answers, {}, kind.answers];
  const ids = writeBatch(folder, 4, new Map([[1, quantity.breaks] as const, [3, kind.breaks] as const]));
  const demo = (name: string): string => projectPath(`fixtures/demo/${name}`);
  const options: BatchOptions = {
    make: 'pack',
    lists: [join(folder, 'list.csv')],
    catalogue: demo('catalogue.csv'),
    library: demo('library.csv'),
    settings: demo('settings.json'),
    out,
    date: '2026-03-02',
    dateGiven: true,
  };
  const first = await runBatch(options, { renderDocuments: smallDocuments });
  expect(first.jobs.map(({ status, done }) => `${status} ${done}`)).toEqual([
    'complete printed',
    'draft printed',
    'complete printed',
    'draft printed',
  ]);
  const pages = (job: string): string => join(out, job, 'closeout-pack.pdf');
  const before = ids.map((job) => statSync(pages(job)).mtimeMs);
  const file = join(out, 'questions.csv');
  writeLines(
    file,
    answered(linesOf(file), (job) => mends[ids.indexOf(job)] ?? {}),
  );
  const filled = readFileSync(file, 'utf8');
  const second = await runBatch({ ...options, answers: [file] }, { renderDocuments: smallDocuments });
  expect(second.jobs.map(({ status, done }) => `${status} ${done}`)).toEqual([
    'complete unchanged',
    'complete printed',
    'complete unchanged',
    'complete printed',
  ]);
  expect(second.exitStatus).toBe(0);
  const after = ids.map((job) => statSync(pages(job)).mtimeMs);
  expect(after.map((time, i) => time === before[i])).toEqual([true, false, true, false]);
  expect(readFileSync(file, 'utf8')).toBe(filled);
});
