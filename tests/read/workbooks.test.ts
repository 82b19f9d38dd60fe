import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  odsParts,
  odsTable,
  sheetData,
  xlsxParts,
  zipOf,
  type GridCell,
  type SheetToWrite,
} from '../../bench/workbooks.mjs';
import { EXIT } from '../../src/model/exit-status.js';
import { Failure } from '../../src/model/failure.js';
import type { OpenItem } from '../../src/model/open-item.js';
import { defaultSettings } from '../../src/model/settings.js';
import { readCatalogueText } from '../../src/read/company/catalogue.js';
import { readLibraryText } from '../../src/read/company/library.js';
import { findCompanyFiles } from '../../src/read/file/find.js';
import { readListContents, readLists, readListText, type ReadResult } from '../../src/read/list/lists.js';
import type { ListOptions } from '../../src/read/list/list-options.js';
import { saidOf } from '../told.js';
import { codes, itemsOf, plainJob, read } from './plain.js';

const settings = defaultSettings();

type Grid = readonly (readonly GridCell[])[];

const sheet = (name: string, grid: Grid, more: Partial<SheetToWrite> = {}): SheetToWrite => ({
  name,
  content: sheetData(grid),
  ...more,
});
const xlsx = (...sheets: SheetToWrite[]): Buffer => zipOf(xlsxParts(sheets, { formats: ['d-mmm', '0.00%'] }));
const readBook = (content: Uint8Array, options: Partial<ListOptions> = {}, name = 'list.xlsx'): ReadResult =>
  readListText(name, content, { settings, ...options });

const told = (item: OpenItem | undefined): string => String(saidOf(item).message);

const ROWS: Grid = [
  ['tag', 'kind', 'connects_to', 'run_length (ft)', 'ac_in'],
  ['SVC', 'service', null, null, '120/240'],
  ['MP', 'panel', 'SVC', 30.5, '120/240'],
];
/** The same with a job column. */
const withJob = (job: string): Grid => ROWS.map((row, r) => [r === 0 ? 'job' : job, ...row]);
const asCsv = (grid: Grid): string => grid.map((row) => row.map((cell) => cell ?? '').join(',')).join('\n');

