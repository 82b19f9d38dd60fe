import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { odsParts, odsTable, sheetData, xlsxParts, zipOf, type GridCell } from '../../bench/workbooks.mjs';
import { plansOfFolder } from './plan-twin.js';

// The lists, library and catalogue of the demo as workbooks, figures as numbers; tests/outside has LibreOffice make them.
const DEMO = 'fixtures/demo';
const work = mkdtempSync(join(tmpdir(), 'shuntbook-twins-'));
let twins: Readonly<Record<string, string>> = {};

beforeAll(async () => {
  const folder = join(work, 'csv');
  cpSync(DEMO, folder, { recursive: true });
  twins = await plansOfFolder(folder);
});

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

const WRITERS = {
  xlsx: (grid: readonly (readonly GridCell[])[]) =>
    zipOf(xlsxParts([{ name: 'Sheet1', content: sheetData(grid) }])),
  ods: (grid: readonly (readonly GridCell[])[]) => zipOf(odsParts(odsTable('Sheet1', grid))),
};

test.each(['xlsx', 'ods'] as const)('the demo as .%s gives the plans of its CSVs', async (format) => {
  const folder = join(work, format);
  mkdirSync(folder);
  for (const name of readdirSync(DEMO).filter((file) => file.endsWith('.csv'))) {
    const records: string[][] = parse(readFileSync(join(DEMO, name)), {
      bom: true,
      relax_column_count: true,
    });
    const grid = records.map((row) =>
      row.map((cell) => (/^-?(?:0|[1-9]\d*)(?:\.\d*[1-9])?$/.test(cell) ? Number(cell) : cell)),
    );
    expect(grid.flat().filter((cell) => typeof cell === 'number').length, name).toBeGreaterThan(5);
    writeFileSync(join(folder, name.replace(/csv$/, format)), WRITERS[format](grid));
  }
  cpSync(join(DEMO, 'settings.json'), join(folder, 'settings.json'));
  const plans = await plansOfFolder(folder);
  expect(Object.keys(plans)).toEqual(Object.keys(twins));
  expect(Object.keys(plans).length).toBeGreaterThan(14);
  for (const [job, plan] of Object.entries(plans)) expect(plan === twins[job], job).toBe(true);
});
