import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shuntbook } from '../commands/command.js';
import { siteOf, type Row } from './site.js';

const recordText = (out: string): string => readFileSync(join(out, 'UF-108', 'record.json'), 'utf8');

describe('what came back', () => {
  it('untouched is an open record without a conflict, and the plan stays as it is', async () => {
    const site = await siteOf();
    const plan = readFileSync(join(site.out, 'UF-108', 'plan.json'), 'utf8');
    const told = await shuntbook([
      'record',
      join(site.out, 'UF-108'),
      '--out',
      site.out,
      '--no-pack',
      '--date',
      '2026-05-01',
    ]);
    expect(told.status).toBe(1);
    expect(site.json().state).toBe('record open');
    expect(site.items().map(({ code, severity }) => [code, severity])).toEqual(
      ['P-1', 'P-2', 'P-3'].map(() => ['record/nothing-recorded', 'missing']),
    );
    expect(readFileSync(join(site.out, 'UF-108', 'plan.json'), 'utf8')).toBe(plan);
  });

  it('twice changes nothing', async () => {
    const site = await siteOf();
    site.edit('site-record.csv', { protector: 'P-2' }, { lead_length: '1.4 m', part_fitted: 'WK-HAWTHORN' });
    await site.record();
    const before = recordText(site.out);
    const told = await site.record();
    expect(recordText(site.out)).toBe(before);
    expect((JSON.parse(told.out) as { jobs: { changed: boolean }[] }).jobs[0]?.changed).toBe(false);
  });

  it('of a later time counts, and the other stays in the history', async () => {
    const site = await siteOf();
    await site.record();
    site.edit('site-record.csv', { protector: 'P-2' }, { serial: '700999', time: '15:00' });
    await site.record();
    const housing = site.json().housings.find(({ tag }) => tag === 'P-2');
    expect(housing?.entries.map(({ serials }) => serials[0]?.serial)).toEqual(['700102', '700999']);
    expect(housing?.current).toBe(1);
    expect(site.items()).toEqual([]);
  });

  it('of an earlier time goes into the history', async () => {
    const site = await siteOf();
    await site.record();
    site.edit('site-record.csv', { protector: 'P-2' }, { serial: '700999', time: '8:05' });
    await site.record();
    const housing = site.json().housings.find(({ tag }) => tag === 'P-2');
    expect(housing?.entries.map(({ time }) => time)).toEqual(['08:05', '10:40']);
    expect(housing?.entries[housing.current]?.serials[0]?.serial).toBe('700102');
  });

  it('of the same time: the one read last counts, to confirm', async () => {
    const site = await siteOf();
    await site.record();
    site.edit('site-record.csv', { protector: 'P-2' }, { serial: '700999' });
    const told = await site.record();
    const housing = site.json().housings.find(({ tag }) => tag === 'P-2');
    expect(housing?.entries[housing.current]?.serials[0]?.serial).toBe('700999');
    expect(
      site.items().map((item) => [item['code'], item['severity'], item['line'], item['column']]),
    ).toEqual([['record/two-at-once', 'confirm', '3', 'date']]);
    expect(told.status).toBe(0);
  });

  it('a look a year later never overwrites the first', async () => {
    const site = await siteOf();
    await site.record();
    const lit = { protector: 'P-1', channel: '1', kind: 'light', state: 'utility on' };
    site.edit('site-readings.csv', lit, { found: 'dark', date: '2027-04-14' });
    await site.record();
    const looks = site
      .json()
      .readings.filter(
        (one) => one.tag === 'P-1' && one.channel === 1 && one.kind === 'light' && one.state === 'utility on',
      );
    expect(looks.map(({ date, found }) => [date, found])).toEqual([
      ['2026-04-14', 'lit'],
      ['2027-04-14', 'dark'],
    ]);
    expect(site.items().map(({ code }) => code)).toEqual(['record/look-other']);
  });

  it('sorted, its columns in another order, with decimal commas, semicolons and dates of another country', async () => {
    const site = await siteOf();
    await site.record();
    const asGiven = site.json();
    rmSync(join(site.out, 'UF-108', 'record.json'));
    const record = site.rows('site-record.csv').map((row): Row => ({
      ...row,
      lead_length: { 'P-1': '38,1 cm', 'P-2': '45,72 cm', 'P-3': '43,18 cm' }[row['protector'] ?? ''] ?? '',
      date: '14.04.2026',
    }));
    const readings = site
      .rows('site-readings.csv')
      .map((row): Row => ({ ...row, found: (row['found'] ?? '').replace('.', ','), date: '14.04.2026' }));
    const turned = (rows: readonly Row[]): string[] => Object.keys(rows[0] ?? {}).reverse();
    site.write('site-record.csv', record.reverse(), turned(record), ';');
    site.write('site-readings.csv', readings.reverse(), turned(readings), ';');
    await site.record();
    const bare = ({ housings, readings: of }: typeof asGiven): unknown => ({
      housings: housings.map(({ entries }) => entries.map((entry) => ({ ...entry, origin: 0 }))),
      readings: of.map((one) => ({ ...one, origin: 0 })),
    });
    expect(bare(site.json())).toEqual(bare(asGiven));
    expect(site.items()).toEqual([]);
  });

  it('of a replaced serial: the old one stays in the history', async () => {
    const site = await siteOf();
    await site.record();
    site.edit(
      'site-record.csv',
      { protector: 'P-2' },
      {
        outcome: 'replaced',
        serial: '801234',
        serial_removed: '700102',
        reason: 'surge',
        date: '2028-02-01',
      },
    );
    const told = await site.record();
    expect(told.status).toBe(0);
    const register = readFileSync(join(site.out, 'register.csv'), 'utf8');
    expect(register).toContain('700102');
    expect(register).toContain('801234');
  });

  it('its photos are kept in the job’s folder, by name and SHA-256', async () => {
    const site = await siteOf();
    writeFileSync(join(site.back, 'box.jpg'), 'a picture');
    site.edit('site-record.csv', { protector: 'P-2' }, { photo: 'box.jpg; ../../etc/passwd' });
    await site.record();
    expect(existsSync(join(site.out, 'UF-108', 'photos', 'box.jpg'))).toBe(true);
    const photos = site.json().housings.find(({ tag }) => tag === 'P-2')?.entries[0]?.photos;
    expect(photos?.map(({ file, sha256 }) => [file, sha256.length])).toEqual([
      ['box.jpg', 64],
      ['passwd', 0],
    ]);
    expect(site.items().map(({ code }) => code)).toEqual(['record/photo-not-there']);
  });

  it('for another plan is told line by line', async () => {
    const site = await siteOf();
    const list = readFileSync('fixtures/demo/grid.csv', 'utf8');
    expect(list).toContain('UF-108');
    const [mark] = site.rows('site-record.csv').map(({ plan }) => plan);
    await shuntbook([
      'plan',
      'fixtures/demo',
      '--job',
      'UF-108',
      '--catalogue',
      withoutFoxglove(site.back),
      '--date',
      '2026-03-02',
      '--out',
      site.out,
      '--quiet',
    ]);
    const told = await site.record();
    expect(told.status).toBe(1);
    const [item] = site.items().filter(({ code }) => code === 'record/other-plan');
    expect(item?.['found']).toBe(mark);
    expect(item?.['message']).toContain('P-1: its part was WK-FOXGLOVE and is');
  });

  it('is held against the plan without the files of the company only where they are given', async () => {
    const site = await siteOf();
    rmSync(join(site.out, '.shuntbook', 'company'), { recursive: true });
    site.edit('site-record.csv', { protector: 'P-2' }, { part_fitted: 'WK-HAWTHORN' });
    await site.record();
    expect(site.items().map((item) => [item['code'], item['severity']])).toContainEqual([
      'record/not-planned-anew',
      'missing',
    ]);
    expect(site.json().housings.find(({ tag }) => tag === 'P-2')?.level).toBeNull();
    await site.record(
      '--catalogue',
      'fixtures/demo/catalogue.csv',
      '--settings',
      'fixtures/demo/settings.json',
    );
    expect(site.items().map(({ code }) => code)).toEqual(['record/part-other']);
    expect(site.json().housings.find(({ tag }) => tag === 'P-2')?.level).toBeGreaterThan(600);
  });

  it('a file that is no form ends with 2, the others are taken', async () => {
    const site = await siteOf();
    writeFileSync(join(site.back, 'site-record-odd.csv'), 'name,colour\nbox,red\n');
    const told = await site.record();
    expect(told.status).toBe(2);
    expect(site.json().state).toBe('as built');
  });

  it('a serial that hangs at another job is a conflict, until a record removes it there', async () => {
    const site = await siteOf();
    await site.record();
    const other = join(site.back, '..', 'other');
    cpSync('fixtures/demo/returns/UF-102', other, { recursive: true });
    const path = join(other, 'site-record.csv');
    writeFileSync(
      path,
      readFileSync(path, 'utf8')
        .replace(/510\d\d\d(?=,2605,fitted,,House \/ east wall)/, '700102')
        .replace(/(UF-102,\w+,P-4,WK-FOXGLOVE,WK-FOXGLOVE),[^,]*/, '$1,700102'),
    );
    const run = (): ReturnType<typeof shuntbook> =>
      shuntbook(['record', other, '--out', site.out, '--no-pack', '--date', '2026-05-01']);
    await run();
    const twice = site.items().filter(({ code }) => code === 'record/serial-twice');
    expect(twice.map((item) => [item['job'], item['severity']])).toEqual([['UF-102', 'conflict']]);
    site.edit('site-record.csv', { protector: 'P-2' }, { outcome: 'removed', date: '2026-04-15' });
    await site.record();
    await run();
    expect(site.items().filter(({ code }) => code === 'record/serial-twice')).toEqual([]);
  });
});

/** A catalogue without one part. */
function withoutFoxglove(folder: string): string {
  const path = join(folder, 'catalogue.csv');
  const text = readFileSync('fixtures/demo/catalogue.csv', 'utf8');
  writeFileSync(
    path,
    text
      .split('\n')
      .filter((line) => !line.startsWith('WK-FOXGLOVE'))
      .join('\n'),
  );
  return path;
}