describe('a sheet', () => {
  it('says what a CSV of it says, and is cited by file, sheet and row', () => {
    const [job] = readBook(xlsx(sheet('Sheet1', withJob('J')))).jobs;
    const [twin] = read(asCsv(withJob('J'))).jobs;
    expect(job && plainJob(job)).toEqual(twin && plainJob(twin));
    expect(job?.rows[1]?.facts.run_length).toEqual({
      value: [30.5 * 0.3048],
      text: '30.5',
      origin: { from: 'list', file: 'list.xlsx!Sheet1', line: 3, column: 'run_length (ft)' },
    });
  });

  it('of an .ods is read in the same way, whatever the file is called', () => {
    const bytes = zipOf(odsParts(odsTable('Sheet1', withJob('J'))));
    const [twin] = read(asCsv(withJob('J'))).jobs;
    for (const name of ['list.ods', 'list.csv', '-']) {
      const [job] = readBook(bytes, {}, name).jobs;
      expect(job && plainJob(job)).toEqual(twin && plainJob(twin));
      expect(job?.rows[0]?.facts.tag?.origin).toMatchObject({ file: `${name}!Sheet1`, line: 2 });
    }
  });

  it('may have titles above its heading, units under it, notes and totals below', () => {
    const grid: Grid = [
      ['Equipment of the mill', null, null],
      [],
      ['tag', 'kind', 'run_length', 'connects_to'],
      [null, null, 'ft', null],
      ['SVC', 'service', null, null],
      ['MP', 'panel', 30, 'SVC'],
      ['Total', null, 30, null],
    ];
    const result = readBook(xlsx(sheet('S', grid)));
    expect(result.jobs[0]?.rows.map((row) => [row.line, row.facts.tag?.value])).toEqual([
      [5, 'SVC'],
      [6, 'MP'],
    ]);
    expect(result.jobs[0]?.rows[1]?.facts.run_length?.value).toEqual([30 * 0.3048]);
    expect(result.understood[0]).toMatchObject({
      file: 'list.xlsx!S',
      encoding: null,
      delimiter: null,
      headingLine: 3,
      unitsLine: 4,
    });
  });

  it('needs no decimal mark for its figures; texts in it may have commas', () => {
    const grid: Grid = [
      ['tag', 'kind', 'voc_stc', 'isc_stc'],
      ['A', 'array', 49.125, '10,5'],
      ['B', 'array', 1.234, '9,75'],
    ];
    for (const decimal of [undefined, ',', '.'] as const) {
      const rows = readBook(xlsx(sheet('S', grid)), { dialect: { decimal } }).jobs[0]?.rows ?? [];
      expect(rows.map((row) => row.facts.voc_stc?.value)).toEqual([49.125, 1.234]);
    }
  });

  it('tells percent as percent', () => {
    const grid: Grid = [
      ['tag', 'kind', 'impedance_percent'],
      ['T', 'transformer', '<c s="2"><v>0.0575</v></c>'],
    ];
    expect(readBook(xlsx(sheet('S', grid))).jobs[0]?.rows[0]?.facts.impedance_percent?.value).toBe(5.75);
  });

  it('is asked about where a tag, a job or a figure is stored as a date', () => {
    const date = '<c s="1"><v>46092</v></c>';
    const grid: Grid = [
      ['job', 'tag', 'kind', 'rating_a'],
      ['J', date, 'panel', 100],
      ['J', 'MP', 'panel', date],
    ];
    expect(codes(readBook(xlsx(sheet('S', grid))))).toEqual(['cell/wrong:2', 'cell/wrong:3']);
    const ofJob = itemsOf(
      readBook(
        xlsx(
          sheet('S', [
            ['job', 'tag', 'kind'],
            [date, 'MP', 'panel'],
          ]),
        ),
      ),
    );
    expect(ofJob).toEqual([
      expect.objectContaining({
        code: 'workbook/date-in-name',
        severity: 'conflict',
        line: 2,
        column: 'job',
      }),
    ]);
  });

  it('is asked about where a formula has no stored value, whatever the field', () => {
    const formula = '<c><f>B1*2</f></c>';
    const grid: Grid = [
      ['tag', 'kind', 'connects_to', 'run_length', 'place', 'outdoors'],
      [formula, formula, formula, formula, formula, formula],
    ];
    const result = readBook(xlsx(sheet('S', grid)));
    expect(codes(result)).toEqual(Array.from({ length: 6 }, () => 'cell/wrong:2'));
    const [item] = result.jobs[0]?.items ?? [];
    expect(`${told(item)} ${String(saidOf(item).found)}`).toContain('#unsaved formula =B1*2');
    expect(told(item)).toContain('no program has worked out');
  });

  it('has columns without a heading beside its table told', () => {
    const grid: Grid = [...ROWS.slice(0, 2), [...(ROWS[2] ?? []), 'a remark']];
    expect(codes(readBook(xlsx(sheet('S', grid))))).toEqual(['heading/blank:3']);
  });

  it('is hostile like any list', () => {
    const grid: Grid = [
      ['tag', 'kind', 'place'],
      ['A\u200bB', 'panel', '<c t="str"><v>a_x0007_b</v></c>'],
    ];
    const result = readBook(xlsx(sheet('S', grid)));
    expect(result.jobs[0]?.rows[0]?.facts.tag?.value).toBe('AB');
    expect(codes(result)).toEqual(['file/unseen-marks:2', 'file/control-characters:2']);
  });

  it('has no more rows than a list may have', () => {
    const row =
      '<table:table-row table:number-rows-repeated="300001"><table:table-cell><text:p>A</text:p></table:table-cell></table:table-row>';
    const bytes = zipOf(odsParts(`<table:table table:name="T">${row}</table:table>`));
    expect(readBook(bytes).unreadable.map((i) => i.code)).toEqual(['file/too-many-rows']);
  });
});

