import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheetData, xlsxParts, zipOf } from '../../bench/workbooks.mjs';
import { atOneGo } from '../../src/read/file/in-steps.js';
import { readingWorkbook } from '../../src/read/file/workbook/workbook.js';
import { plansOfFolder } from '../read/plan-twin.js';

// The lists, library and catalogue of the demo as LibreOffice stores them: workbooks by another hand than ours.
const DEMO = 'fixtures/demo';
const work = mkdtempSync(join(tmpdir(), 'shuntbook-twins-'));
let twins: Readonly<Record<string, string>> = {};

/** Its CSV import with detected numbers and dates, as a person gets who opens the file: comma, double quote, UTF-8, English (USA). */
const AS_OPENED = 'CSV:44,34,76,1,,1033,false,true';

function convert(format: string, into: string, files: readonly string[], more: readonly string[] = []): void {
  // A profile of its own: another LibreOffice that runs would take the work over.
  const profile = `-env:UserInstallation=${pathToFileURL(join(work, 'profile')).href}`;
  const options = ['--headless', profile, ...more, '--convert-to', format, '--outdir', into];
  execFileSync('soffice', [...options, ...files], { stdio: 'pipe' });
}

function convertDemo(format: string, into: string): void {
  const lists = readdirSync(DEMO).filter((name) => name.endsWith('.csv'));
  const paths = lists.map((name) => join(DEMO, name));
  convert(format, into, paths, [`--infilter=${AS_OPENED}`]);
  copyFileSync(join(DEMO, 'settings.json'), join(into, 'settings.json'));
}

beforeAll(async () => {
  const folder = join(work, 'csv');
  cpSync(DEMO, folder, { recursive: true });
  twins = await plansOfFolder(folder);
});

afterAll(() => {
  rmSync(work, { recursive: true, force: true });
});

describe('the demo, opened and saved by LibreOffice', () => {
  test.each(['xlsx', 'ods'])('as .%s gives the plans of its CSVs', async (format) => {
    const folder = join(work, format);
    mkdirSync(folder);
    convertDemo(format, folder);
    expect(readdirSync(folder).filter((name) => name.endsWith(`.${format}`)).length).toBeGreaterThan(5);
    const plans = await plansOfFolder(folder);
    expect(Object.keys(plans)).toEqual(Object.keys(twins));
    expect(Object.keys(plans).length).toBeGreaterThan(14);
    for (const [job, plan] of Object.entries(plans)) expect(plan, job).toBe(twins[job]);
  });
});

describe('a workbook that LibreOffice has opened and saved', () => {
  const date = '<c s="1"><v>46092</v></c>';
  const grid = [
    ['job', 'tag', 'kind', 'rating_a', 'impedance_percent', 'note'],
    ['J-1', 'SVC', 'service', 200, null, 'first'],
    [null, 'MP', 'panel', 0.1, null, 'filtered away'],
    [null, 'T', 'transformer', '<c><f>D2*2</f><v>400</v></c>', '<c s="2"><v>0.0575</v></c>', 'folded away'],
    ['J-2', date, 'panel', '<c s="3"><v>13.8</v></c>', null, 'last'],
    ['J-2', 'X', 'panel', '<c><f>1/0</f></c>', null, 'error'],
  ];
  const content =
    '<cols><col min="6" max="6" hidden="1"/></cols>' +
    sheetData(grid)
      .replace('<row r="3">', '<row r="3" hidden="1">')
      .replace('<row r="4">', '<row r="4" outlineLevel="1" hidden="1">') +
    '<mergeCells><mergeCell ref="A2:A4"/></mergeCells>';
  const parts = xlsxParts(
    [
      { name: 'List', content },
      { name: 'Old', content: sheetData([['tag'], ['A']]), state: 'hidden' },
    ],
    { formats: ['d-mmm', '0.00%', '0.0" kA"'] },
  );

  test.each(['xlsx', 'ods'])('as .%s says what isn’t shown, what is merged, and what is a date', (format) => {
    const from = join(work, 'made');
    const into = join(work, `saved-${format}`);
    mkdirSync(from, { recursive: true });
    mkdirSync(into);
    writeFileSync(join(from, 'made.xlsx'), zipOf(parts));
    convert(format, into, [join(from, 'made.xlsx')]);
    const reading = atOneGo(readingWorkbook(readFileSync(join(into, `made.${format}`)), '.'));
    const sheets = reading.ok ? reading.sheets : [];
    expect(sheets.map(({ name, hidden }) => [name, hidden])).toEqual([
      ['List', false],
      ['Old', true],
    ]);
    expect(sheets[0]).toMatchObject({
      cells: [
        ['job', 'tag', 'kind', 'rating_a', 'impedance_percent'],
        ['J-1', 'SVC', 'service', '200'],
        ['J-2', '2026-03-11', 'panel', '13.8 kA'],
        ['J-2', 'X', 'panel', '#DIV/0!'],
      ],
      lines: [1, 2, 5, 6],
      hiddenRows: [3, 4],
      hiddenColumns: [{ letters: 'F', text: 'note' }],
      merged: [{ line: 2, lastLine: 4, column: 0, text: 'J-1' }],
    });
    expect([...(sheets[0]?.dates ?? [])]).toEqual([[1, [5]]]);
  });
});
