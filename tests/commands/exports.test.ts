import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { sheetData, xlsxParts, zipOf } from '../../bench/workbooks.mjs';
import type { ColumnMap } from '../../src/index.js';
import { linesOf, writeLines, type Line } from '../batch/question-batches.js';
import { freshFolder, projectPath, shuntbook, type Told } from './command.js';

/** One job as an office gets it: how its export is written, what its first run tells, what brings it to a complete plan. */
interface Export {
  readonly list: string;
  readonly manner: string;
  /** True of one that is sent as a workbook, figures as figures. */
  readonly workbook?: true;
  readonly status: number;
  /** Codes that the first run tells, in their order, as far as they are to be settled in headings or words. */
  readonly first: readonly string[];
  readonly columns: NonNullable<ColumnMap['columns']>;
  readonly words: NonNullable<ColumnMap['words']>;
  /** A second list: equipment that no export of that manner holds. */
  readonly rows?: string;
  /** Equipment facts that it doesn't hold of what it does. */
  readonly facts?: string;
  /** Answers to the questions of the run with these, by tag and field. */
  readonly answers?: Readonly<Record<string, string>>;
  /** Tags of the canonical list, where its own are others. */
  readonly tags?: Readonly<Record<string, string>>;
  readonly steps: Steps;
}

/** What it takes: commands, headings and words of the map, answers, cells of what was supplied beside the export. */
interface Steps {
  readonly commands: number;
  readonly map: number;
  readonly answers: number;
  readonly cells: number;
}

const FOLDER = projectPath('fixtures/exports');
const EXPORTS = JSON.parse(readFileSync(join(FOLDER, 'exports.json'), 'utf8')) as readonly Export[];
const text = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

const COMPANY = [
  '--catalogue',
  projectPath('fixtures/demo/catalogue.csv'),
  '--library',
  projectPath('fixtures/demo/library.csv'),
  '--settings',
  projectPath('fixtures/demo/settings.json'),
];

interface Planned {
  readonly told: Told;
  /** Ports by protector, in the order of the tags. */
  readonly ports: readonly string[];
}

async function planned(
  lists: readonly string[],
  out: string,
  more: readonly string[] = [],
  tags: Readonly<Record<string, string>> = {},
): Promise<Planned> {
  const told = await shuntbook(['plan', ...lists, ...COMPANY, ...more, '--out', out, '--date', '2026-03-31']);
  const folder = /^\S+ +complete .* (\S+)$/m.exec(told.out)?.[1];
  if (folder === undefined) return { told, ports: [] };
  const plan = JSON.parse(readFileSync(join(out, folder, 'plan.json'), 'utf8')) as {
    protectors: { ports: { equipment: string; port: string }[]; part: string }[];
  };
  const ports = plan.protectors.map(
    (p) =>
      `${p.ports.map(({ equipment, port }) => `${tags[equipment] ?? equipment}:${port}`).join(' ')} ${p.part}`,
  );
  return { told, ports: ports.sort() };
}

const codesIn = (told: string): string[] =>
  [...told.matchAll(/\[([a-z0-9/-]+)\]$/gm)].map(([, code]) => code ?? '');

/** Cells of lines that say something. */
const cellsIn = (lines: readonly Line[]): number =>
  lines.flatMap((line) => Object.values(line)).filter((cell) => cell !== '').length;

/** A text with commas as a workbook of one sheet, its title over all columns. */
function asWorkbook(csv: string): Uint8Array {
  const rows: string[][] = parse(csv, { relax_column_count: true });
  const grid = rows.map((row) =>
    row.map((cell) => (cell === '' ? null : /^-?\d+(?:\.\d+)?$/.test(cell) ? Number(cell) : cell)),
  );
  const content = `${sheetData(grid)}<mergeCells><mergeCell ref="A1:L1"/></mergeCells>`;
  return zipOf(xlsxParts([{ name: 'Schedule', content }]));
}

