import { utils, write } from '@e965/xlsx';
import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { safeCell } from '../../src/output/csv.js';
import { saysSame, unguarded } from '../../src/read/answers/cell-text.js';
import { readListContents, type ReadResult } from '../../src/read/list/lists.js';
import { told } from '../../src/words/messages/told.js';

const settings = defaultSettings();
const LIST =
  'job,basis,tag,kind,quantity,connects_to,run_length,voc_stc\n' +
  'J,nec-2023,SVC,service,,,,\n' +
  'J,nec-2023,INV,grid-tie-inverter,,SVC,10,\n' +
  'J,nec-2023,ARR,thing,0,INV,,41\n';
const HEADING = 'job,tag,field,code,found,answer,by,date\n';

function read(answers: string, list = LIST, more: readonly string[] = []): ReadResult {
  return readListContents([{ name: 'list.csv', content: list }], { settings }, undefined, {
    answers: [answers, ...more].map((content, i) => ({
      name: i === 0 ? 'answers.csv' : `answers-${i + 1}.csv`,
      content: HEADING + content,
    })),
  });
}

const codes = ({ items, jobs }: ReadResult): string[] =>
  [...items, ...jobs.flatMap((j) => j.items)].map((i) => `${i.code} ${i.file}:${i.line}`);
const row = ({ jobs }: ReadResult, tag: string) =>
  jobs.flatMap((j) => j.rows).find((r) => r.facts.tag?.value === tag);

describe('an answer', () => {
  it('to a blank cell is a fact that says who answered, when, and where that stands', () => {
    const result = read('J,ARR,run_length,fact/run-length,,100 ft,R. Example,2026-03-01\n');
    expect(row(result, 'ARR')?.facts.run_length).toEqual({
      value: [30.48],
      text: '100 ft',
      origin: {
        from: 'answer',
        by: 'R. Example',
        date: '2026-03-01',
        file: 'answers.csv',
        line: 2,
        column: 'answer',
      },
    });
  });

  it('settles a cell that could not be understood, with its item', () => {
    const before = read('');
    expect(codes(before)).toEqual(['cell/wrong list.csv:4', 'cell/wrong list.csv:4']);
    expect(row(before, 'ARR')?.typed).toEqual({ kind: 'thing', quantity: '0' });
    const result = read(
      'J,ARR,kind,cell/wrong,thing,array,R,2026-03-01\nJ,ARR,quantity,cell/wrong,0,1,R,2026-03-01\n',
    );
    expect(codes(result)).toEqual([]);
    expect(row(result, 'ARR')?.facts.kind?.value).toBe('array');
    expect(row(result, 'ARR')?.unreadable.size).toBe(0);
  });

  it('goes before what the list states, for a field that the list has no column for too', () => {
    const result = read(
      'J,ARR,voc_stc,x/y,41,49.5,R,2026-03-01\nJ,INV,dc_inputs,fact/dc-inputs,,2,R,2026-03-01\n',
    );
    expect(row(result, 'ARR')?.facts.voc_stc?.value).toBe(49.5);
    expect(row(result, 'INV')?.facts.dc_inputs?.value).toBe(2);
  });

  it('takes a bare length in the unit of its job', () => {
    const answer = 'J,ARR,run_length,,,100,R,2026-03-01\n';
    expect(row(read(answer), 'ARR')?.facts.run_length?.value).toEqual([30.48]);
    const iec = LIST.replaceAll('nec-2023', 'iec');
    expect(row(read(answer, iec), 'ARR')?.facts.run_length?.value).toEqual([100]);
  });

  it('about the job settles what its rows state differently, before anything is read by it', () => {
    const two = LIST.replace('J,nec-2023,ARR', 'J,iec,ARR');
    expect(codes(read('', two))).toContain('job/contradiction list.csv:4');
    const result = read('J,,basis,job/contradiction,nec-2023,iec,R,2026-03-01\n', two);
    expect(codes(result)).toEqual(['cell/wrong list.csv:4', 'cell/wrong list.csv:4']);
    expect(result.jobs[0]?.facts.basis?.value).toBe('iec');
    expect(row(result, 'INV')?.facts.run_length?.value).toEqual([10]);
  });

  it('outlives a list that is exported again in another order', () => {
    const again = LIST.split('\n').filter(Boolean);
    const turned = [again[0], again[3], again[2], again[1]].join('\n') + '\n';
    expect(
      row(read('J,ARR,run_length,,,100 ft,R,2026-03-01\n', turned), 'ARR')?.facts.run_length?.value,
    ).toEqual([30.48]);
  });

  it('is typed and checked as a cell: one that is wrong is an item with its own place', () => {
    const result = read('J,ARR,voc_stc,,41,lots,R,2026-03-01\n');
    const item = result.jobs[0]?.items.find((i) => i.file === 'answers.csv');
    expect(item).toMatchObject({ code: 'cell/wrong', line: 2, column: 'answer', equipment: 'ARR' });
    expect(row(result, 'ARR')?.facts.voc_stc?.value).toBe(41);
  });

  it('that knows nothing is none', () => {
    for (const nothing of ['', ' ', '?', 'unknown', 'TBD', '-'])
      expect(codes(read(`J,ARR,voc_stc,,41,${nothing},,\n`))).toEqual(codes(read('')));
  });

  it('without a name or a day is used, and said once a file', () => {
    const result = read('J,ARR,voc_stc,,41,42,,2026-03-01\nJ,INV,dc_inputs,,,2,R,1/3/26\n');
    expect(result.items.map((i) => [i.code, i.severity, told(i).message])).toEqual([
      ['answers/unsigned', 'confirm', '2 answers don’t say who gave them, or when; papers can’t either.'],
    ]);
    expect(row(result, 'ARR')?.facts.voc_stc?.value).toBe(42);
  });
});

