import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { projectPath } from '../commands/command.js';

export type Line = Record<string, string>;

/** The lines of a CSV by heading. */
export function linesOf(path: string): readonly Line[] {
  return parse(readFileSync(path, 'utf8'), { columns: true, bom: true });
}

/** Writes lines as a CSV. */
export function writeLines(path: string, lines: readonly Line[]): void {
  writeFileSync(path, stringify([...lines], { header: true }));
}

/** What is wrong with a job of the batch. */
export type Broken = (row: Line) => Line;

const on =
  (tag: string, change: Line): Broken =>
  (row) =>
    row['tag'] === tag ? { ...row, ...change } : row;

/** Five ways in which a job of the demo is broken, each with the answers that mend it, by field. */
export const BROKEN: readonly { readonly breaks: Broken; readonly answers: Line }[] = [
  // A wrong cell that is stated: modules were counted where arrays are asked for.
  { breaks: on('ARR-E', { quantity: '16' }), answers: { quantity: '1' } },
  {
    breaks: on('INV', { kind: 'zwischenkasten' }),
    answers: { kind: 'grid-tie-inverter' },
  },
  { breaks: on('MP', { ac_in: '480Y/277' }), answers: { ac_in: '120/240' } },
  { breaks: on('ARR-W', { run_length: '' }), answers: { run_length: '62 ft' } },
  { breaks: on('SVC', { lowest_temp: 'cold' }), answers: { lowest_temp: '-18 C' } },
];

/**
 * A list of as many jobs as are wanted, all of them one job of the demo, five of them broken.
 * @param jobs how many
 * @param broken which jobs are broken, by index
 * @returns the ids
 */
export function writeBatch(folder: string, jobs: number, broken: ReadonlyMap<number, Broken>): string[] {
  const demo = linesOf(projectPath('fixtures/demo/grid.csv')).filter((row) => row['job'] === 'UF-102');
  const ids = Array.from({ length: jobs }, (_, i) => `J-${String(i + 1).padStart(2, '0')}`);
  const rows = ids.flatMap((job, i) =>
    demo.map((row) => {
      const own = { ...row, job, quantity: '' };
      return broken.get(i)?.(own) ?? own;
    }),
  );
  writeLines(join(folder, 'list.csv'), rows);
  return ids;
}

/** The demo's company for a list in another folder. */
export const COMPANY: readonly string[] = ['catalogue.csv', 'library.csv', 'settings.json'].flatMap(
  (name) => [`--${name.split('.')[0] ?? ''}`, projectPath(`fixtures/demo/${name}`)],
);

/** What a person who knows the job writes into questions: what is missing or contradictory, and nothing else. */
export function answered(lines: readonly Line[], answers: (job: string) => Line): readonly Line[] {
  return lines.map((line) => {
    const answer =
      line['example'] === 'accept' ? '' : (answers(line['job'] ?? '')[line['field'] ?? ''] ?? '');
    return answer === '' ? line : { ...line, answer, by: 'R. Example', date: '2026-03-01' };
  });
}
