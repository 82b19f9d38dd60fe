import { saidOf } from '../told.js';
import { describe, expect, it, test } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { readLibraryText } from '../../src/read/company/library.js';
import type { NamedContent } from '../../src/read/list/list-options.js';
import { readListContents, type ReadResult } from '../../src/read/list/lists.js';
import { codes, itemsOf, read } from './plain.js';

/** Lists that a person would read one way and a program might read another: the value is right, or one message says why there is none. */

const settings = defaultSettings();
const firstFacts = (result: ReadResult): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(result.jobs[0]?.rows[0]?.facts ?? {}).map(([field, fact]) => [field, fact.value]),
  );

describe('a point before three digits, where no comma separates the cells', () => {
  test.each(['\t', '|', ';'])('can be read two ways with %j', (delimiter) => {
    const result = read(
      ['tag,kind,fault_current', 'A,panel,10.000', ''].join('\n').replaceAll(',', delimiter),
    );
    expect(codes(result)).toEqual(['cell/wrong:2']);
    expect(firstFacts(result)['fault_current']).toBeUndefined();
  });
  test.each(['\t', '|', ';'])('is a decimal point with %j where another figure shows one', (delimiter) => {
    const text = ['tag,kind,fault_current,voc_stc', 'A,panel,1000.125,', 'B,array,,49.5', ''].join('\n');
    const result = read(text.replaceAll(',', delimiter));
    expect(codes(result)).toEqual([]);
    expect(firstFacts(result)['fault_current']).toBe(1000.125);
  });
});

describe('one text that stands for two values', () => {
  const two = (unit: string): string => `job,tag,kind,lowest_temp (${unit})\nJ,${unit},panel,-18\n`;
  it('contradicts itself in two lists of one job', () => {
    const contents: NamedContent[] = [
      { name: 'a.csv', content: two('F') },
      { name: 'b.csv', content: two('C') },
    ];
    const { jobs } = readListContents(contents, { settings });
    expect(jobs[0]?.items.map((i) => [i.code, i.file, i.line, i.column])).toEqual([
      ['job/contradiction', 'b.csv', 2, 'lowest_temp (C)'],
    ]);
  });
  it('contradicts itself in a list and a file of job facts', () => {
    const facts = { name: 'facts.csv', content: 'job,lowest_temp (C)\nJ,-18\n' };
    const { jobs } = readListContents([{ name: 'a.csv', content: two('F') }], { settings }, facts);
    expect(jobs[0]?.items.map((i) => [i.code, i.file, i.line])).toEqual([
      ['job/contradiction', 'facts.csv', 2],
    ]);
  });
  it('is no contradiction where the units are the same', () => {
    const contents = ['a.csv', 'b.csv'].map((name) => ({ name, content: two('F') }));
    expect(readListContents(contents, { settings }).jobs[0]?.items).toEqual([]);
  });
});

describe('the id of a job', () => {
  it('that a spreadsheet has shortened may be that of several jobs', () => {
    const result = read('job,tag,kind\n1.2E+11,A,panel\n1.2E+11,B,panel\n');
    expect(codes(result)).toEqual(['cell/wrong:2', 'cell/wrong:3']);
    expect(result.jobs.map((j) => j.job)).toEqual(['list']);
  });
  test.each(['2E5', '24-E-07', '2026-03-01', 'E+11'])('may look like %s', (job) => {
    const result = read(`job,tag,kind\n${job},A,panel\n`);
    expect(codes(result)).toEqual([]);
    expect(result.jobs.map((j) => j.job)).toEqual([job]);
  });
});