describe('an answer that can’t be used is a conflict of its job', () => {
  const only = (result: ReadResult) => {
    const [item, ...others] = [...result.items, ...result.jobs.flatMap((j) => j.items)].filter(
      (i) => i.code !== 'cell/wrong',
    );
    expect(others).toEqual([]);
    expect(item?.severity).toBe('conflict');
    return item;
  };

  it('where its cell has changed since: the cell is used, and both places are named', () => {
    const result = read('J,ARR,voc_stc,,40,49,R,2026-03-01\n');
    const item = only(result);
    expect(item).toMatchObject({
      code: 'answers/cell-changed',
      file: 'answers.csv',
      line: 2,
      equipment: 'ARR',
    });
    expect(item && told(item).message).toBe(
      'The answer "49" for voc_stc of ARR was given when the cell was "40"; now it is "41" (list.csv, line 4, voc_stc): the cell is used, not the answer.',
    );
    expect(row(result, 'ARR')?.facts.voc_stc?.value).toBe(41);
  });

  it('but not where the list says the same by now', () => {
    expect(codes(read('J,ARR,voc_stc,,,41 V,R,2026-03-01\n'))).toEqual(codes(read('')));
  });

  it('where its row is gone', () => {
    expect(only(read('J,BAT,battery_voltage,,,48 V,R,2026-03-01\n'))).toMatchObject({
      code: 'answers/row-gone',
      line: 2,
    });
  });

  it('where its job is gone, of no job', () => {
    expect(read('X,BAT,battery_voltage,,,48 V,R,2026-03-01\n').items).toMatchObject([
      { code: 'answers/no-such-job', file: 'answers.csv', line: 2 },
    ]);
  });

  it('where another answer says otherwise, in whichever file; the first is used', () => {
    const result = read('J,ARR,voc_stc,,41,49,R,2026-03-01\n', LIST, ['J,ARR,voc_stc,,41,50,S,2026-03-02\n']);
    expect(only(result)).toMatchObject({ code: 'answers/differ', file: 'answers-2.csv', line: 2 });
    expect(row(result, 'ARR')?.facts.voc_stc?.value).toBe(49);
    expect(codes(read('J,ARR,voc_stc,,41,49,R,2026-03-01\nJ,ARR,voc_stc,,41,49 V,R,2026-03-01\n'))).toEqual(
      codes(read('')),
    );
  });

  it.each([
    ['names a tag', 'J,ARR,tag,site/tag-twice,ARR,ARR-2,R,2026-03-01\n'],
    ['names no field', 'J,ARR,,site/mixed-sources,,yes,R,2026-03-01\n'],
    ['names what is no field', 'J,ARR,colour,,,red,R,2026-03-01\n'],
    ['names no row', 'J,,voc_stc,,,41,R,2026-03-01\n'],
  ])('where it %s', (_, line) => {
    expect(only(read(line))?.code).toBe('answers/not-taken');
  });

  it('where it accepts what is missing', () => {
    expect(only(read('J,ARR,run_length,fact/run-length,,accept,R,2026-03-01\n'))?.code).toBe(
      'answers/needs-a-value',
    );
  });

  it('where it accepts of a row that is gone', () => {
    expect(only(read('J,BAT,dc_grounding,default/used,,accept,R,2026-03-01\n'))?.code).toBe(
      'answers/row-gone',
    );
  });
});