describe('the job of a sheet without a job column', () => {
  it('is the file’s name where it is the only list in it', () => {
    const notes = sheet('Notes', [['Ask the owner about the shed']]);
    const result = readBook(xlsx(sheet('Equipment', ROWS), notes, sheet('Sheet3', [])), {}, 'UF-7.xlsx');
    expect(result.jobs.map((j) => j.job)).toEqual(['UF-7']);
    expect(result.items.map((i) => [i.code, i.severity, i.file])).toEqual([
      ['workbook/sheet-not-a-table', 'confirm', 'UF-7.xlsx!Notes'],
    ]);
    expect(result.unreadable).toEqual([]);
  });

  it('is the sheet’s name where the file has several', () => {
    const result = readBook(xlsx(sheet('UF-1', ROWS), sheet('UF-2', ROWS)));
    expect(result.jobs.map((j) => [j.job, j.rows.length])).toEqual([
      ['UF-1', 2],
      ['UF-2', 2],
    ]);
  });

  it('is asked about as a tag twice where two files list it', () => {
    const contents = [
      { name: 'a.xlsx', content: xlsx(sheet('S', withJob('J'))) },
      { name: 'b.csv', content: asCsv(withJob('J')) },
    ];
    const [job] = readListContents(contents, { settings }).jobs;
    expect(job?.rows.map((row) => row.sheet.file)).toEqual(['a.xlsx!S', 'a.xlsx!S', 'b.csv', 'b.csv']);
  });
});

describe('what isn’t shown', () => {
  const hiddenRow = ROWS.map((row) => [...row]);
  const content = `<cols><col min="5" max="5" hidden="1"/></cols>${sheetData(hiddenRow).replace('<row r="3">', '<row r="3" hidden="1">')}`;

  it('is said and not read', () => {
    const result = readBook(xlsx({ name: 'S', content }, sheet('Old', ROWS, { state: 'hidden' })));
    const [job, ...others] = result.jobs;
    expect(others).toEqual([]);
    expect(job?.job).toBe('list');
    expect(job?.rows.map((row) => row.facts.tag?.value)).toEqual(['SVC']);
    expect(job?.rows[0]?.facts.ac_in).toBeUndefined();
    expect(job?.items.map((i) => [i.code, i.severity, i.line, told(i)])).toEqual([
      ['workbook/rows-hidden', 'confirm', 3, 'A hidden row is not read: row 3.'],
      ['workbook/columns-hidden', 'confirm', 1, 'A hidden column is not read: E (ac_in).'],
    ]);
    expect(result.items.map((i) => [i.code, told(i)])).toEqual([
      ['workbook/sheets-hidden', 'A hidden sheet is not read: Old.'],
    ]);
  });

  it('is said where nothing else is there', () => {
    const result = readBook(xlsx(sheet('Old', ROWS, { state: 'hidden' })));
    expect(result.unreadable.map((i) => i.code)).toEqual(['file/empty']);
    expect(result.items.map((i) => i.code)).toEqual(['workbook/sheets-hidden']);
  });
});

