import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sheetData, xlsxParts, zipOf } from '../../bench/workbooks.mjs';
import { ColumnMapSchema } from '../../src/index.js';
import { freshFolder, shuntbook } from './command.js';

const book = zipOf(
  xlsxParts([
    {
      name: 'Week 12',
      content: sheetData([
        ['job', 'tag', 'kind', 'connects_to', 'run_length (m)', 'Remarks'],
        ['J-1', 'SVC', 'service', null, null, 'by the road'],
        ['J-1', 'MP', 'panel', 'SVC', 7.5, null],
      ]),
    },
    { name: 'Notes', content: sheetData([['Ask the owner about the shed']]) },
  ]),
);

/** A folder with a list in a workbook, and what else is given. */
function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = freshFolder();
  mkdirSync(folder, { recursive: true });
  for (const [name, content] of Object.entries({ 'list.xlsx': book, ...files }))
    writeFileSync(join(folder, name), content);
  return folder;
}

describe('a list in a workbook', () => {
  it('is shown by its sheet, row and all that isn’t read', async () => {
    const folder = folderWith({ 'old.xls': 'x', '~$list.xlsx': 'x' });
    const told = await shuntbook(['read', folder]);
    expect(told.out).toContain(
      'list.xlsx!Week 12: 2 rows\n  a sheet of a workbook: figures and dates as they are stored\n',
    );
    expect(told.out).not.toContain('encoding');
    expect(told.err).toMatch(/1 file beside the lists isn’t read, by its ending: old\.xls\./);
    expect(told.err).toMatch(/The sheet Notes has no heading line that is understood/);
    expect(told.err).not.toContain('~$');
  });

  it('is cited with its sheet and row', async () => {
    const folder = folderWith({});
    const told = await shuntbook(['read', folder, '--json']);
    const { jobs } = JSON.parse(told.out) as {
      jobs: { rows: { facts: Record<string, { origin: unknown }> }[] }[];
    };
    expect(jobs[0]?.rows[1]?.facts['run_length']?.origin).toEqual({
      from: 'list',
      file: 'list.xlsx!Week 12',
      line: 3,
      column: 'run_length (m)',
    });
  });

  it('gives a column map without what only a text has', async () => {
    const folder = folderWith({});
    const map = join(folder, 'columns.json');
    const told = await shuntbook(['columns', join(folder, 'list.xlsx'), '--write', map]);
    expect(told.status).toBe(0);
    const written = ColumnMapSchema.parse(JSON.parse(readFileSync(map, 'utf8')));
    expect(written.dialect).toEqual({ headingLine: 1 });
    expect(Object.keys(written.columns ?? {})).toContain('Remarks');
  });

  it('ends with 64 where a catalogue stands beside it in two forms, both named', async () => {
    const folder = folderWith({ 'catalogue.csv': 'part\n', 'catalogue.ods': 'x' });
    const told = await shuntbook(['plan', folder, '--out', freshFolder()]);
    expect(told.status).toBe(64);
    expect(told.err).toContain('catalogue.csv and catalogue.ods');
    expect(told.err).toContain('--catalogue');
  });

  it('ends with 2 and one message where it asks for a password', async () => {
    const locked = Buffer.concat([
      Buffer.from([0xd0, 0xcf, 0x11, 0xe0]),
      Buffer.from('EncryptedPackage', 'utf16le'),
    ]);
    const folder = folderWith({ 'locked.xlsx': locked });
    const told = await shuntbook(['plan', folder, '--out', freshFolder()]);
    expect(told.status).toBe(2);
    expect(told.err.match(/locked\.xlsx/g)).toHaveLength(2);
    expect(told.err).toContain('Save it without a password.');
  });
});