describe('a sentence alone in the job column', () => {
  const list = (...rows: string[]): ReadResult =>
    read(['job,tag,kind,connects_to', 'J-1,A,service,', ',B,panel,A', ...rows, ''].join('\n'));
  it('above rows that name no job is asked about: it may be the job of those rows', () => {
    const result = list('The house on the hill,,,', ',C,service,', ',D,panel,C');
    const asked = result.jobs.flatMap((j) => j.items.filter((i) => i.severity !== 'confirm'));
    expect(asked).toMatchObject([{ code: 'row/job-or-note', file: 'list.csv', line: 4, column: 'job' }]);
    expect(asked.map((item) => saidOf(item).found)).toEqual(['The house on the hill']);
  });
  it('is a note at the end of the list, or above a row that names its job', () => {
    for (const after of [[], ['J-2,C,service,']]) {
      const result = list('All lengths are one way,,,', ...after);
      expect(codes(result)).toEqual(['row/job-from-above:3', 'file/rows-left-out:4']);
    }
  });
});

describe('a unit without a number', () => {
  it('is told what to do about it', () => {
    const result = read('tag,kind,run_length,description\ntext,list,m,text\nA,panel,30,\n');
    expect(itemsOf(result).map((i) => i.line)).toEqual([2, 2]);
    const item = result.jobs[0]?.items.find((i) => i.column === 'run_length');
    expect(saidOf(item).message).toContain('it is a unit without a number');
    expect(saidOf(item).hint).toContain('run_length (m)');
  });
});

describe('a bare figure far too small for its field', () => {
  test.each([
    ['fault_current', '10', 'A or kA', 10],
    ['fault_current', '22,5', 'A or kA', 22.5],
    ['impulse_withstand', '2.5', 'V or kV', 2.5],
  ])('%s %s is in the unit of the field, and that is asked', (field, text, units, value) => {
    const result = read(`tag,kind,${field}\nA,panel,"${text}"\n`);
    expect(codes(result)).toEqual(['cell/unit-unsure:2']);
    expect(result.jobs[0]?.items[0]).toMatchObject({ severity: 'confirm' });
    const said = saidOf(result.jobs[0]?.items[0]);
    expect(said.found).toBe(text);
    expect(said.message).toContain(`the first of ${units}:`);
    expect(firstFacts(result)[field]).toBe(value);
  });
  test.each([
    ['fault_current', '10 A', 10],
    ['fault_current (kA)', '10', 10_000],
    ['fault_current', '100', 100],
    ['impulse_withstand', '330', 330],
    ['impulse_withstand (kV)', '2.5', 2500],
  ])('%s %s says which it is', (heading, text, value) => {
    const result = read(`tag,kind,${heading}\nA,panel,"${text}"\n`);
    expect(codes(result)).toEqual([]);
    expect(firstFacts(result)[heading.split(' ')[0] ?? '']).toBe(value);
  });
});

describe('a model of marks alone', () => {
  it('is not another one of marks alone', () => {
    const { library } = readLibraryText('library.csv', 'maker,model,kind\nInventa,***,battery\n');
    const result = read('tag,maker,model\nA,Inventa,!!!\n', { library });
    expect(codes(result)).toEqual(['row/kind-missing:2']);
    expect(result.missingModels).toMatchObject([{ maker: 'Inventa', model: '!!!' }]);
  });
  it('is itself', () => {
    const { library } = readLibraryText('library.csv', 'maker,model,kind\nInventa,***,battery\n');
    expect(firstFacts(read('tag,maker,model\nA,Inventa,***\n', { library }))['kind']).toBe('battery');
  });
});

describe('an AC system written another way', () => {
  test.each([
    ['208/120', 'Write 120/208 or 208Y/120 if that is what is meant;'],
    ['277/480', 'Write 480Y/277 if that is what is meant;'],
    ['230/400 V', 'Write 400Y/230 if that is what is meant;'],
    ['240/120', 'Write 120/240 or 240/120 high-leg if that is what is meant;'],
    ['120/277', 'Known are 120, 277, 347,'],
  ])('%s: the hint holds the same voltages, or all that are known', (text, hint) => {
    const result = read(`tag,kind,ac_in\nA,panel,${text}\n`);
    const { items = [] } = result.jobs[0] ?? {};
    expect(items.map((item) => item.code)).toEqual(['cell/wrong']);
    const said = String(saidOf(items[0]).hint);
    expect(said.slice(0, hint.length)).toBe(hint);
    expect(said).toContain('words in the column map or the settings');
    expect(said).not.toContain('blank');
  });
});

