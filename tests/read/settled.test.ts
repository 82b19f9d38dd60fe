import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { readSettings } from '../../src/read/company/settings.js';
import { readListText } from '../../src/read/list/lists.js';
import { settingsOf } from '../plan/plan-of.js';
import { saidOf } from '../told.js';

const at = mkdtempSync(join(tmpdir(), 'shuntbook-settled-'));
afterAll(() => {
  rmSync(at, { recursive: true });
});

const BY = { by: 'R. Example', date: '2026-02-03' };

async function faultsOf(
  ...entries: readonly object[]
): Promise<readonly (readonly [string, number, string])[]> {
  const path = join(at, 'settings.json');
  const lines = entries.map((entry) => `    ${JSON.stringify({ ...BY, ...entry })}`);
  writeFileSync(path, `{\n  "settled": [\n${lines.join(',\n')}\n  ]\n}\n`);
  const { settings, unreadable } = await readSettings(path);
  expect(unreadable.length === 0 || settings.settled.length === 0).toBe(true);
  return unreadable.map((i) => [i.column, i.line, saidOf(i).message ?? ''] as const);
}

describe('settled defaults in the settings', () => {
  it('are none where a company settled none', () => {
    expect(defaultSettings().settled).toEqual([]);
  });

  it.each([
    ['basis', 'nec-2020'],
    ['occupancy', 'other'],
    ['earthing', 'TT'],
    ['lightning_protection', 'none'],
    ['flash_density', 2.5],
    ['surroundings', 'urban'],
    ['lv_overhead_km', 0],
    ['worth_protecting', 'yes'],
    ['worth_protecting', true],
    ['outdoors', 'no'],
    ['ahead_of_disconnect', false],
    ['building_occupancy', 'dwelling'],
    ['module_technology', 'crystalline'],
    ['dc_inputs', 1],
    ['isolated', 'yes'],
    ['system_grounding', 'solid'],
    ['dc_grounding', 'floating'],
    ['n_pe_link', 'no'],
    ['impulse_withstand', 2500],
  ])('take %s %s', async (field, value) => {
    expect(await faultsOf({ field, value })).toEqual([]);
  });

  it('take kinds and an occupancy', async () => {
    expect(
      await faultsOf({ field: 'outdoors', value: 'yes', kinds: ['battery'], occupancy: 'other' }),
    ).toEqual([]);
  });

  it.each([
    ['a field that isn’t one', { field: 'colour', value: 'red' }, 'field', /a field that has a default/],
    ['a field that has no default', { field: 'voc_stc', value: 40 }, 'field', /a field that has a default/],
    ['a quantity, which is never asked about', { field: 'quantity', value: 1 }, 'field', /has a default/],
    ['a word that the field hasn’t', { field: 'basis', value: 'nec-1905' }, 'value', /nec-2023/],
    ['a word for a figure', { field: 'impulse_withstand', value: '2.5 kV' }, 'value', /volts/],
    ['a figure for yes or no', { field: 'outdoors', value: 1 }, 'value', /yes or no/],
    ['half an input', { field: 'dc_inputs', value: 1.5 }, 'value', /number of independent DC inputs/],
    ['no technology', { field: 'module_technology', value: ' ' }, 'value', /crystalline/],
    ['a figure below nothing', { field: 'flash_density', value: -1 }, 'value', /flashes/],
    ['a kind that isn’t one', { field: 'outdoors', value: 'no', kinds: ['shed'] }, 'kinds.0', /a kind:/],
    [
      'a kind without that default: an inverter’s isolation decides its voltage',
      { field: 'isolated', value: 'yes', kinds: ['grid-tie-inverter'] },
      'kinds',
      /transformer/,
    ],
    [
      'a kind for a fact of the job',
      { field: 'earthing', value: 'TN', kinds: ['load'] },
      'kinds',
      /of the job/,
    ],
    [
      'an occupancy for what decides it',
      { field: 'occupancy', value: 'other', occupancy: 'other' },
      'occupancy',
      /before the occupancy/,
    ],
    [
      'an occupancy that isn’t one',
      { field: 'outdoors', value: 'no', occupancy: 'barn' },
      'occupancy',
      /dwelling/,
    ],
    ['nobody', { field: 'outdoors', value: 'no', by: ' ' }, 'by', /who settled it/],
    ['a date of another form', { field: 'outdoors', value: 'no', date: '2/3/2026' }, 'date', /YYYY-MM-DD/],
    ['a day that isn’t', { field: 'outdoors', value: 'no', date: '2026-02-30' }, 'date', /calendar/],
    ['a key that isn’t one', { field: 'outdoors', value: 'no', note: 'x' }, 'note', /no such key/],
  ])('refuse %s, on its line', async (_, entry, key, message) => {
    const good = { field: 'surroundings', value: 'rural' };
    const faults = await faultsOf(good, entry, { field: 'n_pe_link', value: 'no' });
    expect(faults).toHaveLength(1);
    expect(faults[0]?.slice(0, 2)).toEqual([`settled.1.${key}`, 4]);
    expect(faults[0]?.[2]).toMatch(message);
  });

  it('refuse two that settle one default otherwise, and take two that can’t meet', async () => {
    const no = { field: 'worth_protecting', value: 'no' };
    const yes = { field: 'worth_protecting', value: 'yes' };
    const twice = await faultsOf({ ...no, kinds: ['load'] }, yes);
    expect(twice.map((f) => f.slice(0, 2))).toEqual([['settled.1.value', 4]]);
    expect(twice[0]?.[2]).toContain('entry 1');
    expect(await faultsOf({ ...no, kinds: ['load'] }, { ...yes, kinds: ['panel'] })).toEqual([]);
    expect(await faultsOf({ ...no, occupancy: 'other' }, { ...yes, occupancy: 'dwelling' })).toEqual([]);
    expect(await faultsOf({ ...no, occupancy: 'other' }, yes)).toHaveLength(1);
    expect(await faultsOf(yes, { ...yes, value: true, kinds: ['load'] })).toEqual([]);
  });

  it('a settled basis says what a bare length means, as the default would', () => {
    const csv = 'job,tag,kind,connects_to,run_length\nJ,A,panel,S,10\nJ,S,service,,\n';
    const lengthBy = (settled: readonly object[]): readonly number[] | undefined =>
      readListText('l.csv', csv, { settings: settingsOf({ settled }) }).jobs[0]?.rows[0]?.facts.run_length
        ?.value;
    expect(lengthBy([])?.[0]).toBeCloseTo(3.048);
    expect(lengthBy([{ ...BY, field: 'basis', value: 'iec' }])).toEqual([10]);
  });
});
