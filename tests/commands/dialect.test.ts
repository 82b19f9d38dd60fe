import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Plan, Understood } from '../../src/index.js';
import { freshFolder, shuntbook } from './command.js';

/** A folder with one list. */
function folderWith(list: string | Uint8Array): { readonly folder: string; readonly list: string } {
  const folder = freshFolder();
  const path = join(folder, 'list.csv');
  writeFileSync(path, list);
  return { folder, list: path };
}

async function understood(args: readonly string[]): Promise<Understood | undefined> {
  const told = await shuntbook([...args, '--json']);
  return (JSON.parse(told.out) as { files: Understood[] }).files[0];
}

const TIDY = 'job,tag,kind,ac_in,run_length\nJ,SVC,service,120/240,\n';

describe('what a flag states about a list', () => {
  it('goes before what its text shows, and is shown as stated', async () => {
    const { list } = folderWith(Buffer.from(`notes\n${TIDY.replaceAll(',', '|')}`, 'utf16le'));
    const flags = [
      '--encoding',
      'UTF-16LE',
      '--delimiter',
      'bar',
      '--decimal',
      'comma',
      '--heading-line',
      '2',
    ];
    for (const command of ['read', 'columns']) {
      expect(await understood([command, list, ...flags])).toMatchObject({
        encoding: 'utf-16le',
        delimiter: '|',
        decimal: ',',
        headingLine: 2,
        decidedBy: { encoding: 'flag', delimiter: 'flag', decimal: 'flag', headingLine: 'flag' },
      });
    }
    const told = await shuntbook(['read', list, ...flags]);
    expect(told.out).toContain('encoding: utf-16le (by a flag)');
    expect(told.out).toContain('heading: line 2 (by a flag)');
  });

  it('goes before the column map', async () => {
    const { folder, list } = folderWith(TIDY.replaceAll(',', ';'));
    const map = join(folder, 'columns.json');
    writeFileSync(map, JSON.stringify({ dialect: { delimiter: ';', decimal: ',' } }));
    const file = await understood(['read', list, '--decimal', '.']);
    expect(file).toMatchObject({ delimiter: ';', decimal: '.' });
    expect(file?.decidedBy).toEqual({
      encoding: 'its text',
      delimiter: 'column map',
      decimal: 'flag',
      headingLine: 'its text',
    });
  });

  it.each([
    ['a mark', Buffer.from(`\ufeff${TIDY}`), 'encoding: utf-8 (by its first bytes)'],
    ['no mark', Buffer.from(TIDY), 'encoding: utf-8 (by its text)'],
    [
      'bytes that are no UTF-8',
      Buffer.from(`${TIDY}J,B\u00e9,panel,,\n`, 'latin1'),
      'windows-1252 (by a guess)',
    ],
    ['a sep= line', Buffer.from(`sep=,\n${TIDY}`), 'delimiter: comma (by its sep= line)'],
  ])('is said of %s where nothing is stated', async (_, content, says) => {
    const { list } = folderWith(content);
    expect((await shuntbook(['read', list])).out).toContain(says);
  });

  it('settles a figure that can be read two ways, and makes the plan anew', async () => {
    const { folder, list } = folderWith(
      'job,tag,kind,maker,model,connects_to,run_length (m),dc_inputs,voc_stc,voc_coefficient,modules_in_series,max_dc_voltage,ac_in\n' +
        'J,SVC,service,,,,,,,,,,120/240\n' +
        'J,INV,grid-tie-inverter,,,SVC,"1,230",1,,,,600,\n' +
        'J,ARR,array,,,INV,20,,40,-0.3 %/C,8,,\n',
    );
    const out = join(folder, 'out');
    const planned = async (...flags: string[]): Promise<{ plan: Plan; done: string }> => {
      const told = await shuntbook(['plan', list, '--out', out, '--json', ...flags]);
      const [job] = (JSON.parse(told.out) as { jobs: { done: string }[] }).jobs;
      const plan = JSON.parse(readFileSync(join(out, 'J', 'plan.json'), 'utf8')) as Plan;
      return { plan, done: job?.done ?? '' };
    };
    const lengthOf = ({ plan }: { plan: Plan }): unknown =>
      plan.site.equipments.find((e) => e.tag === 'INV')?.facts.find((f) => f.field === 'run_length')?.value;
    expect(lengthOf(await planned())).toBeUndefined();
    expect(lengthOf(await planned('--decimal', 'point'))).toBe(1230);
    const comma = await planned('--decimal', 'comma');
    expect(lengthOf(comma)).toBe(1.23);
    expect(comma.done).not.toBe('unchanged');
    expect((await planned('--decimal', 'comma')).done).toBe('unchanged');
  });

  it('reaches why', async () => {
    const { list } = folderWith(TIDY.replaceAll(',', ';'));
    expect((await shuntbook(['why', list, '--delimiter', 'semicolon'])).status).toBe(0);
  });

  it.each([
    ['--encoding', 'latin', 'windows-1252'],
    ['--delimiter', 'colon', 'semicolon'],
    ['--decimal', 'dot', 'point'],
    ['--heading-line', '0', 'a line from 1'],
    ['--heading-line', '2.5', 'a line from 1'],
    ['--delimiter', 'constructor', 'semicolon'],
  ])('%s %s is one message', async (option, value, says) => {
    for (const command of ['read', 'plan', 'columns', 'why', 'pack']) {
      const told = await shuntbook([command, 'fixtures/bad/good.csv', option, value]);
      expect(told.status).toBe(64);
      expect(told.err).toContain('command/no-such-value');
      expect(told.err).toContain(says);
    }
  });
});

it('makes a column map of a list of which no heading is understood', async () => {
  const { folder, list } = folderWith('Ref,Bit,Sort\nJ,SVC,service\n');
  const map = join(folder, 'map.json');
  const none = await shuntbook(['columns', list]);
  expect(none.status).toBe(2);
  expect(none.err).toContain('--heading-line');
  const told = await shuntbook(['columns', list, '--heading-line', '1', '--write', map]);
  expect(told.status).toBe(2);
  expect(told.out).toMatch(/^Ref .*\bJ$/m);
  const written = JSON.parse(readFileSync(map, 'utf8')) as { columns: Record<string, unknown> };
  expect(Object.keys(written.columns)).toEqual(['Ref', 'Bit', 'Sort']);
  for (const meaning of Object.values(written.columns)) expect(meaning).toMatch(/^\?/);
  writeFileSync(map, JSON.stringify({ ...written, columns: { Ref: 'job', Bit: 'tag', Sort: 'kind' } }));
  expect((await shuntbook(['columns', list, '--columns', map])).status).toBe(0);
});
