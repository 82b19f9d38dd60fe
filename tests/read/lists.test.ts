import { saidOf } from '../told.js';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { OWNER_LANGUAGE_CODES } from '../../src/words/languages.js';
import { SettingsSchema, defaultSettings } from '../../src/model/settings.js';
import { readListContents, readLists, readListText, type ReadResult } from '../../src/read/list/lists.js';
import { codes, plainJob, read } from './plain.js';

const settings = defaultSettings();

describe("the language of the owner's sheet", () => {
  it('is to be confirmed, once, where the sheet is written in no such language', () => {
    const { jobs } = read('job,owner_language,tag,kind\nJ,xx,A,array\nJ,xx,B,battery\nK,es-MX,C,battery\n');
    expect(jobs.map((j) => j.facts.owner_language?.value)).toEqual(['xx', 'es-mx']);
    expect(jobs[1]?.items).toEqual([]);
    expect(jobs[0]?.items).toHaveLength(1);
    expect(jobs[0]?.items[0]).toMatchObject({
      code: 'cell/language-unknown',
      severity: 'confirm',
      who: 'office',
      file: 'list.csv',
      line: 2,
      column: 'owner_language',
    });
    expect(saidOf(jobs[0]?.items[0])).toMatchObject({
      found: 'xx',
      expected: OWNER_LANGUAGE_CODES.join(' or '),
    });
  });
});

describe('a row', () => {
  it('carries its facts with file, line, heading and the cell as typed', () => {
    const { jobs } = read('Job,Tag,Type,Cable length (ft)\nJ-1, CC-1 ,Charge Controller,100\n');
    const row = jobs[0]?.rows[0];
    expect(row?.facts.run_length).toEqual({
      value: [30.48],
      text: '100',
      origin: { from: 'list', file: 'list.csv', line: 2, column: 'Cable length (ft)' },
    });
    expect(row?.facts.tag).toMatchObject({ value: 'CC-1', text: ' CC-1 ' });
    expect(row?.facts.kind).toMatchObject({
      value: 'charge-controller',
      text: 'Charge Controller',
      origin: { column: 'Type' },
    });
    expect(row?.sheet.headings).toEqual({
      job: 'Job',
      tag: 'Tag',
      kind: 'Type',
      run_length: 'Cable length (ft)',
    });
    expect(row?.unreadable.size).toBe(0);
  });

  it('of several lines has the line of its first', () => {
    const { jobs } = read('job,tag,kind,description\nJ,A,array,"one\ntwo\nthree"\nJ,B,battery,\n');
    expect(jobs[0]?.rows.map((r) => r.line)).toEqual([2, 5]);
  });

  it('with a wrong cell has one item, no fact, and is asked nothing more', () => {
    const result = read('job,tag,kind,quantity\nJ,A,array,2.5\n');
    const [job] = result.jobs;
    expect(job?.rows[0]?.facts.quantity).toBeUndefined();
    expect([...(job?.rows[0]?.unreadable ?? [])]).toEqual(['quantity']);
    expect(job?.items).toHaveLength(1);
    expect(job?.items[0]).toMatchObject({
      code: 'cell/wrong',
      severity: 'conflict',
      equipment: 'A',
      file: 'list.csv',
      line: 2,
      column: 'quantity',
      who: 'designer',
    });
    expect(saidOf(job?.items[0]).found).toBe('2.5');
  });

  it('without a kind is missing it', () => {
    const result = read('job,tag,kind\nJ,A,\nJ,B,tbd\n');
    expect(result.jobs[0]?.items.map((i) => [i.code, i.severity, i.equipment, i.column])).toEqual([
      ['row/kind-missing', 'missing', 'A', 'kind'],
      ['row/kind-missing', 'missing', 'B', 'kind'],
    ]);
    expect(result.jobs[0]?.rows[0]?.unreadable.has('kind')).toBe(true);
  });

  it('without a tag is kept under a stand-in that says its line', () => {
    const result = read('job,tag,kind\nJ,,array\n');
    expect(result.jobs[0]?.rows[0]?.facts.tag?.value).toBe('row-2');
    expect(result.jobs[0]?.items.map((i) => [i.code, i.equipment])).toEqual([['row/tag-missing', 'row-2']]);
  });

  it('with a cell too many keeps its tag only', () => {
    const result = read('job,tag,kind,place\nJ,A,array,Hut, north\n');
    expect(codes(result)).toEqual(['row/cells-surplus:2']);
    expect(Object.keys(result.jobs[0]?.rows[0]?.facts ?? {})).toEqual(['tag']);
    expect(result.jobs[0]?.rows[0]?.unreadable.has('place')).toBe(true);
  });

  it('keeps what is typed twice apart: two rows of one tag are two rows', () => {
    expect(read('job,tag,kind\nJ,A,array\nJ,A,array\n').jobs[0]?.rows).toHaveLength(2);
  });
});

