import { saidOf } from '../told.js';
import { describe, expect, it, test } from 'vitest';
import { defaultSettings, SettingsSchema } from '../../src/model/settings.js';
import { readLibrary, readLibraryText, type Library } from '../../src/read/company/library.js';
import { readListText, type ReadResult } from '../../src/read/list/lists.js';

const settings = defaultSettings();
const LIBRARY = [
  'Manufacturer,Model,Type,Max DC voltage (V),DC inputs,description',
  'Tallowby,CT-57/150,charge-controller,150,1,Controller',
  'Glimmerleaf,GL-410,array,,,Module',
  'Glimmerleaf,GL-41.0,array,,,Another',
  '',
].join('\n');
const library: Library = readLibraryText('library.csv', LIBRARY).library;
const read = (
  rows: string,
  headings = 'job,tag,kind,maker,model,max_dc_voltage',
  known: Library | null = library,
): ReadResult =>
  readListText('list.csv', `${headings}\n${rows}\n`, {
    settings,
    ...(known === null ? {} : { library: known }),
  });

describe('the library fills in what a row does not state', () => {
  test.each(['Tallowby,CT-57/150', 'TALLOWBY,ct 57-150', 'Tallow by,CT57 150'])('%s', (typed) => {
    const [job] = read(`J,C,,${typed},`).jobs;
    expect(job?.items).toEqual([]);
    expect(job?.rows[0]?.facts.kind?.value).toBe('charge-controller');
    expect(job?.rows[0]?.facts.max_dc_voltage).toEqual({
      value: 150,
      text: '150',
      origin: { from: 'library', file: 'library.csv', line: 2, column: 'Max DC voltage (V)' },
    });
    expect(job?.rows[0]?.facts.description?.value).toBe('Controller');
  });

  test.each(['Tallowby,CT-57/15', 'Tallowby,CT-601/50', 'Tallow,CT-57/150', 'Tallowby,', ',CT-57/150'])(
    'but never for another model: %s',
    (typed) => {
      const [job] = read(`J,C,charge-controller,${typed},`).jobs;
      expect(job?.rows[0]?.facts.max_dc_voltage).toBeUndefined();
    },
  );

  it('tells 41.0 from 410', () => {
    expect(read('J,A,,Glimmerleaf,GL 41.0,').jobs[0]?.rows[0]?.facts.description?.value).toBe('Another');
    expect(read('J,A,,Glimmerleaf,GL410,').jobs[0]?.rows[0]?.facts.description?.value).toBe('Module');
  });

  it('never from a description', () => {
    const [job] = read('J,A,charge controller by Tallowby', 'job,tag,description').jobs;
    expect(job?.rows[0]?.facts.kind).toBeUndefined();
    expect(job?.items.map((i) => i.code)).toEqual(['row/kind-missing']);
  });
});

describe('the list wins, and a contradiction is shown', () => {
  it('a figure as something to confirm', () => {
    const [job] = read('J,C,charge-controller,Tallowby,CT-57/150,250').jobs;
    expect(job?.rows[0]?.facts.max_dc_voltage?.value).toBe(250);
    expect(job?.items).toHaveLength(1);
    expect(job?.items[0]).toMatchObject({
      code: 'library/overridden',
      severity: 'confirm',
      equipment: 'C',
      line: 2,
      column: 'max_dc_voltage',
    });
    expect(saidOf(job?.items[0])).toMatchObject({
      message: expect.stringContaining('library.csv, line 2') as string,
      found: '250',
      expected: '150',
    });
  });
  it('the kind as a conflict', () => {
    const [job] = read('J,C,battery,Tallowby,CT-57/150,').jobs;
    expect(job?.rows[0]?.facts.kind?.value).toBe('battery');
    expect(job?.items.map((i) => [i.code, i.severity, i.column])).toEqual([
      ['library/kind-contradicts', 'conflict', 'kind'],
    ]);
  });
  it('but not where both say the same otherwise', () => {
    expect(read('J,C,Charge controller,Tallowby,CT-57/150,0.15 kV').jobs[0]?.items).toEqual([]);
  });
  it('and a wrong cell is not mended by the library', () => {
    const [job] = read('J,C,charge-controller,Tallowby,CT-57/150,lots').jobs;
    expect(job?.rows[0]?.facts.max_dc_voltage).toBeUndefined();
    expect(job?.items.map((i) => i.code)).toEqual(['cell/wrong']);
  });
});

