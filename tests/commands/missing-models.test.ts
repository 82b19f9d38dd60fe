import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { freshFolder, shuntbook } from './command.js';

const LIST =
  'job,basis,lowest_temp,tag,kind,maker,model,connects_to,run_length (m),modules_in_series,ac_in,max_dc_voltage,dc_inputs,ac_out\n' +
  'K,nec-2023,-12,SVC,service,,,,,,120/240,,,\n' +
  'K,nec-2023,-12,INV,grid-tie-inverter,Alderweave,AW-5,SVC,3,,,,,\n' +
  'K,nec-2023,-12,ARR,array,Peatmoor,PM-400,INV,12,,,,,\n' +
  'J,nec-2023,-12,SVC,service,Alderweave,AW-S,,,,120/240,,,\n' +
  'J,nec-2023,-12,INV,grid-tie-inverter,Fernwick,FW-6,SVC,3,,,600,1,240\n' +
  'J,nec-2023,-12,ARR,array,peatmoor,PM 400,INV,12,9,,,,\n' +
  'L,nec-2023,-12,INV,grid-tie-inverter,Alderweave,AW-5,,,,,,1,240\n' +
  'L,nec-2023,-12,ARR,array,peatmoor,PM 400,INV,12,9,,,,\n' +
  'J,nec-2023,-12,MYS,,Quillbrook,QB-1,SVC,3,,,,,\n';

interface Asked {
  readonly heading: readonly string[];
  readonly rows: readonly Readonly<Record<string, string>>[];
}

async function missingModels(library: string | undefined): Promise<Asked & { readonly folder: string }> {
  const folder = freshFolder();
  writeFileSync(join(folder, 'list.csv'), LIST);
  if (library !== undefined) writeFileSync(join(folder, 'library.csv'), library);
  const told = await shuntbook(['plan', join(folder, 'list.csv'), '--out', join(folder, 'out')]);
  expect(told.status, told.err).toBe(1);
  const text = readFileSync(join(folder, 'out', 'missing-models.csv'), 'utf8');
  const rows: Record<string, string>[] = parse(text, { columns: true });
  return { folder, rows, heading: text.split('\r\n')[0]?.split(',') ?? [] };
}

const emptyOf = (row: Readonly<Record<string, string>> | undefined): string[] =>
  Object.entries(row ?? {})
    .filter(([, cell]) => cell === '')
    .map(([heading]) => heading)
    .toSorted();

describe('missing-models.csv', () => {
  it('has one line for each model that the library lacks, with its jobs', async () => {
    const { rows } = await missingModels(undefined);
    // PM-400 of J and L is rated by what its inverter bears, or not at all: either way no library knows it.
    expect(rows.map((r) => [r['maker'], r['model'], r['jobs']])).toEqual([
      ['Alderweave', 'AW-5', 'K; L'],
      ['Alderweave', 'AW-S', 'J'],
      ['Fernwick', 'FW-6', 'J'],
      ['Peatmoor', 'PM-400', 'J; K; L'],
      ['Quillbrook', 'QB-1', 'J'],
    ]);
  });

  it('is empty exactly where a fact was asked for', async () => {
    const { rows, heading } = await missingModels(undefined);
    expect(heading).toEqual(['maker', 'model', 'jobs', 'kind', 'dc_inputs', 'voc_stc', 'ac_out']);
    expect(emptyOf(rows[0])).toEqual(['ac_out', 'dc_inputs']);
    expect(emptyOf(rows[1])).toEqual([]);
    expect(emptyOf(rows[2])).toEqual([]);
    expect(emptyOf(rows[3])).toEqual(['voc_stc']);
    expect(emptyOf(rows[4])).toEqual(['kind']);
  });

  it('keeps the headings of the library in their order, and adds what they lack', async () => {
    const { rows, heading } = await missingModels(
      'Make,Model,Type,Shelf,Max DC voltage\nSorrelmere,S1,load,7,\n',
    );
    expect(heading.slice(0, 6)).toEqual(['maker', 'model', 'jobs', 'Type', 'Shelf', 'Max DC voltage']);
    expect(heading).toContain('voc_stc');
    expect(rows[1]?.['Shelf']).toBe('-');
  });

  it('filled in and given as the library, asks for nothing twice', async () => {
    const { folder, heading, rows } = await missingModels(undefined);
    const supplied: Record<string, string> = { kind: 'load', voc_stc: '41 V', dc_inputs: '1', ac_out: '240' };
    const filled = rows.map((row) => heading.map((h) => (row[h] === '' ? (supplied[h] ?? '?') : row[h])));
    writeFileSync(
      join(folder, 'library.csv'),
      [heading, ...filled].map((line) => line.join(',')).join('\n') + '\n',
    );
    const told = await shuntbook(['plan', join(folder, 'list.csv'), '--out', join(folder, 'out'), '--json']);
    const { openItems, missingModels: left } = JSON.parse(told.out) as {
      openItems: { code: string; severity: string; line: number }[];
      missingModels: { model: string }[];
    };
    expect(
      openItems.filter((i) =>
        ['fact/voc-stc', 'row/kind-missing', 'fact/dc-inputs', 'fact/ac-out'].includes(i.code),
      ),
    ).toEqual([]);
    expect(left).toEqual([]);
  });

  it('is only of the job that is asked for', async () => {
    const { folder } = await missingModels(undefined);
    const args = ['plan', join(folder, 'list.csv'), '--out', join(folder, 'one'), '--job', 'K', '--json'];
    const { missingModels: models } = JSON.parse((await shuntbook(args)).out) as {
      missingModels: { model: string; jobs: string[] }[];
    };
    expect(models.map((m) => [m.model, m.jobs])).toEqual([
      ['AW-5', ['K']],
      ['PM-400', ['K']],
    ]);
  });
});
