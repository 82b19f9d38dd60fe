import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import type { ColumnMap } from '../../src/read/table/column-map.js';
import { readListContents, type ReadResult } from '../../src/read/list/lists.js';
import { readLibraryText } from '../../src/read/company/library.js';

const settings = defaultSettings();
const LIST =
  'job,tag,kind,maker,model,connects_to,run_length (m),dc_inputs\n' +
  'J,SVC,service,,,,,\n' +
  'J,INV,grid-tie-inverter,Alderweave,AW-5,SVC,3,\n' +
  'J,ARR,array,,,INV,,\n' +
  'J,CMB,combiner,,,INV; ARR,,\n';

interface Given {
  readonly facts: string;
  readonly columns?: ColumnMap;
  readonly list?: string;
  readonly name?: string;
}

function read({ facts, columns, list = LIST, name = 'facts.csv' }: Given): ReadResult {
  const { library } = readLibraryText(
    'library.csv',
    'maker,model,dc_inputs,max_dc_voltage\nAlderweave,AW-5,3,600\n',
  );
  return readListContents([{ name: 'list.csv', content: list }], { settings, columns, library }, undefined, {
    equipmentFacts: [{ name, content: facts }],
  });
}

const items = ({ items: own, jobs }: ReadResult): string[] =>
  [...own, ...jobs.flatMap((j) => j.items)].map((i) => `${i.code} ${i.severity} ${i.file}:${i.line}`);
const row = ({ jobs }: ReadResult, tag: string) =>
  jobs.flatMap((j) => j.rows).find((r) => r.facts.tag?.value === tag);

describe('equipment facts', () => {
  it('fill what the row doesn’t state, before the library', () => {
    const result = read({ facts: 'job,tag,dc_inputs,Location\nJ,INV,2,House / hall\n' });
    expect(row(result, 'INV')?.facts.dc_inputs).toEqual({
      value: 2,
      text: '2',
      origin: { from: 'equipment-facts', file: 'facts.csv', line: 2, column: 'dc_inputs' },
    });
    expect(row(result, 'INV')?.facts.place?.value).toBe('House / hall');
    expect(row(result, 'INV')?.facts.max_dc_voltage?.value).toBe(600);
  });

  it('stand behind the list’s row, which is said', () => {
    const result = read({ facts: 'job,tag,run_length (ft)\nJ,INV,20\n' });
    expect(row(result, 'INV')?.facts.run_length?.value).toEqual([3]);
    expect(items(result)).toContain('facts/overridden confirm list.csv:3');
  });

  it('of one fact that differ are a conflict', () => {
    const result = read({ facts: 'job,tag,dc_inputs\nJ,INV,2\nJ,INV,4\n' });
    expect(row(result, 'INV')?.facts.dc_inputs?.value).toBe(2);
    expect(items(result)).toContain('facts/differ conflict facts.csv:3');
  });

  it('of no row are a conflict, of no job to confirm, and wrong cells are items with their place', () => {
    const result = read({ facts: 'job,tag,dc_inputs\nJ,XX,2\nK,INV,4\nJ,INV,many\n' });
    expect(items(result).filter((i) => i.includes('facts.csv'))).toEqual([
      'facts/no-such-job confirm facts.csv:3',
      'facts/no-such-row conflict facts.csv:2',
      'cell/wrong conflict facts.csv:4',
    ]);
  });

  it('give a row its kind, with what its word says beside', () => {
    const list = LIST.replace('combiner', '');
    const result = read({ list, facts: 'job,tag,kind\nJ,CMB,rapid shutdown\n' });
    expect(row(result, 'CMB')?.facts.kind?.value).toBe('disconnect');
    expect(row(result, 'CMB')?.facts.rapid_shutdown?.value).toBe(true);
    expect(items(result).filter((i) => i.startsWith('row/kind'))).toEqual([]);
  });

  it('without a tag column are none', () => {
    expect(read({ facts: 'job,dc_inputs\nJ,2\n' }).unreadable).toMatchObject([{ code: 'facts/no-columns' }]);
  });
});

describe('a cable schedule', () => {
  it('gives each length to the row that names the other end', () => {
    const result = read({ facts: 'job,from,to,length (m)\nJ,INV,ARR,48\nJ,INV,CMB,7\nJ,CMB,ARR,9\n' });
    expect(row(result, 'ARR')?.facts.run_length).toMatchObject({
      value: [48],
      origin: { from: 'equipment-facts', file: 'facts.csv', line: 2, column: 'length (m)' },
    });
    expect(row(result, 'CMB')?.facts.run_length?.value).toEqual([7, 9]);
    expect(items(result)).toEqual([]);
  });

  it('takes a bare length in the unit of its job', () => {
    const result = read({ facts: 'job,from,to,length\nJ,ARR,INV,100\n' });
    expect(row(result, 'ARR')?.facts.run_length?.value).toEqual([30.48]);
  });

  it('has its own headings by a column map', () => {
    const columns: ColumnMap = {
      columns: { 'Fed from': 'from', 'Wired to': 'to', 'Cable length (m)': 'length' },
    };
    const facts = 'Cable no.,Fed from,Wired to,Cable length (m)\nW1,INV,ARR,48\n';
    const result = read({ facts, columns });
    expect(row(result, 'ARR')?.facts.run_length?.value).toEqual([48]);
  });

  it('stands behind the list’s row, which is said', () => {
    const result = read({ facts: 'job,from,to,length (m)\nJ,SVC,INV,4\n' });
    expect(row(result, 'INV')?.facts.run_length?.value).toEqual([3]);
    expect(items(result)).toEqual(['facts/overridden confirm list.csv:3']);
    expect(items(read({ facts: 'job,from,to,length (m)\nJ,SVC,INV,3\n' }))).toEqual([]);
  });

  it('names a cable between rows that aren’t joined, and what is short of a row', () => {
    const result = read({ facts: 'job,from,to,length (m)\nJ,SVC,ARR,4\nJ,CMB,INV,4\n' });
    expect(items(result)).toEqual([
      'facts/no-such-connection confirm facts.csv:2',
      'facts/cables-short confirm facts.csv:3',
    ]);
    expect(row(result, 'CMB')?.facts.run_length).toBeUndefined();
  });

  it('with two lengths of one cable is a conflict', () => {
    const result = read({ facts: 'job,from,to,length (m)\nJ,ARR,INV,48\nJ,INV,ARR,48\nJ,INV,ARR,49\n' });
    expect(items(result)).toEqual(['facts/differ conflict facts.csv:4']);
  });

  it('without lengths is none', () => {
    expect(read({ facts: 'job,from,to\nJ,ARR,INV\n' }).unreadable).toMatchObject([
      { code: 'facts/no-columns' },
    ]);
  });
});
