import fc from 'fast-check';
import { convertIcsCalendar } from 'ts-ics';
import { describe, expect, it } from 'vitest';
import type { DueCheck } from '../../src/model/register.js';
import { STATES } from '../../src/model/words.js';
import { checksCalendar } from '../../src/output/calendar.js';

const LOOK: DueCheck = {
  due: '2026-03-14',
  job: 'UF-901',
  jobName: 'Reed Hollow',
  address: '4 Sedge Lane',
  place: 'Shed / wall',
  protector: 'P-3',
  part: 'MD-DC-75',
  serials: ['0001', '0002'],
  what: 'look',
  kind: '',
  state: '',
  conductors: [],
  expected: [],
};
const NIGHT: DueCheck = {
  ...LOOK,
  due: '2025-03-14',
  what: 'reading',
  kind: 'light',
  state: 'night',
  conductors: ['positive', 'negative'],
  expected: ['dark'],
};
const made = (checks: readonly DueCheck[], date = '2025-03-14'): string =>
  [...checksCalendar(checks, date)].join('');
/** Read by a program that isn't the one that wrote it. */
const readBack = (text: string) => convertIcsCalendar(undefined, text).events ?? [];

/** What a calendar can hold of a text: one line without control characters. */
const shown = (text: string): string =>
  text
    .replace(/[\t\r\n\u0085\u2028\u2029]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Surrogate}\ufffe\uffff]/gu, '\ufffd');

const day = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2099-12-30'), noInvalidDate: true })
  .map((d) => d.toISOString().slice(0, 10));
const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.string({
    unit: fc.constantFrom('\\', ';', ',', '\n', '\r', ':', '"', 'n', 'N', ' ', '\t'),
    maxLength: 90,
  }),
  fc.constantFrom('x\r\nEND:VEVENT\r\nBEGIN:VALARM', '=1+1', '\\n', 'a;b,c\\', '\u202eabc', 'BEGIN:VEVENT'),
);
const anyCheck: fc.Arbitrary<DueCheck> = fc.record({
  due: day,
  job: hostile,
  jobName: hostile,
  address: hostile,
  place: hostile,
  protector: hostile,
  part: hostile,
  serials: fc.array(hostile, { maxLength: 3 }),
  what: fc.constantFrom('reading' as const, 'look' as const),
  kind: fc.constantFrom('volts' as const, 'light' as const, 'flag' as const, '' as const),
  state: fc.constantFrom(...STATES, '' as const),
  conductors: fc.array(hostile, { maxLength: 3 }),
  expected: fc.array(hostile, { maxLength: 3 }),
});

describe('the calendar of what is due', () => {
  it('holds an all-day event a check, stamped by the date of the run', () => {
    const [look, night] = readBack(made([LOOK, NIGHT]));
    expect(look?.summary).toBe('UF-901: Yearly look at P-3');
    expect(look?.location).toBe('Reed Hollow, 4 Sedge Lane');
    expect(look?.start).toMatchObject({ type: 'DATE', date: new Date('2026-03-14T00:00:00Z') });
    expect(look?.end).toMatchObject({ type: 'DATE', date: new Date('2026-03-15T00:00:00Z') });
    expect(look?.stamp.date).toEqual(new Date('2025-03-14T00:00:00Z'));
    expect(night?.summary).toBe('UF-901: Look at the light of P-3 while: night');
    expect(night?.description).toContain('Expected: dark');
  });

  it('is whole without a check', () => {
    expect(made([])).toMatch(/^BEGIN:VCALENDAR\r\n[^]*END:VCALENDAR\r\n$/);
    expect(readBack(made([]))).toEqual([]);
  });

  it('keeps the UID of a check, whatever its day, its words and the day of the run', () => {
    const uid = (check: DueCheck, date?: string) => readBack(made([check], date))[0]?.uid;
    const later: DueCheck = {
      ...LOOK,
      due: '2027-03-14',
      address: 'moved',
      serials: ['0009'],
      part: 'other',
    };
    expect(uid(later, '2026-03-20')).toBe(uid(LOOK));
    const others: DueCheck[] = [
      LOOK,
      NIGHT,
      { ...NIGHT, state: 'sun' },
      { ...NIGHT, kind: 'flag' },
      { ...LOOK, protector: 'P-4' },
      { ...LOOK, job: 'UF-902' },
    ];
    expect(new Set(others.map((check) => uid(check))).size).toBe(others.length);
  });

  it('counts on with the days of the runs, so that a calendar takes the later one', () => {
    const sequence = (date: string) => readBack(made([LOOK], date))[0]?.sequence ?? 0;
    expect(sequence('2026-03-14') - sequence('2025-03-14')).toBe(365);
  });

  it('says what nobody opens, and who is heard before it', () => {
    for (const event of readBack(made([LOOK, NIGHT]))) {
      expect(event.description).toMatch(/CAUTION: look .* with every cover closed/);
      expect(event.description).toMatch(/authority having jurisdiction/);
    }
    expect(readBack(made([{ ...NIGHT, kind: 'volts' }]))[0]?.description).toMatch(
      /DANGER: shock and arc flash/,
    );
  });

  it('brings every text back, whatever it holds, in lines of at most 75 octets', () => {
    fc.assert(
      fc.property(fc.array(anyCheck, { maxLength: 4 }), day, (checks, date) => {
        const text = made(checks, date);
        const lines = text.split('\r\n');
        expect(lines.pop()).toBe('');
        for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\p{Cc}\p{Surrogate}]/u);
        const unfolded = text.replaceAll('\r\n ', '').split('\r\n');
        expect(unfolded.filter((line) => line === 'BEGIN:VEVENT')).toHaveLength(checks.length);
        expect(unfolded.filter((line) => line === 'END:VEVENT')).toHaveLength(checks.length);
        const locations = unfolded.filter((line) => line.startsWith('LOCATION:')).map(unescaped);
        const expected = checks
          .map(({ jobName, address }) => [jobName, address].filter((part) => part !== '').join(', '))
          .filter((where) => where !== '');
        expect(locations).toEqual(expected.map(shown));
      }),
      { numRuns: 300 },
    );
  });
});

/** The value of a content line, by RFC 5545 section 3.3.11. */
const unescaped = (line: string): string =>
  line
    .slice(line.indexOf(':') + 1)
    .replace(/\\([\\;,nN])/g, (_all, c: string) => (c === 'n' || c === 'N' ? '\n' : c));