describe('a bare number takes the unit', () => {
  const list =
    'job,tag,kind,run_length,basis,lowest_temp\nN,A,array,100,,14\nI,A,array,100,,14\nI,B,panel,,IEC,\n';
  const lengths = (result: ReadResult): unknown[] =>
    result.jobs.map((j) => [j.job, j.rows[0]?.facts.run_length?.value, j.facts.lowest_temp?.value]);
  it("of its job's basis, on whatever row that stands", () => {
    expect(lengths(read(list))).toEqual([
      ['I', [100], 14],
      ['N', [30.48], 14],
    ]);
  });
  it('of the settings where they say so', () => {
    const metric = SettingsSchema.parse({ units: { length: 'm', temperature: 'F' } });
    expect(lengths(read(list, { settings: metric }))).toEqual([
      ['I', [100], -10],
      ['N', [100], -10],
    ]);
  });
  it("of the settings' basis where the job states none", () => {
    expect(lengths(read(list, { settings: SettingsSchema.parse({ basis: 'iec' }) }))).toEqual([
      ['I', [100], 14],
      ['N', [100], 14],
    ]);
  });
});

describe('jobs', () => {
  it('of one file stand in natural order', () => {
    expect(read('job,tag,kind\nJ-10,A,array\nJ-2,A,array\nJ-1,A,array\n').jobs.map((j) => j.job)).toEqual([
      'J-1',
      'J-2',
      'J-10',
    ]);
  });
  it('are compared exactly, trimmed', () => {
    expect(
      read('job,tag,kind\nJ-1,A,array\n J-1 ,B,array\nj-1,C,array\n').jobs.map((j) => [j.job, j.rows.length]),
    ).toEqual([
      ['j-1', 1],
      ['J-1', 2],
    ]);
  });
  it('without a column are the file, without its ending', () => {
    const options = { settings };
    expect(readListText('lists/UF 7.b.CSV', 'tag,kind\nA,array\n', options).jobs[0]?.job).toBe('UF 7.b');
    expect(readListText('-', 'tag,kind\nA,array\n', options).jobs[0]?.job).toBe('stdin');
    expect(readListText('-', 'tag,kind\nA,array\n', { ...options, stdinJob: 'J-9' }).jobs[0]?.job).toBe(
      'J-9',
    );
  });
  it('of two files are one job', () => {
    const result = readListContents(
      [
        { name: 'a.csv', content: 'job,tag,kind\nJ,A,array\n' },
        { name: 'b.csv', content: 'tag,job,kind\nB,J,battery\n' },
      ],
      { settings },
    );
    expect(result.jobs.map((j) => j.rows.map((r) => [r.sheet.file, r.facts.tag?.value]))).toEqual([
      [
        ['a.csv', 'A'],
        ['b.csv', 'B'],
      ],
    ]);
  });
  it('whose rows contradict each other name both lines, and keep the first', () => {
    const result = read(
      'job,tag,kind,lowest_temp (C),job_name\nJ,A,array,-12,Elm\nJ,B,array,-12.0,Elm\nJ,C,array,-15,Elm\nJ,D,array,-15,Elm\n',
    );
    expect(result.jobs[0]?.facts.lowest_temp?.value).toBe(-12);
    expect(result.jobs[0]?.items).toHaveLength(1);
    expect(result.jobs[0]?.items[0]).toMatchObject({
      code: 'job/contradiction',
      line: 4,
      column: 'lowest_temp (C)',
    });
    expect(saidOf(result.jobs[0]?.items[0])).toMatchObject({ found: '-15', expected: '-12' });
    expect(saidOf(result.jobs[0]?.items[0]).message).toContain('list.csv, line 2');
  });
  it('whose fact is wrong on each row say it once', () => {
    const result = read('job,tag,kind,lowest_temp\nJ,A,array,cold\nJ,B,array,cold\nJ,C,array,cold\n');
    expect(codes(result)).toEqual(['cell/wrong:2']);
    expect(result.jobs[0]?.unreadable.has('lowest_temp')).toBe(true);
  });
  it('written once are taken from above, with one item; among repeated ids a blank is missing', () => {
    expect(codes(read('job,tag,kind\nJ,A,array\n,B,array\nK,A,array\n,B,array\n'))).toEqual([
      'row/job-from-above:3',
    ]);
    expect(codes(read('job,tag,kind\nJ,A,array\nJ,B,array\n,C,array\nK,A,array\n'))).toEqual([
      'row/job-missing:4',
    ]);
  });
  it('above the first id are the file, with one item', () => {
    const result = read('job,tag,kind\n,A,array\n,B,array\nK,A,array\n');
    expect(result.jobs.map((j) => [j.job, j.rows.length])).toEqual([
      ['K', 1],
      ['list', 2],
    ]);
    expect(codes(result)).toEqual(['row/job-missing:2']);
  });
  it('may be stated on a row of their own; without any equipment that is missing', () => {
    const result = read('job,job_name,tag,kind\nJ,Elm,,\nJ,,A,array\nK,Oak,,\n');
    expect(result.jobs.map((j) => [j.job, j.facts.job_name?.value, j.rows.length])).toEqual([
      ['J', 'Elm', 1],
      ['K', 'Oak', 0],
    ]);
    expect(codes(result)).toEqual(['job/no-rows:4']);
  });
});

