import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { SiteRecord } from '../../src/model/record.js';
import { jsonText } from '../../src/output/json.js';
import { lockOutput } from '../../src/output/lock.js';
import { entryOf, housingOf, readingOf, recordOf } from '../register/records.js';
import { freshFolder, projectPath, shuntbook } from './command.js';

/** An output folder with the records of some jobs. */
function outOf(...records: readonly SiteRecord[]): string {
  const out = freshFolder();
  for (const record of records) {
    mkdirSync(join(out, record.job));
    writeFileSync(join(out, record.job, 'record.json'), JSON.stringify(record));
  }
  return out;
}

const table = (out: string, name: string): Record<string, string>[] =>
  parse(readFileSync(join(out, name), 'utf8'), { columns: true });

const serial = (number: string) => ({ serials: [{ serial: number, dateCode: '' }] });
const one = (job: string, tag: string, number: string, more: Partial<SiteRecord> = {}): SiteRecord =>
  recordOf(job, { housings: [housingOf(tag, { entries: [entryOf(serial(number))] })], ...more });

const DATE = ['--date', '2026-04-01'];

describe('the register made anew', () => {
  it('puts every job in, in natural order, with what is due and a calendar of it', async () => {
    const out = outOf(
      one('UF-910', 'P-1', '004102', {
        state: 'record open',
        readings: [readingOf('P-1', { state: 'night', found: '', due: true })],
      }),
      one('UF-92', 'P-1', '004101'),
    );
    mkdirSync(join(out, 'UF-93'));
    const told = await shuntbook(['register', '--out', out, ...DATE]);
    expect(told).toMatchObject({ status: 0, err: '' });
    expect(told.out).toBe(
      'register.csv: 2 protectors of 2 jobs with a record (1 record open, 1 as built).\n' +
        'checks-due.csv, checks-due.ics: 3 checks due, 3 of them overdue.\n',
    );
    expect(table(out, 'register.csv')).toMatchObject([
      {
        serial: '004101',
        job: 'UF-92',
        lead_length: '0.4',
        level: '460',
        date_fitted: '2025-03-14',
        next_check: '2026-03-14',
      },
      {
        serial: '004102',
        job: 'UF-910',
        equipment: 'BAT',
        port: 'battery',
        conductors: 'positive; negative',
      },
    ]);
    expect(
      Object.keys(table(out, 'register.csv')[0] ?? {})
        .slice(0, 21)
        .join(),
    ).toBe(
      'serial,part,maker,job,job_name,address,place,protector,equipment,port,conductors,date_fitted,by,lead_length,level,first_look,next_check,replaced_by,replaced_on,reason,photo',
    );
    expect(table(out, 'checks-due.csv')).toMatchObject([
      {
        due: '2025-03-14',
        overdue: 'yes',
        job: 'UF-910',
        check: 'reading',
        state: 'night',
        conductors: 'positive',
      },
      { due: '2026-03-14', job: 'UF-92', check: 'yearly look' },
      { due: '2026-03-14', job: 'UF-910' },
    ]);
    expect(readFileSync(join(out, 'checks-due.ics'), 'utf8').match(/BEGIN:VEVENT/g)).toHaveLength(3);
    expect(readFileSync(join(out, 'checks-due.ics'), 'utf8')).toContain('DTSTAMP:20260401T000000Z');
  });

  it('is the same from the same records, whatever stood there before', async () => {
    const out = outOf(one('UF-1', 'P-1', '1'), one('UF-2', 'P-1', '2'));
    const files = ['register.csv', 'checks-due.csv', 'checks-due.ics'];
    const contents = () => files.map((name) => readFileSync(join(out, name), 'utf8'));
    await shuntbook(['register', '--out', out, ...DATE]);
    const first = contents();
    for (const name of files) writeFileSync(join(out, name), 'made up');
    await shuntbook(['register', '--out', out, ...DATE]);
    expect(contents()).toEqual(first);
    expect(readdirSync(out).sort()).toEqual(['.shuntbook', 'UF-1', 'UF-2', ...files].sort());
  });

  it('empties the tables once no record is left', async () => {
    const out = outOf(one('UF-1', 'P-1', '1'));
    await shuntbook(['register', '--out', out, ...DATE]);
    rmSync(join(out, 'UF-1', 'record.json'));
    await shuntbook(['register', '--out', out, ...DATE]);
    expect(table(out, 'register.csv')).toEqual([]);
    expect(table(out, 'checks-due.csv')).toEqual([]);
  });

  it.each<[string, (path: string) => unknown, RegExp]>([
    [
      'is cut off',
      (path) => {
        writeFileSync(path, '{"version": 1, "job"');
      },
      /no JSON: cut off/,
    ],
    [
      'is of something else',
      (path) => {
        writeFileSync(path, '{"version": 9}');
      },
      /isn’t as shuntbook writes records/,
    ],
    [
      'is a folder',
      (path) => {
        mkdirSync(path);
      },
      /a link, a folder/,
    ],
    [
      'is a link',
      (path) => {
        symlinkSync('/etc/hostname', path);
      },
      /a link, a folder/,
    ],
  ])('names a record that %s, and goes on', async (_name, spoil, because) => {
    const out = outOf(one('UF-1', 'P-1', '1'), one('UF-3', 'P-1', '3'));
    mkdirSync(join(out, 'UF-2'));
    spoil(join(out, 'UF-2', 'record.json'));
    const told = await shuntbook(['register', '--out', out, ...DATE]);
    expect(told.status).toBe(2);
    expect(told.err).toMatch(because);
    expect(told.err).toContain('UF-2/record.json');
    expect(told.err).not.toContain(out);
    expect(table(out, 'register.csv').map(({ job }) => job)).toEqual(['UF-1', 'UF-3']);
  });

  it('reads a record that somebody wrote otherwise: on one line, or in another order', async () => {
    const record = one('UF-1', 'P-1', '1');
    const out = outOf(record);
    const path = join(out, 'UF-1', 'record.json');
    const { asBuilt, ...rest } = record;
    const forms = [
      jsonText(record),
      JSON.stringify(record),
      jsonText({ asBuilt, ...rest }),
      JSON.stringify(record, null, 4),
    ];
    for (const text of forms) {
      writeFileSync(path, text);
      expect(await shuntbook(['register', '--out', out, ...DATE])).toMatchObject({ status: 0 });
      expect(table(out, 'register.csv')).toMatchObject([{ serial: '1', job: 'UF-1' }]);
    }
    // Cut off where the register asks nothing any more: the record is broken all the same.
    writeFileSync(path, jsonText(record).slice(0, -3));
    expect(await shuntbook(['register', '--out', out, ...DATE])).toMatchObject({ status: 2 });
    expect(table(out, 'register.csv')).toEqual([]);
  });

  it('says where one serial hangs twice, and where one job has two folders', async () => {
    const out = outOf(
      one('UF-1', 'P-1', 'a1'),
      one('UF-2', 'P-4', 'A1'),
      one('UF-3', 'P-1', 'none'),
      one('UF-4', 'P-1', 'none'),
    );
    const twice = await shuntbook(['register', '--out', out, ...DATE]);
    expect(twice.status).toBe(1);
    expect(twice.err).toContain('hangs at P-1 of UF-1 and P-4 of UF-2');
    mkdirSync(join(out, 'UF-9-copy'));
    writeFileSync(join(out, 'UF-9-copy', 'record.json'), JSON.stringify(one('UF-3', 'P-1', 'x')));
    const copied = await shuntbook(['register', '--out', out, ...DATE, '--json']);
    expect(copied.status).toBe(2);
    expect(JSON.parse(copied.out)).toMatchObject({
      version: 1,
      command: 'register',
      exitStatus: 2,
      openItems: [{ code: 'register/job-twice' }, { code: 'register/serial-twice' }],
    });
    expect(table(out, 'register.csv').map(({ serial: of }) => of)).toEqual(['a1', 'A1', 'none', 'none']);
  });

  it('lets no cell run as a formula', async () => {
    const out = outOf(one('UF-1', 'P-1', '=1+1', { jobName: '@SUM(A1)', address: '+1; =2' }));
    await shuntbook(['register', '--out', out, ...DATE]);
    const [line] = table(out, 'register.csv');
    expect(line).toMatchObject({ serial: "'=1+1", job_name: "'@SUM(A1)" });
    expect(line?.['address']).toMatch(/^'\+1;' =2$/);
  });

  it('waits for nobody: where another run holds the folder it says so, and writes nothing', async () => {
    const out = outOf(one('UF-1', 'P-1', '1'));
    const lock = await lockOutput(join(out, '.shuntbook'), out);
    const held = await shuntbook(['register', '--out', out, ...DATE]);
    expect(held.status).toBe(75);
    expect(readdirSync(out)).not.toContain('register.csv');
    // A question only reads.
    expect((await shuntbook(['register', '--out', out, '--part', 'WK-TEASEL', ...DATE])).status).toBe(0);
    await lock.release();
    expect((await shuntbook(['register', '--out', out, ...DATE])).status).toBe(0);
  });

  it('names an output folder that is not there, and makes none', async () => {
    const out = join(freshFolder(), 'gone');
    const told = await shuntbook(['register', '--out', out, ...DATE]);
    expect(told.status).toBe(2);
    expect(told.err).toContain('There is no folder');
  });
});