describe('models that the library lacks', () => {
  it('are listed once, with their jobs', () => {
    const rows =
      'K,A,array,Glimmerleaf,GL-999,\nJ,A,array,glimmerleaf,gl 999,\nJ,B,array,Glimmerleaf,GL-999,\nJ,C,battery,Zinnia,Z1,\nJ,D,load,,,';
    expect(read(rows).missingModels).toEqual([
      { maker: 'Glimmerleaf', model: 'GL-999', jobs: ['J', 'K'] },
      { maker: 'Zinnia', model: 'Z1', jobs: ['J'] },
    ]);
  });
  it('are all of them without a library', () => {
    expect(read('J,A,array,Glimmerleaf,GL-410,', undefined, null).missingModels).toHaveLength(1);
  });
  test.each([
    ['Glimmerleaf,GL-41O', 'Glimmerleaf GL-410'],
    ['Glimmer leaf,GL-401', 'Glimmerleaf GL-410'],
    ['Glimerleaf,GL-410', 'Glimmerleaf GL-410'],
    ['Gleamleaf Inc,GL-410', 'Glimmerleaf GL-410'],
  ])('%s is near %s, as a hint, once a job', (typed, near) => {
    const [job] = read(`J,A,array,${typed},\nJ,B,array,${typed},`).jobs;
    expect(job?.items.map((i) => [i.code, i.severity, i.line, saidOf(i).expected])).toEqual([
      ['library/near-miss', 'confirm', 2, near],
    ]);
  });
  it('have no hint where nothing is near', () => {
    expect(read('J,A,array,Zinnia,Z1,').jobs[0]?.items).toEqual([]);
  });
});

describe('the library itself', () => {
  it('names a row that it cannot use', () => {
    const { items, library: read } = readLibraryText(
      'library.csv',
      'maker,model,kind,max_dc_voltage\n,M,array,\nA,B,pie,\nA,b,array,\nC,D,array,1/2\n',
    );
    expect(items.map((i) => [i.code, i.line, i.column])).toEqual([
      ['library/model-missing', 2, ''],
      ['cell/wrong', 3, 'kind'],
      ['library/model-twice', 4, ''],
      ['cell/wrong', 5, 'max_dc_voltage'],
    ]);
    expect(read.entries.size).toBe(2);
  });
  it('takes bare lengths as a job of the settings would', () => {
    const length = (s = settings): unknown =>
      [...readLibraryText('l.csv', 'maker,model,lead_length\nA,B,2\n', s).library.entries.values()][0]?.facts
        .lead_length?.value;
    expect(length()).toBe(0.6096);
    expect(length(SettingsSchema.parse({ basis: 'iec' }))).toBe(2);
    expect(length(SettingsSchema.parse({ units: { length: 'm' } }))).toBe(2);
  });
  it('may hold a heading only: a library that is just begun', () => {
    expect(readLibraryText('l.csv', 'maker,model,kind\n')).toMatchObject({ items: [], unreadable: [] });
  });
  it('is not read on once a signal ends the reading', async () => {
    const ended = readLibrary('fixtures/demo/library.csv', undefined, AbortSignal.abort(new Error('ended')));
    await expect(ended).rejects.toThrow('ended');
  });
  it('that is not there says so', async () => {
    expect((await readLibrary('fixtures/lists/no-such-library.csv')).unreadable.map((i) => i.code)).toEqual([
      'file/not-there',
    ]);
  });
});