describe('job facts', () => {
  const list = { name: 'list.csv', content: 'job,tag,kind,lowest_temp (C)\nJ,A,array,-12\nK,A,array,\n' };
  const withFacts = (content: string): ReadResult =>
    readListContents([list], { settings }, { name: 'facts.csv', content });
  it('come in, and say where from', () => {
    const result = withFacts('job,basis,lowest_temp (F)\nJ,iec,10.4\nK,nec-2020,5\n');
    expect(codes(result)).toEqual([]);
    expect(result.jobs.map((j) => j.facts.basis?.value)).toEqual(['iec', 'nec-2020']);
    expect(result.jobs[1]?.facts.lowest_temp).toMatchObject({
      value: -15,
      origin: { from: 'job-facts', file: 'facts.csv', line: 3 },
    });
  });
  it('decide what a bare length is', () => {
    const bare = { name: 'l.csv', content: 'job,tag,kind,run_length\nJ,A,array,100\n' };
    const result = readListContents([bare], { settings }, { name: 'f.csv', content: 'job,basis\nJ,iec\n' });
    expect(result.jobs[0]?.rows[0]?.facts.run_length?.value).toEqual([100]);
  });
  it('that a list states otherwise are a conflict that names both', () => {
    const result = withFacts('job,lowest_temp (C)\nJ,-20\n');
    expect(result.jobs[0]?.facts.lowest_temp?.value).toBe(-12);
    expect(result.jobs[0]?.items[0]).toMatchObject({ code: 'job/contradiction', file: 'facts.csv', line: 2 });
    expect(saidOf(result.jobs[0]?.items[0]).message).toContain('list.csv, line 2');
  });
  it('of a job that no list names are said', () => {
    expect(withFacts('job,basis\nX,iec\n').items.map((i) => [i.code, i.severity])).toEqual([
      ['job-facts/unknown-job', 'confirm'],
    ]);
  });
  it('without a job column cannot be read', () => {
    expect(withFacts('basis,lowest_temp\niec,-3\n').unreadable.map((i) => i.code)).toEqual([
      'job-facts/no-job-column',
    ]);
  });
});