/** Writes the map of an export, by the commands that a new user is told of; the commands that it took. */
async function mapped(path: string, map: string, { columns, words }: Export): Promise<number> {
  await shuntbook(['columns', path, '--write', map]);
  const draft = JSON.parse(readFileSync(map, 'utf8')) as ColumnMap;
  // Each heading that is to be settled is a question of the draft, and no other is.
  const asked = Object.entries(draft.columns ?? {}).filter(
    ([, to]) => typeof to === 'string' && to.startsWith('?'),
  );
  expect(asked.map(([heading]) => heading)).toEqual(Object.keys(columns));
  writeFileSync(map, JSON.stringify({ ...draft, columns: { ...draft.columns, ...columns } }));
  if (Object.keys(words).length === 0) return 1;
  await shuntbook(['columns', path, '--columns', map, '--write', map]);
  const again = JSON.parse(readFileSync(map, 'utf8')) as ColumnMap;
  const questions = (of: ColumnMap['words']): unknown =>
    Object.fromEntries(Object.entries(of ?? {}).map(([field, each]) => [field, Object.keys(each).sort()]));
  expect(questions(again.words)).toEqual(questions(words));
  writeFileSync(map, JSON.stringify({ ...again, words }));
  return 2;
}

/** Fills in the questions of a run; as many as were answered. */
function answer(questions: string, file: string, answers: Readonly<Record<string, string>>): number {
  const lines = linesOf(questions).map((line) => {
    const known = answers[`${line['tag'] ?? ''} ${line['field'] ?? ''}`];
    return known === undefined ? line : { ...line, answer: known, by: 'R. Example', date: '2026-03-30' };
  });
  writeLines(file, lines);
  return lines.filter((line) => line['answer'] !== '').length;
}

describe('an export', () => {
  it.each(EXPORTS.map((one) => [one.manner, one] as const))(
    'is brought to a complete plan by commands, a map and answers, as it is: %s',
    async (_, one) => {
      const { ports: wanted } = await planned([join(FOLDER, 'canonical.csv')], freshFolder());
      expect(wanted.length).toBeGreaterThan(0);
      const folder = freshFolder();
      const out = join(folder, 'out');
      const path = join(folder, one.workbook ? one.list.replace('.csv', '.xlsx') : one.list);
      const map = join(folder, 'map.json');
      writeFileSync(path, one.workbook ? asWorkbook(text(one.list)) : text(one.list));

      const first = await planned([path], out);
      expect(first.told.status).toBe(one.status);
      expect(codesIn(first.told.err).slice(0, one.first.length)).toEqual(one.first);
      if (one.status === 0) {
        expect(first.ports).toEqual(wanted);
        expect({ commands: 1, map: 0, answers: 0, cells: 0 }).toEqual(one.steps);
        return;
      }

      let commands = 2 + (await mapped(path, map, one));
      const rows = one.rows === undefined ? [] : [join(FOLDER, one.rows)];
      const facts = one.facts === undefined ? [] : [join(FOLDER, one.facts)];
      const lists = [path, ...rows];
      const more = ['--columns', map, ...facts.flatMap((file) => ['--equipment-facts', file])];
      let last = await planned(lists, out, more, one.tags);
      let answers = 0;
      if (one.answers !== undefined) {
        commands += 1;
        const file = join(folder, 'answers.csv');
        answers = answer(join(out, 'questions.csv'), file, one.answers);
        last = await planned(lists, out, [...more, '--answers', file], one.tags);
      }
      expect(last.told.err).not.toMatch(/^(?:conflict|missing) /m);
      expect(last.told.status, last.told.err).toBe(0);
      expect(last.ports).toEqual(wanted);
      const settled =
        Object.keys(one.columns).length + Object.values(one.words).flatMap((of) => Object.keys(of)).length;
      const cells = cellsIn([...rows, ...facts].flatMap(linesOf));
      expect({ commands, map: settled, answers, cells }).toEqual(one.steps);
    },
  );
});