describe('a run of plan', () => {
  it('tells how far the record of each job is, and makes the register with it', async () => {
    const out = freshFolder();
    const plan = () =>
      shuntbook(['plan', projectPath('fixtures/demo/grid.csv'), '--job', 'UF-102', '--out', out, ...DATE]);
    await plan();
    expect(table(out, 'report.csv')).toMatchObject([{ job: 'UF-102', record: 'planned' }]);
    expect(readdirSync(out)).not.toContain('register.csv');
    const record = one('UF-102', 'P-1', '004100', { state: 'record open' });
    writeFileSync(join(out, 'UF-102', 'record.json'), JSON.stringify(record));
    expect(await plan()).toMatchObject({ status: 0 });
    expect(table(out, 'report.csv')).toMatchObject([
      { job: 'UF-102', status: 'complete', record: 'record open' },
    ]);
    expect(table(out, 'register.csv')).toMatchObject([{ serial: '004100', job: 'UF-102' }]);
    expect(table(out, 'checks-due.csv')).toHaveLength(1);
  });
});

describe('a question to the register', () => {
  const out = () =>
    outOf(
      one('UF-1', 'P-1', '004100'),
      one('UF-2', 'P-1', '004150'),
      one('UF-3', 'P-1', 'none'),
      one('UF-4', 'P-1', '004200'),
      recordOf('UF-5', {
        housings: [
          housingOf('P-2', {
            entries: [
              entryOf(serial('004160')),
              entryOf({
                outcome: 'replaced',
                ...serial('004900'),
                serialRemoved: ['004160'],
                date: '2026-01-02',
                reason: 'surge',
              }),
            ],
          }),
        ],
      }),
    );

  it('tells who has a part by its serials, with addresses, and who may have it', async () => {
    const told = await shuntbook([
      'register',
      '--out',
      out(),
      '--part',
      'WK-TEASEL',
      '--serial',
      '004100..004199',
      ...DATE,
    ]);
    expect(told.status).toBe(0);
    expect(
      told.out
        .split('\n')
        .slice(2, -1)
        .map((line) => line.split(/ {2,}/)),
    ).toEqual([
      [
        '004100',
        'WK-TEASEL',
        'UF-1',
        'Reed Hollow',
        '4 Sedge Lane, Quillmarsh',
        'Shed / wall',
        'P-1',
        '2025-03-14',
        'hangs there',
      ],
      [
        '004150',
        'WK-TEASEL',
        'UF-2',
        'Reed Hollow',
        '4 Sedge Lane, Quillmarsh',
        'Shed / wall',
        'P-1',
        '2025-03-14',
        'hangs there',
      ],
      [
        '004160',
        'WK-TEASEL',
        'UF-5',
        'Reed Hollow',
        '4 Sedge Lane, Quillmarsh',
        'Shed / wall',
        'P-2',
        '2025-03-14',
        'replaced 2026-01-02',
      ],
      [
        'none',
        'WK-TEASEL',
        'UF-3',
        'Reed Hollow',
        '4 Sedge Lane, Quillmarsh',
        'Shed / wall',
        'P-1',
        '2025-03-14',
        'hangs there; untold',
      ],
    ]);
    expect(told.err).toContain('One protector of WK-TEASEL has no serial on record');
  });

  it('takes serials of a file, and leaves names and addresses out where asked', async () => {
    const folder = out();
    const file = join(folder, 'recalled.txt');
    writeFileSync(file, 'serial\n004150\n004999\n');
    const told = await shuntbook([
      'register',
      '--out',
      folder,
      '--serials',
      file,
      '--redact',
      '--json',
      ...DATE,
    ]);
    const answer = JSON.parse(told.out) as { protectors: { serial: string }[] };
    expect(answer.protectors.map(({ serial: of }) => of)).toEqual(['004150']);
    expect(told.out + told.err).not.toMatch(/Reed|Sedge|crew 2/);
    expect(readdirSync(folder)).not.toContain('register.csv');
  });

  it('tells what is due before a day, soonest first', async () => {
    const told = await shuntbook(['register', '--out', out(), '--due', '2026-12-31', ...DATE]);
    expect(
      told.out
        .split('\n')
        .slice(2, -1)
        .map((line) => line.split(/ {2,}/).slice(0, 2)),
    ).toEqual([
      ['2026-03-14 overdue', 'UF-1'],
      ['2026-03-14 overdue', 'UF-2'],
      ['2026-03-14 overdue', 'UF-3'],
      ['2026-03-14 overdue', 'UF-4'],
    ]);
    expect((await shuntbook(['register', '--out', out(), '--due', '2026-03-14', ...DATE])).out).toBe(
      'Nothing is due.\n',
    );
  });

  it('leaves names out of the whole register, and writes nothing', async () => {
    const folder = out();
    const told = await shuntbook(['register', '--out', folder, '--redact', ...DATE]);
    expect(told.out.split('\n')).toHaveLength(2 + 6 + 1);
    expect(told.out).not.toMatch(/Reed|Sedge/);
    expect(readdirSync(folder)).not.toContain('register.csv');
  });

  it.each<[string, string[], number, RegExp]>([
    ['a range of other than digits', ['--serial', 'A1..A9'], 64, /--serials FILE/],
    ['ends of two lengths', ['--serial', '99..100'], 64, /different numbers of digits/],
    ['no range', ['--serial', '99'], 64, /FROM\.\.TO/],
    ['range and file', ['--serial', '1..2', '--serials', 'x'], 64, /both given/],
    ['a file that is not there', ['--serials', 'nowhere.txt'], 2, /nowhere\.txt can’t be read/],
    ['a day that is none', ['--due', '2026-02-30'], 64, /--due holds no date/],
    ['an empty part', ['--part', ''], 64, /--part is empty/],
  ])('refuses %s', async (_name, args, status, says) => {
    const told = await shuntbook(['register', '--out', out(), ...args]);
    expect(told.status).toBe(status);
    expect(told.err).toMatch(says);
    expect(told.out).toBe('');
  });
});
