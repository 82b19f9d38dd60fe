import { saidOf } from '../told.js';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { defaultSettings } from '../../src/model/settings.js';
import { ColumnMapSchema, readColumnMap } from '../../src/read/table/column-map.js';
import { draftColumnMap } from '../../src/read/table/draft-map.js';
import { findCompanyFiles } from '../../src/read/file/find.js';
import { readListText } from '../../src/read/list/lists.js';
import { readSettings } from '../../src/read/company/settings.js';
import { plainJob } from './plain.js';

const at = mkdtempSync(join(tmpdir(), 'shuntbook-json-'));
afterAll(() => {
  rmSync(at, { recursive: true });
});
function file(name: string, text: string): string {
  const path = join(at, name);
  writeFileSync(path, text);
  return path;
}

describe('settings', () => {
  it('are the defaults without a file', async () => {
    const { items, ...rest } = await readSettings(undefined);
    expect(rest).toEqual({ settings: defaultSettings(), unreadable: [] });
    expect(items.map(({ code, column, severity, who }) => [code, column, severity, who])).toEqual([
      ['settings/company-not-stated', 'company.phone', 'confirm', 'office'],
      ['settings/company-not-stated', 'company.licence', 'confirm', 'office'],
    ]);
  });
  it('ask for what the company leaves open of phone and licence, and for nothing that it states', async () => {
    const asked = async (company: object): Promise<string[]> =>
      (await readSettings(file('company.json', JSON.stringify({ company })))).items.map(
        (item) => item.column,
      );
    expect(await asked({ phone: '555-0100', licence: 'INVENTED-1' })).toEqual([]);
    expect(await asked({ phone: ' ', licence: 'INVENTED-1' })).toEqual(['company.phone']);
    expect(await asked({ phone: '555-0100' })).toEqual(['company.licence']);
  });
  it('take from the file what it states', async () => {
    const { settings, unreadable } = await readSettings(
      file('s.json', '{ "units": { "length": "m" }, "thresholds": { "longRunNec": 20 } }'),
    );
    expect(unreadable).toEqual([]);
    expect([settings.units.length, settings.units.temperature, settings.thresholds.longRunNec]).toEqual([
      'm',
      'C',
      20,
    ]);
  });
  it("name a language that the owner's sheet can be written in", async () => {
    const reading = await readSettings(file('language.json', '{\n  "ownerLanguage": "fr"\n}\n'));
    expect(reading.settings).toEqual(defaultSettings());
    expect(reading.unreadable.map((i) => [i.code, i.line, i.column])).toEqual([
      ['json/key-wrong', 2, 'ownerLanguage'],
    ]);
    expect((await readSettings(file('es.json', '{ "ownerLanguage": "es" }'))).settings.ownerLanguage).toBe(
      'es',
    );
  });
  it('with a fault are not used at all, and each fault has its line', async () => {
    const path = file('bad.json', '{\n  "units": {\n    "length": "cubits"\n  },\n  "colour": 1\n}\n');
    const { settings, unreadable } = await readSettings(path);
    expect(settings).toEqual(defaultSettings());
    expect(unreadable.map((i) => [i.code, i.line, i.column])).toEqual([
      ['json/key-wrong', 3, 'units.length'],
      ['json/key-wrong', 5, 'colour'],
    ]);
  });
  it('that state a key twice are not used: the parser would take the last in silence', async () => {
    const text = '{\n "basis": "iec",\n "units": { "length": "m" },\n "basis": "nec-2023"\n}';
    const { settings, unreadable } = await readSettings(file('twice-key.json', text));
    expect(settings).toEqual(defaultSettings());
    expect(unreadable.map((i) => [i.code, i.line, i.column])).toEqual([['json/key-twice', 4, 'basis']]);
  });
  it('may state one key in two objects, and a value as often as they like', async () => {
    const text =
      '{ "company": { "name": "a\\"name\\":", "address": "basis" }, "conductorColours": { "necHighLeg": "basis" }, "basis": "iec" }';
    expect((await readSettings(file('once-key.json', text))).unreadable).toEqual([]);
  });
  it('tell of every key that there is none of, and of the value of a wrong one', async () => {
    const text = '{\n "one": 1,\n "two": 2,\n "basis": 5\n}';
    const { unreadable } = await readSettings(file('keys.json', text));
    expect(unreadable.map((i) => [i.line, i.column, saidOf(i).found])).toEqual([
      [4, 'basis', '5'],
      [2, 'one', 'one'],
      [3, 'two', 'two'],
    ]);
  });
  it.each(['1e308', '1e999', '1e7', '-1', '"3"', 'null', '[]'])('take no threshold of %s', async (figure) => {
    const text = `{ "thresholds": { "continuousShare": ${figure} } }`;
    const { settings, unreadable } = await readSettings(file('huge.json', text));
    expect(settings).toEqual(defaultSettings());
    expect(unreadable.map((i) => [i.code, i.column])).toEqual([
      ['json/key-wrong', 'thresholds.continuousShare'],
    ]);
  });
  it('that are no JSON say from which line on', async () => {
    const { unreadable } = await readSettings(
      file('broken.json', '{\n  "units": {\n    "length": "m",\n  }\n}\n'),
    );
    expect(unreadable.map((i) => [i.code, i.line])).toEqual([['json/not-valid', 4]]);
  });
  it('that are not there say so', async () => {
    expect((await readSettings(join(at, 'gone.json'))).unreadable.map((i) => i.code)).toEqual([
      'file/not-there',
    ]);
  });
  it('pollute no prototype', async () => {
    await readSettings(
      file(
        'proto.json',
        '{ "__proto__": { "polluted": true }, "company": { "__proto__": { "polluted": true } } }',
      ),
    );
    await readColumnMap(
      file(
        'proto-map.json',
        '{ "columns": { "__proto__": "tag" }, "words": { "kind": { "__proto__": "array" } } }',
      ),
    );
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

describe('a column map', () => {
  it('with a field that there is none of is not used', async () => {
    const { map, unreadable } = await readColumnMap(
      file('m.json', '{\n "columns": {\n  "Ref": "tagg"\n }\n}'),
    );
    expect(map).toBeNull();
    expect(unreadable.map((i) => [i.code, i.line, i.column])).toEqual([['json/key-wrong', 3, 'columns.Ref']]);
    expect(saidOf(unreadable[0]).found).toBe('"tagg"');
    expect(saidOf(unreadable[0]).message).toContain('neither a field');
  });
  it('that names a heading twice is not used', async () => {
    const { map, unreadable } = await readColumnMap(
      file('twice.json', '{ "columns": { "Ref": "tag", "ref ": "kind" } }'),
    );
    expect(map).toBeNull();
    expect(unreadable.map((i) => i.code)).toEqual(['map/heading-twice']);
  });
  it('that names a heading twice in the same words is not used either', async () => {
    const { map, unreadable } = await readColumnMap(
      file('same.json', '{ "columns": { "Length": "run_length", "Length": null } }'),
    );
    expect(map).toBeNull();
    expect(unreadable.map((i) => [i.code, i.column])).toEqual([['json/key-twice', 'columns.Length']]);
  });
  it('can be drafted from a list, and reads that list the same', () => {
    const list = 'Tag;Type;Colour;Cable length (ft);Voltage;Voltage\nA;array;blue;"4,5";1;2\n';
    const first = readListText('list.csv', list, { settings: defaultSettings() });
    const [understood] = first.understood;
    const map = understood === undefined ? {} : draftColumnMap(understood);
    expect(map).toEqual({
      dialect: { encoding: 'utf-8', delimiter: ';', headingLine: 1 },
      columns: {
        Tag: 'tag',
        Type: 'kind',
        Colour: '?',
        'Cable length (ft)': { field: 'run_length', unit: 'ft' },
        Voltage: '?',
        'Voltage #2': '?',
      },
    });
    expect(ColumnMapSchema.safeParse(JSON.parse(JSON.stringify(map))).success).toBe(true);
    const again = readListText('list.csv', list, { settings: defaultSettings(), columns: map });
    expect(again.jobs.map(plainJob)).toEqual(first.jobs.map(plainJob));
    // What a draft leaves open is as unknown as before.
    expect(again.items).toEqual(first.items);
  });
});

describe("the company's files", () => {
  it('are those beside the first list, where they exist and no other is given', async () => {
    const folder = join(at, 'company');
    mkdirSync(folder);
    for (const name of ['a.csv', 'catalogue.csv', 'library.csv', 'settings.json'])
      writeFileSync(join(folder, name), '');
    const beside = {
      catalogue: join(folder, 'catalogue.csv'),
      library: join(folder, 'library.csv'),
      columns: undefined,
      settings: join(folder, 'settings.json'),
    };
    expect(await findCompanyFiles([join(folder, 'a.csv')], {})).toEqual(beside);
    expect(await findCompanyFiles([folder], {})).toEqual(beside);
    expect(await findCompanyFiles([folder], { catalogue: 'other.csv' })).toEqual({
      ...beside,
      catalogue: 'other.csv',
    });
    expect(await findCompanyFiles(['-'], {})).toEqual({
      catalogue: undefined,
      library: undefined,
      columns: undefined,
      settings: undefined,
    });
  });
});
