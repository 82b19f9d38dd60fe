import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ColumnMap } from '../../src/index.js';
import { freshFolder, projectPath, shuntbook, type Told } from './command.js';

/** One job as an office gets it: how its export is written, what its first run tells, what brings it to a complete plan. */
interface Export {
  readonly list: string;
  readonly manner: string;
  readonly status: number;
  /** Codes that the first run tells, in their order, as far as they are to be settled in headings or words. */
  readonly first: readonly string[];
  readonly columns: NonNullable<ColumnMap['columns']>;
  readonly words: NonNullable<ColumnMap['words']>;
  /** The list with what no export of that manner states, typed by hand. */
  readonly corrected?: string;
  readonly steps: { readonly commands: number; readonly map: number; readonly cells: number };
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

async function planned(list: string, map?: string): Promise<Planned> {
  const out = freshFolder();
  const columns = map === undefined ? [] : ['--columns', map];
  const told = await shuntbook(['plan', list, ...COMPANY, ...columns, '--out', out, '--date', '2026-03-31']);
  const folder = /^\S+ +complete .* (\S+)$/m.exec(told.out)?.[1];
  if (folder === undefined) return { told, ports: [] };
  const plan = JSON.parse(readFileSync(join(out, folder, 'plan.json'), 'utf8')) as {
    protectors: { ports: { equipment: string; port: string }[]; part: string }[];
  };
  const ports = plan.protectors.map(
    (p) => `${p.ports.map(({ equipment, port }) => `${equipment}:${port}`).join(' ')} ${p.part}`,
  );
  return { told, ports };
}

const codesIn = (told: string): string[] =>
  [...told.matchAll(/\[([a-z0-9/-]+)\]$/gm)].map(([, code]) => code ?? '');

/** Cells of the corrected list that the export doesn't have. */
function cellsTyped(before: string, after: string): number {
  const left = new Map<string, number>();
  for (const cell of before.split(/[,\n]/)) left.set(cell, (left.get(cell) ?? 0) + 1);
  let typed = 0;
  for (const cell of after.split(/[,\n]/)) {
    const known = left.get(cell) ?? 0;
    if (cell === '') continue;
    if (known > 0) left.set(cell, known - 1);
    else typed += 1;
  }
  return typed;
}

describe('an export', () => {
  it.each(EXPORTS.map((one) => [one.manner, one] as const))(
    'is brought to a complete plan by commands, a map and corrections: %s',
    async (_, { list, status, first, columns, words, corrected, steps }) => {
      const { ports: wanted } = await planned(join(FOLDER, 'canonical.csv'));
      expect(wanted.length).toBeGreaterThan(0);
      const folder = freshFolder();
      const path = join(folder, list);
      const map = join(folder, 'map.json');
      writeFileSync(path, text(list));

      let commands = 1;
      const { told, ports } = await planned(path);
      expect(told.status).toBe(status);
      expect(codesIn(told.err).slice(0, first.length)).toEqual(first);
      if (status === 0) {
        expect(ports).toEqual(wanted);
        expect({ commands, map: 0, cells: 0 }).toEqual(steps);
        return;
      }
      if (corrected !== undefined) writeFileSync(path, text(corrected));

      commands += 1;
      await shuntbook(['columns', path, '--write', map]);
      const draft = JSON.parse(readFileSync(map, 'utf8')) as ColumnMap;
      // Each heading that is to be settled is a question of the draft, and no other is.
      const asked = Object.entries(draft.columns ?? {}).filter(
        ([, to]) => typeof to === 'string' && to.startsWith('?'),
      );
      expect(asked.map(([heading]) => heading)).toEqual(Object.keys(columns));
      writeFileSync(map, JSON.stringify({ ...draft, columns: { ...draft.columns, ...columns } }));
      if (Object.keys(words).length > 0) {
        commands += 1;
        await shuntbook(['columns', path, '--columns', map, '--write', map]);
        const again = JSON.parse(readFileSync(map, 'utf8')) as ColumnMap;
        const questions = (of: ColumnMap['words']): unknown =>
          Object.fromEntries(
            Object.entries(of ?? {}).map(([field, each]) => [field, Object.keys(each).sort()]),
          );
        expect(questions(again.words)).toEqual(questions(words));
        writeFileSync(map, JSON.stringify({ ...again, words }));
      }

      commands += 1;
      const last = await planned(path, map);
      expect(last.told.err).not.toMatch(/^(?:conflict|missing) /m);
      expect(last.told.status, last.told.err).toBe(0);
      expect(last.ports).toEqual(wanted);
      const settled =
        Object.keys(columns).length + Object.values(words).flatMap((of) => Object.keys(of)).length;
      const cells = corrected === undefined ? 0 : cellsTyped(text(list), text(corrected));
      expect({ commands, map: settled, cells }).toEqual(steps);
    },
  );
});
