import { describe, expect, it } from 'vitest';
import { dateOfRun } from '../../src/commands/date.js';

const TODAY = new Date(2026, 10, 5, 12);

describe('the date of a run', () => {
  it('is --date before SOURCE_DATE_EPOCH before today', () => {
    expect(dateOfRun('2024-02-29', '0', TODAY)).toBe('2024-02-29');
    expect(dateOfRun(undefined, '0', TODAY)).toBe('1970-01-01');
    expect(dateOfRun(undefined, '', TODAY)).toBe('2026-11-05');
    expect(dateOfRun(undefined, undefined, TODAY)).toBe('2026-11-05');
  });

  it('takes SOURCE_DATE_EPOCH in UTC', () => {
    expect(dateOfRun(undefined, '1772323199', TODAY)).toBe('2026-02-28');
    expect(dateOfRun(undefined, '1772323200', TODAY)).toBe('2026-03-01');
  });

  it.each(['2026-02-29', '2026-13-01', '26-01-01', '2026-1-1', 'today', '2026-01-01T00:00:00Z'])(
    'refuses %s',
    (date) => {
      expect(() => dateOfRun(date, undefined, TODAY)).toThrow('command/no-such-date');
    },
  );

  it.each(['-1', '1.5', 'now', '99999999999999'])('refuses an epoch of %s', (epoch) => {
    expect(() => dateOfRun(undefined, epoch, TODAY)).toThrow('command/no-such-date');
  });
});