describe('faults of a whole list', () => {
  it('are every job of it', () => {
    const result = read('job,tag,kind,Qantity\nJ,A,array,4\nK,A,array,4\n');
    expect(result.jobs.map((j) => j.items.map((i) => [i.code, i.severity]))).toEqual([
      [['heading/near', 'conflict']],
      [['heading/near', 'conflict']],
    ]);
  });
  it('two headings for the job leave no job to be told', () => {
    expect(read('job,Project,tag,kind\nJ,K,A,array\n').unreadable.map((i) => i.code)).toEqual([
      'heading/same-field',
    ]);
  });
  it('two headings for a field leave it unread on every row, said once', () => {
    const result = read('job,tag,kind,Voc,voc_stc\nJ,A,array,40,41\nJ,B,array,40,40\n');
    expect(codes(result)).toEqual(['heading/same-field:1']);
    expect(result.jobs[0]?.rows.map((r) => [r.facts.voc_stc, r.unreadable.has('voc_stc')])).toEqual([
      [undefined, true],
      [undefined, true],
    ]);
  });
  it('two headings for the tag are said once, not for each row', () => {
    const result = read('job,tag,Designation,kind\nJ,A,a,array\nJ,B,b,array\n');
    expect(codes(result)).toEqual(['heading/same-field:1']);
  });
  test.each([
    ['', 'file/empty'],
    [' \n \n', 'file/empty'],
    ['a,b,c\n1,2,3\n', 'heading/none'],
    ['SVC,service\nMP,panel\n', 'heading/none'],
    ['job,tag,kind\n', 'file/no-rows'],
    ['PK\u0003\u0004xyz', 'workbook/broken'],
    ['%PDF-1.xyz', 'file/not-text'],
  ])('%j cannot be read: %s', (text, code) => {
    const result = readListText('list.csv', Buffer.from(text), { settings });
    expect(result.unreadable.map((i) => i.code)).toEqual([code]);
    expect(result.jobs).toEqual([]);
  });
});

describe('what is no row is left out, and said', () => {
  const leftOut = (result: ReadResult): unknown => result.understood[0]?.leftOut.map((l) => l.line);
  it('totals and notes', () => {
    const result = read(
      'tag,kind,quantity,run_length\nA,array,2,10 m\nSubtotal,,2,\nB,battery,1,4 m\n,,3,14\nNote: as drawn,,,\n',
    );
    expect(leftOut(result)).toEqual([3, 5, 6]);
    expect(codes(result)).toEqual(['file/rows-left-out:3', 'row/figures-left-out:3']);
    expect(saidOf(result.items[0]).message).toContain('3 lines were taken');
    expect(saidOf(result.items[0]).message).toContain('lines 3, 5, 6');
    expect(saidOf(result.jobs[0]?.items[0]).message).toContain('2 rows have no tag and no kind');
    expect(saidOf(result.jobs[0]?.items[0]).message).toContain('lines 3, 5;');
    expect(result.jobs[0]?.rows).toHaveLength(2);
  });
  it('and a sentence under the tags, whatever letter it begins with', () => {
    const result = read('tag,kind,run_length\nA,array,10 m\nAll lengths are in metres,,\n');
    expect(leftOut(result)).toEqual([3]);
    expect(codes(result)).toEqual(['file/rows-left-out:3']);
  });
  it('but figures between rows have lost their names, and are asked for them', () => {
    const result = read('tag,kind,quantity,run_length\nA,array,2,10 m\n,,3,14 m\nB,battery,1,4 m\n');
    expect(leftOut(result)).toEqual([]);
    expect(codes(result)).toEqual(['row/tag-missing:3', 'row/kind-missing:3']);
  });
  it('and a row that has a tag of such a name is a row', () => {
    const result = read('tag,kind\nTotal,load\nNotes,panel\nTotaliser,\n');
    expect(result.jobs[0]?.rows.map((r) => r.facts.tag?.value)).toEqual(['Total', 'Notes', 'Totaliser']);
  });
  it('a line of units is one only where units may stand', () => {
    const units = read('tag,kind,run_length,Weight\n,,ft,kg\nA,array,100,20\n');
    expect(units.understood[0]?.unitsLine).toBe(2);
    expect(units.jobs[0]?.rows.map((r) => r.facts.run_length?.value)).toEqual([[30.48]]);
    const row = read('tag,kind,run_length\nA,,\nB,array,3 m\n');
    expect(row.understood[0]?.unitsLine).toBe(0);
    expect(row.jobs[0]?.rows).toHaveLength(2);
  });
});

