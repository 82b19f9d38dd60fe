import { describe, expect, it } from 'vitest';
import type { DueCheck, RegisterLine } from '../../src/model/register.js';
import type { SiteRecord } from '../../src/model/record.js';
import { registerOf } from '../../src/register/of-record.js';
import { entryOf, housingOf, readingOf, recordOf } from './records.js';

const TODAY = '2025-06-01';
const of = (more: Partial<SiteRecord>) => registerOf(recordOf('UF-901', more), TODAY);
const lines = (more: Partial<SiteRecord>): readonly RegisterLine[] => of(more).lines;
const checks = (more: Partial<SiteRecord>): readonly DueCheck[] => of(more).checks;

describe('what the register holds of a job', () => {
  it('tells of a protector what hangs where, since when, and by whom', () => {
    const photos = [{ file: 'p-1.jpg', sha256: 'ab' }];
    const [line, ...others] = lines({ housings: [housingOf('P-1', { entries: [entryOf({ photos })] })] });
    expect(others).toEqual([]);
    expect(line).toEqual({
      serial: '004100',
      dateCode: '2503',
      part: 'WK-TEASEL',
      maker: 'Wicklethorn Works',
      job: 'UF-901',
      jobName: 'Reed Hollow',
      address: '4 Sedge Lane, Quillmarsh',
      place: 'Shed / wall',
      protector: 'P-1',
      equipments: ['BAT'],
      ports: ['battery'],
      conductors: ['positive', 'negative'],
      dateFitted: '2025-03-14',
      by: 'crew 2',
      leadLength: 0.4,
      level: 460,
      firstLook: [],
      nextCheck: '2026-03-14',
      replacedBy: [],
      replacedOn: '',
      reason: '',
      photos: ['p-1.jpg'],
    });
  });

  it('has a line for each cartridge, and one for what has no serial on record', () => {
    const serials = ['1', '2', '3'].map((serial) => ({ serial, dateCode: '' }));
    const housings = [
      housingOf('P-1', { entries: [entryOf({ serials })] }),
      housingOf('P-2', { entries: [entryOf({ serials: [] })] }),
      housingOf('P-3', { entries: [entryOf({ serials: [{ serial: 'none', dateCode: '2503' }] })] }),
      housingOf('P-4', { entries: [entryOf({ outcome: 'not fitted', serials: [] })] }),
      housingOf('P-5', { entries: [] }),
    ];
    expect(lines({ housings }).map(({ protector, serial }) => `${protector} ${serial}`)).toEqual([
      'P-1 1',
      'P-1 2',
      'P-1 3',
      'P-2 ',
      'P-3 none',
    ]);
  });

  it('keeps what was replaced, and looks at what hangs there now alone', () => {
    const entries = [
      entryOf(),
      entryOf({
        outcome: 'replaced',
        partFitted: 'WK-BRACKEN',
        serials: [{ serial: '9', dateCode: '' }],
        serialRemoved: ['004100'],
        date: '2027-06-01',
        reason: 'light out',
      }),
    ];
    const readings = [
      readingOf('P-1'),
      readingOf('P-1', { date: '2026-03-20', found: 'dark' }),
      readingOf('P-1', { date: '2027-06-01', found: 'flickers' }),
      readingOf('P-1', { state: 'night', found: '', due: true }),
    ];
    const made = of({ housings: [housingOf('P-1', { entries })], readings });
    const [old, now] = made.lines;
    expect(old).toMatchObject({
      serial: '004100',
      replacedBy: ['9'],
      replacedOn: '2027-06-01',
      reason: 'light out',
      nextCheck: '',
      firstLook: [{ conductor: 'positive', state: 'always', found: 'lit' }],
      level: null,
    });
    expect(now).toMatchObject({
      serial: '9',
      part: 'WK-BRACKEN',
      dateFitted: '2027-06-01',
      replacedOn: '',
      nextCheck: '2028-06-01',
      firstLook: [{ found: 'flickers' }],
    });
    expect(made.checks.map(({ what, due, serials }) => [what, due, serials])).toEqual([
      ['look', '2028-06-01', ['9']],
    ]);
  });

  it('counts the year from the last look, and shows the first one', () => {
    const readings = [
      readingOf('P-1', { date: '2026-04-02' }),
      readingOf('P-1'),
      readingOf('P-1', { kind: 'volts', date: '2030-01-01', found: '51' }),
    ];
    const [line] = lines({
      readings: readings.map((one, i) => ({ ...one, found: i === 0 ? 'dark' : one.found })),
    });
    expect(line).toMatchObject({ nextCheck: '2027-04-02', firstLook: [{ found: 'lit' }] });
  });

  it('makes one check of the readings of one visit, as soon as it can be', () => {
    const night = { state: 'night', found: '', due: true, expected: 'dark' } as const;
    const readings = [
      readingOf('P-1', night),
      readingOf('P-1', { ...night, channel: 2, conductor: 'negative' }),
      readingOf('P-1', { ...night, channel: 3, conductor: 'N', due: false }),
      readingOf('P-1', {
        ...night,
        state: 'sun',
        channel: 2,
        conductor: 'negative',
        expected: 'lit',
        date: '',
      }),
    ];
    expect(checks({ readings })).toMatchObject([
      {
        what: 'reading',
        due: '2025-03-14',
        kind: 'light',
        state: 'night',
        conductors: ['positive', 'negative'],
        expected: ['dark'],
      },
      { what: 'reading', due: '2025-03-14', state: 'sun', conductors: ['negative'], expected: ['lit'] },
      { what: 'look', due: '2026-03-14' },
    ]);
  });

  it('asks for no reading again that was taken since', () => {
    const readings = [
      readingOf('P-1', { state: 'night', found: '', due: true }),
      readingOf('P-1', { state: 'night', found: 'dark', date: '2025-03-20' }),
    ];
    expect(checks({ readings }).map(({ what }) => what)).toEqual(['look']);
  });

  it('goes by the days that the record states', () => {
    const readings = [readingOf('P-1', { state: 'night', found: '', due: true })];
    const due = [
      { protector: 'P-1', kind: 'light', state: 'night', on: '2025-04-01' },
      { protector: 'P-1', kind: 'look', state: '', on: '2025-09-14' },
    ] as const;
    expect(checks({ readings, due: [...due] }).map(({ what, due: on }) => [what, on])).toEqual([
      ['reading', '2025-04-01'],
      ['look', '2025-09-14'],
    ]);
    expect(lines({ due: [...due] })[0]).toMatchObject({ nextCheck: '2025-09-14' });
  });

  it('takes a serial without an outcome for a protector that hangs there, and nothing for none', () => {
    const open = entryOf({ outcome: null });
    expect(lines({ housings: [housingOf('P-1', { entries: [open] })] })).toHaveLength(1);
    const none = entryOf({ outcome: null, serials: [] });
    expect(lines({ housings: [housingOf('P-1', { entries: [none] })] })).toEqual([]);
  });

  it('has due by today what has no day on record', () => {
    const housings = [housingOf('P-1', { entries: [entryOf({ date: '' })] })];
    const readings = [readingOf('P-1', { state: 'night', found: '', due: true, date: '' })];
    expect(checks({ housings, readings }).map(({ what, due }) => [what, due])).toEqual([['reading', TODAY]]);
    expect(lines({ housings })[0]).toMatchObject({ dateFitted: '', nextCheck: '' });
  });
});