describe('a merged cell', () => {
  const merged = (grid: Grid, ...refs: string[]): Buffer =>
    xlsx({
      name: 'S',
      content: `${sheetData(grid)}<mergeCells>${refs.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`,
    });

  it('is true of each row that it spans, which is said', () => {
    const grid: Grid = [
      ['All jobs of the week', null, null],
      ['job', 'tag', 'kind'],
      ['J-1', 'SVC', 'service'],
      [null, 'MP', 'panel'],
      ['J-2', 'SVC', 'service'],
      [null, 'MP', 'panel'],
    ];
    const { jobs } = readBook(merged(grid, 'A1:C1', 'A3:A4', 'A5:A6'));
    expect(jobs.map((j) => [j.job, j.rows.map((row) => row.facts.tag?.value)])).toEqual([
      ['J-1', ['SVC', 'MP']],
      ['J-2', ['SVC', 'MP']],
    ]);
    expect(jobs[0]?.items.map((i) => [i.code, i.line, i.column])).toEqual([
      ['workbook/cells-merged', 3, 'job'],
    ]);
  });

  it('of a heading or of units is none of a row', () => {
    const grid: Grid = [
      ['tag', 'kind', 'run_length'],
      [null, null, 'ft'],
      ['A', 'panel', 30],
    ];
    const { jobs } = readBook(merged(grid, 'A1:A2', 'B1:B2'));
    expect(jobs[0]?.rows.map((row) => row.facts.run_length?.value)).toEqual([[30 * 0.3048]]);
    expect(jobs[0]?.items).toEqual([]);
  });

  it('with a count may count all of its rows or each: that is asked', () => {
    const grid: Grid = [
      ['tag', 'kind', 'quantity'],
      ['A', 'array', 2],
      ['B', 'array', null],
    ];
    const [job] = readBook(merged(grid, 'C2:C3')).jobs;
    expect(job?.items.map((i) => [i.code, i.severity, i.line])).toEqual([
      ['workbook/count-merged', 'conflict', 2],
    ]);
  });
});

describe('a workbook that can’t be read', () => {
  it.each([
    ['list.xlsx', 'job,tag\n', 'workbook/broken'],
    ['list.ods', '', 'file/empty'],
    ['list.xlsm', '\u00d0\u00cf\u0011\u00e0', 'workbook/binary'],
    ['list.xls', '\u00d0\u00cf\u0011\u00e0', 'file/not-text'],
  ])('%s is one message', (name, bytes, code) => {
    const result = readBook(Buffer.from(bytes, 'latin1'), {}, name);
    expect(result.unreadable.map((i) => [i.code, i.file, i.line])).toEqual([[code, name, 1]]);
    expect(result.jobs).toEqual([]);
  });

  it('for want of a heading names its sheet', () => {
    const result = readBook(
      xlsx(
        sheet('S', [
          ['a', 'b'],
          ['c', 'd'],
        ]),
      ),
    );
    expect(result.unreadable.map((i) => [i.code, i.file])).toEqual([['heading/none', 'list.xlsx!S']]);
  });

  it('holds no rows', () => {
    expect(readBook(xlsx(sheet('S', ROWS.slice(0, 1)))).unreadable.map((i) => i.code)).toEqual([
      'file/no-rows',
    ]);
  });
});

describe('the company’s files as workbooks', () => {
  it('a library and a catalogue may have a sheet for each maker', () => {
    const library = readLibraryText(
      'library.xlsx',
      xlsx(
        sheet('One', [
          ['maker', 'model', 'kind', 'voc_stc'],
          ['Glimmerleaf', 'GL-1', 'array', 41.2],
        ]),
        sheet('Two', [
          ['maker', 'model', 'kind'],
          ['Tallowby', 'CT-1', 'charge-controller'],
          ['Glimmerleaf', 'GL-1', 'array'],
        ]),
      ),
      settings,
    );
    expect([...library.library.entries.values()].map((e) => [e.model, e.file, e.line])).toEqual([
      ['GL-1', 'library.xlsx!One', 2],
      ['CT-1', 'library.xlsx!Two', 2],
    ]);
    expect(library.items.map((i) => [i.code, i.file, told(i)])).toEqual([
      [
        'library/model-twice',
        'library.xlsx!Two',
        expect.stringContaining('on line 2 of library.xlsx!One already'),
      ],
    ]);
    const heading = ['part', 'channels', 'mcov_ac', 'up'];
    const parts = xlsx(
      sheet('AC', [heading, ['P-1', 2, 150, 700]]),
      sheet('More', [heading, ['P-2', 2, 320, 1200], ['P-1', 2, 150, 700]]),
    );
    const { catalogue } = readCatalogueText('catalogue.xlsx', parts);
    expect(catalogue.parts.map((p) => [p.part, p.mcovAc, p.file, p.line])).toEqual([
      ['P-1', 150, 'catalogue.xlsx!AC', 2],
      ['P-2', 320, 'catalogue.xlsx!More', 2],
    ]);
    expect(catalogue.items.map((i) => [i.code, told(i)])).toEqual([
      ['catalogue/part-twice', expect.stringContaining('on line 2 of catalogue.xlsx!AC already')],
    ]);
  });

  it('job facts are taken from each sheet', () => {
    const facts = xlsx(
      sheet('A', [
        ['job', 'basis'],
        ['J', 'iec'],
      ]),
      sheet('B', [
        ['job', 'lowest_temp'],
        ['J', -18],
      ]),
    );
    const result = readListContents(
      [{ name: 'l.csv', content: asCsv(withJob('J')) }],
      { settings },
      { name: 'facts.xlsx', content: facts },
    );
    expect(result.jobs[0]?.facts).toMatchObject({
      basis: { value: 'iec', origin: { file: 'facts.xlsx!A', line: 2 } },
      lowest_temp: { value: -18, origin: { file: 'facts.xlsx!B', line: 2 } },
    });
  });
});