describe('a file of answers', () => {
  it('is several rows’ answer in one line, the tags with semicolons between', () => {
    const result = read('J,INV; ARR,outdoors,default/used,,no,R,2026-03-01\n');
    expect([row(result, 'INV'), row(result, 'ARR')].map((r) => r?.facts.outdoors?.value)).toEqual([
      false,
      false,
    ]);
  });

  it('keeps apart a tag that holds a semicolon itself', () => {
    const list = LIST.replaceAll('INV', '"A; B"');
    expect(row(read('J,A; B,dc_inputs,,,2,R,2026-03-01\n', list), 'A; B')?.facts.dc_inputs?.value).toBe(2);
  });

  it('without its columns is no file of answers', () => {
    const result = readListContents([{ name: 'list.csv', content: LIST }], { settings }, undefined, {
      answers: [{ name: 'a.csv', content: 'job,tag,answer\nJ,ARR,x\n' }],
    });
    expect(result.unreadable).toMatchObject([{ code: 'answers/no-columns', file: 'a.csv', line: 1 }]);
  });

  it('gives the rows that it names twice the answer to each of their cells', () => {
    const strings =
      'job,tag,kind,string,modules_in_series\nJ,ARR,array,1,10\nJ,ARR,array,2,\nJ,ARR,array,3,9\n';
    const result = read('J,ARR,modules_in_series,,,12,R,2026-03-01\n', strings);
    expect(result.jobs[0]?.rows.map((r) => r.facts.modules_in_series?.value)).toEqual([10, 12, 9]);
    expect(codes(result)).toEqual([]);
  });
});

describe('a workbook of answers', () => {
  const workbook = (sheets: Readonly<Record<string, unknown[][]>>): Uint8Array => {
    const book = utils.book_new();
    for (const [name, rows] of Object.entries(sheets))
      utils.book_append_sheet(book, utils.aoa_to_sheet(rows, { UTC: true }), name);
    return new Uint8Array(write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
  };
  const heading = ['job', 'tag', 'field', 'code', 'found', 'answer', 'by', 'date'];
  const given = (content: Uint8Array): ReadResult =>
    readListContents([{ name: 'list.csv', content: LIST }], { settings }, undefined, {
      answers: [{ name: 'answers.xlsx', content }],
    });

  it('is read as its CSV is: numbers and days as they are stored, notes on other sheets left out', () => {
    const day = new Date(Date.UTC(2026, 2, 1));
    const answers = [heading, ['J', 'ARR', 'voc_stc', 'x/y', 41, 49.5, 'R. Example', day]];
    const result = given(workbook({ Notes: [['Call the office about this one', '']], Answers: answers }));
    expect(row(result, 'ARR')?.facts.voc_stc).toMatchObject({
      value: 49.5,
      origin: { from: 'answer', by: 'R. Example', date: '2026-03-01', file: 'answers.xlsx!Answers', line: 2 },
    });
    expect(result.unreadable).toEqual([]);
    expect(result.items.map((i) => i.code)).not.toContain('answers/unsigned');
  });

  it('without a sheet of answers can’t be read', () => {
    const other = workbook({
      Jobs: [
        ['job', 'tag'],
        ['J', 'ARR'],
      ],
    });
    expect(given(other).unreadable).toMatchObject([
      { code: 'answers/no-columns', file: 'answers.xlsx!Jobs' },
    ]);
  });
});

describe('what our own files write before a cell', () => {
  it.each(['=1+1', '@x', '-x', '+a; =b', "'=x", '100', '-12', 'A; B', '%', '120/240'])(
    'is taken away again: %s',
    (text) => {
      expect(unguarded(safeCell(text))).toBe(unguarded(text));
      expect(saysSame(safeCell(text), text)).toBe(true);
    },
  );
  it('and a figure is one, however a spreadsheet writes it', () => {
    expect(saysSame('16.0', '16')).toBe(true);
    expect(saysSame('16', '17')).toBe(false);
    expect(saysSame('', '17')).toBe(false);
  });
});