describe('a code that nobody knows', () => {
  test.each([
    ['basis', 'nec-2026', 'Known are nec-2017, nec-2020, nec-2023, iec:'],
    ['basis', 'nec-20', 'Known are nec-2017, nec-2020, nec-2023, iec:'],
    ['earthing', 'TI', 'Known are TN, TT, IT:'],
    ['overvoltage_category', 'IIII', 'Known are I, II, III, IV:'],
  ])('%s %s comes near none of those that are known, which are named', (field, text, hint) => {
    const result = read(`tag,kind,${field}\nA,panel,${text}\n`);
    const items = result.jobs.flatMap((job) => job.items);
    expect(items.map((item) => item.code)).toEqual(['cell/wrong']);
    expect(String(saidOf(items[0]).hint).slice(0, hint.length)).toBe(hint);
  });
  it('is read where it differs in case and blanks alone', () => {
    expect(read('tag,kind,basis\nA,panel,NEC 2020\n').jobs[0]?.facts.basis?.value).toBe('nec-2020');
  });
});

describe('letters that look the same', () => {
  it('are the same, whether an accent is written with its letter or after it', () => {
    const result = read('tag,kind,connects_to\nKu\u0308che,panel,\nB,panel,K\u00fcche\n');
    expect(firstFacts(result)['tag']).toBe('K\u00fcche');
  });
});

describe('a heading among the rows', () => {
  const tags = (result: ReadResult): unknown[] =>
    result.jobs.flatMap((j) => j.rows.map((r) => r.facts.tag?.value));
  test.each([
    'tag,kind,voc_stc,run_length (m)',
    'tag,kind,run_length (ft),voc_stc',
    'kind,tag,run_length (m),voc_stc',
    'Tag,Type,Voc,Cable length',
  ])('of other columns or units is told, and nothing under it is read: %s', (heading) => {
    const result = read(
      ['tag,kind,run_length (m),voc_stc', 'A,array,10,49', heading, 'B,array,30,40', 'C,array,5,6', ''].join(
        '\n',
      ),
    );
    expect(codes(result)).toEqual(['heading/again:3']);
    expect(tags(result)).toEqual(['A']);
  });
  test.each(['TAG,KIND,RUN LENGTH (m),Voc', 'tag,kind,run_length (m),voc_stc', 'Tag,Type,,'])(
    'of the same columns is passed over: %s',
    (heading) => {
      const result = read(
        ['tag,kind,run_length (m),voc_stc', 'A,array,10,49', heading, 'B,array,30,40', ''].join('\n'),
      );
      expect(codes(result)).toEqual([]);
      expect(tags(result)).toEqual(['A', 'B']);
    },
  );
  it('is none where one of its cells is none', () => {
    const result = read('tag,kind,maker,model\nRoom,panel,Make,Model\n');
    expect(codes(result)).toEqual([]);
    expect(tags(result)).toEqual(['Room']);
  });
});

describe('a lowest temperature above every temperature of the air', () => {
  test.each(['60', '140 F', '600 C'])('%s is no figure', (text) => {
    const result = read(`tag,kind,lowest_temp\nA,panel,${text}\n`);
    expect(codes(result)).toEqual(['cell/wrong:2']);
    expect(result.jobs[0]?.facts.lowest_temp).toBeUndefined();
  });
  it('is one where it is in degrees Fahrenheit', () => {
    const result = read('tag,kind,lowest_temp\nA,panel,60 F\n');
    expect(codes(result)).toEqual([]);
    expect(result.jobs[0]?.facts.lowest_temp?.value).toBeCloseTo(15.5556, 3);
  });
});