describe('headings of the list', () => {
  it('that are not known are named once, with the nearest field as a hint', () => {
    const result = read('tag,kind,Length (ft),Colour\nA,array,100,blue\n');
    expect(result.items.map((i) => [i.code, i.severity, i.column])).toEqual([
      ['heading/unknown', 'confirm', 'Colour'],
    ]);
    expect(result.jobs[0]?.rows[0]?.facts.run_length).toBeUndefined();
    const asked = result.jobs[0]?.items ?? [];
    expect(asked.map((i) => [i.code, i.severity, i.column])).toEqual([
      ['heading/near', 'conflict', 'Length (ft)'],
    ]);
    expect(saidOf(asked[0]).hint).toContain('run_length');
  });
  it('that may mean a field are no question where another heading states it, or where it decides nothing', () => {
    const result = read('tag,kind,Cable length (ft),Length,Paint\nA,array,100,2,Inventa\n');
    expect(result.items.map((i) => [i.code, i.column])).toEqual([
      ['heading/unknown', 'Length'],
      ['heading/unknown', 'Paint'],
    ]);
    expect(result.jobs[0]?.items).toEqual([]);
  });
  it('that two fields were joined to, beside a blank one, have lost what stood between them', () => {
    const joined = read('tag,kind,voc_stc (V)isc_stc (A),\nA,array,40,10\n');
    expect(joined.jobs[0]?.items.map((i) => i.code)).toEqual(['heading/two-fields']);
    const single = read('tag,kind,jobtype,place\nA,array,40,Shed\n');
    expect(single.jobs[0]?.items).toEqual([]);
  });
  it('of several lines are shown on one', () => {
    expect(
      read('tag,kind,"Cable\nlength\n(ft)"\nA,array,100\n').jobs[0]?.rows[0]?.facts.run_length?.origin,
    ).toMatchObject({ line: 4, column: 'Cable length (ft)' });
  });
  it('without a text, over cells that say something, are named', () => {
    expect(read('tag,kind,,\nA,array,x,\n').items.map((i) => [i.code, i.line])).toEqual([
      ['heading/blank', 2],
    ]);
  });
});

describe('dialect', () => {
  const list = 'job;tag;kind;run_length (m)\nJ;A;array;1,234\n';
  it('by flag goes before the column map, and before what is found', () => {
    expect(codes(read(list))).toEqual(['cell/wrong:2']);
    const map = { dialect: { decimal: '.' as const } };
    expect(read(list, { columns: map }).jobs[0]?.rows[0]?.facts.run_length?.value).toEqual([1234]);
    expect(
      read(list, { columns: map, dialect: { decimal: ',' } }).jobs[0]?.rows[0]?.facts.run_length?.value,
    ).toEqual([1.234]);
  });
  it('can name the line of the heading', () => {
    const text = 'tag,kind,place\ntag,kind,run_length (m)\nA,array,4\n';
    expect(read(text).jobs[0]?.rows[0]?.facts.run_length).toBeUndefined();
    expect(read(text, { dialect: { headingLine: 2 } }).jobs[0]?.rows[0]?.facts.run_length?.value).toEqual([
      4,
    ]);
  });
  it('of another source, stated by a column map, gives way to what the list shows: its decimal mark too', () => {
    const columns = { dialect: { delimiter: ';', decimal: ',', headingLine: 3 } } as const;
    const text = 'tag,kind,run_length (m)\nA,array,1.250\nB,array,7.5\n';
    const result = read(text, { columns });
    expect(result.jobs[0]?.rows.map((row) => row.facts.run_length?.value)).toEqual(
      read(text).jobs[0]?.rows.map((row) => row.facts.run_length?.value),
    );
    expect(result.understood[0]).toMatchObject({ delimiter: ',', headingLine: 1 });
    expect(result.understood[0]?.decidedBy).toMatchObject({ delimiter: 'its text', headingLine: 'its text' });
    // What a flag states holds.
    expect(read(text, { columns, dialect: { headingLine: 3 } }).jobs).toEqual([]);
  });
  it('is shown as it was understood', () => {
    const { understood } = read('sep=;\nTag;Type;Colour;Cable length (m)\nA;array;blue;4\n\nTotal;;;4\n');
    expect(understood).toMatchObject([
      {
        file: 'list.csv',
        encoding: 'utf-8',
        delimiter: ';',
        headingLine: 2,
        unitsLine: 0,
        rows: 1,
        leftOut: [{ line: 5, text: 'Total 4' }],
      },
    ]);
    expect(understood[0]?.columns.map((c) => [c.heading, c.field, c.how, c.unit, c.samples])).toEqual([
      ['Tag', 'tag', 'name', null, ['A']],
      ['Type', 'kind', 'alias', null, ['array']],
      ['Colour', null, 'unknown', null, ['blue']],
      ['Cable length (m)', 'run_length', 'alias', 'm', ['4']],
    ]);
  });
});