describe('a folder', () => {
  let at = '';
  beforeAll(() => {
    at = mkdtempSync(join(tmpdir(), 'shuntbook-books-'));
  });
  afterAll(() => {
    rmSync(at, { recursive: true, force: true });
  });
  const folderOf = (name: string, files: Readonly<Record<string, string | Uint8Array>>): string => {
    const folder = join(at, name);
    mkdirSync(folder);
    for (const [file, content] of Object.entries(files)) writeFileSync(join(folder, file), content);
    return folder;
  };

  it('gives its workbooks, passes over those that are open, and names all else that it holds', async () => {
    const folder = folderOf('mixed', {
      'a.csv': asCsv(withJob('J-1')),
      'b.xlsx': xlsx(sheet('S', withJob('J-2'))),
      'C.ODS': zipOf(odsParts(odsTable('S', withJob('J-3')))),
      '~$b.xlsx': 'x',
      '.~lock.b.xlsx#': 'x',
      'old.xls': 'x',
      'plan of site.pdf': 'x',
      'settings.json': '{}',
    });
    const settingsFile = join(folder, 'settings.json');
    const result = await readLists({ lists: [folder], settings, exclude: [settingsFile] });
    expect(result.jobs.map((j) => j.job)).toEqual(['J-1', 'J-2', 'J-3']);
    expect(result.unreadable).toEqual([]);
    expect(result.items.map((i) => [i.code, i.severity, told(i)])).toEqual([
      [
        'file/not-a-list',
        'confirm',
        '2 files beside the lists aren’t read, by their endings: old.xls, plan of site.pdf.',
      ],
    ]);
  });

  it('has its catalogue and library found as workbooks, one of each', async () => {
    const folder = folderOf('company', {
      'list.csv': '',
      'catalogue.ods': '',
      'library.xlsx': '',
      'settings.json': '{}',
    });
    expect(await findCompanyFiles([folder], {})).toEqual({
      catalogue: join(folder, 'catalogue.ods'),
      library: join(folder, 'library.xlsx'),
      columns: undefined,
      settings: join(folder, 'settings.json'),
    });
    writeFileSync(join(folder, 'library.csv'), '');
    const failed = await findCompanyFiles([folder], {}).catch((error: unknown) => error);
    expect(failed).toBeInstanceOf(Failure);
    expect(failed).toMatchObject({
      exitStatus: EXIT.usage,
      note: {
        code: 'command/which-file',
        values: { option: 'library', names: ['library.csv', 'library.xlsx'] },
      },
    });
    expect(await findCompanyFiles([folder], { library: 'other.csv' })).toMatchObject({
      library: 'other.csv',
    });
  });
});