describe('files and folders', () => {
  const at = mkdtempSync(join(tmpdir(), 'shuntbook-lists-'));
  const path = (name: string): string => join(at, name);
  beforeAll(() => {
    mkdirSync(path('jobs/below'), { recursive: true });
    mkdirSync(path('empty'));
    writeFileSync(path('jobs/b-10.csv'), 'tag,kind\nA,array\n');
    writeFileSync(path('jobs/b-2.TSV'), 'tag\tkind\nA\tarray\n');
    writeFileSync(path('jobs/notes.txt'), 'tag|kind\nA|array\n');
    writeFileSync(path('jobs/library.csv'), 'maker,model,kind\nM,N,array\n');
    writeFileSync(path('jobs/photo.png'), 'x');
    writeFileSync(path('jobs/below/c.csv'), 'tag,kind\nA,array\n');
    writeFileSync(path('jobs/facts.csv'), 'job,basis\nb-2,iec\n');
    writeFileSync(path('broken.csv'), '');
  });
  afterAll(() => {
    rmSync(at, { recursive: true });
  });

  it('a folder gives its lists, not those below it, nor the files that are no lists', async () => {
    const result = await readLists({
      lists: [path('jobs')],
      exclude: [path('jobs/library.csv')],
      jobFacts: path('jobs/facts.csv'),
      settings,
    });
    expect(result.jobs.map((j) => [j.job, j.sheet.file])).toEqual([
      ['b-2', 'b-2.TSV'],
      ['b-10', 'b-10.csv'],
      ['notes', 'notes.txt'],
    ]);
    expect(result.jobs[0]?.facts.basis?.value).toBe('iec');
    expect(result.unreadable).toEqual([]);
  });
  it('a file named twice is read once', async () => {
    const result = await readLists({
      lists: [path('jobs/b-10.csv'), join(at, 'jobs', '.', 'b-10.csv')],
      settings,
    });
    expect(result.jobs[0]?.rows).toHaveLength(1);
  });
  it('what cannot be read does not keep the rest from being read', async () => {
    const result = await readLists({
      lists: [path('gone.csv'), path('empty'), path('broken.csv'), path('jobs/b-10.csv')],
      jobFacts: path('gone-too.csv'),
      settings,
    });
    expect(result.unreadable.map((i) => [i.code, i.file])).toEqual([
      ['file/not-there', 'gone.csv'],
      ['file/folder-without-lists', 'empty'],
      ['file/not-there', 'gone-too.csv'],
      ['file/empty', 'broken.csv'],
    ]);
    expect(result.jobs).toHaveLength(1);
  });
  it('standard input is a list like any other', async () => {
    const stdin = (): Promise<Uint8Array> => Promise.resolve(Buffer.from('tag,kind\nA,array\n'));
    const result = await readLists({ lists: ['-'], stdin, stdinJob: 'J-1', settings });
    expect(result.jobs.map((j) => [j.job, j.rows[0]?.sheet.file])).toEqual([['J-1', '-']]);
  });
});

it('gives the same whatever the order of the columns', () => {
  const a = read('job,tag,kind,place\nJ,A,array,Hut\n').jobs.map(plainJob);
  const b = read('place,kind,tag,job\nHut,array,A,J\n').jobs.map(plainJob);
  expect(a).toEqual(b);
});
