import { describe, expect, it } from 'vitest';
import { termsOf, type HousingEntry } from '../../src/register/terms.js';

/** An entry in short: outcome, date, serials, serials removed. */
function entry(
  outcome: HousingEntry['outcome'],
  date: string,
  serials: readonly string[] = [],
  serialRemoved: readonly string[] = [],
  reason = '',
): HousingEntry {
  return {
    outcome,
    date,
    serials: serials.map((serial) => ({ serial, dateCode: '' })),
    serialRemoved,
    reason,
  };
}

/** Terms in short: `SERIALS from DATE`, ` until DATE, then SERIALS`. */
const told = (entries: readonly HousingEntry[]): string[] =>
  termsOf(entries).map(({ entry: { serials }, from, end }) => {
    const until = end === undefined ? '' : ` until ${end.date}, then ${end.by.join('+')} (${end.reason})`;
    return `${serials.map(({ serial }) => serial).join('+')} from ${from}${until}`;
  });

describe('what hangs in a housing, by its record', () => {
  it.each<[string, HousingEntry[], string[]]>([
    ['nothing recorded', [], []],
    ['fitted', [entry('fitted', '2025-03-14', ['1', '2'])], ['1+2 from 2025-03-14']],
    ['an existing one kept', [entry('kept', '2025-03-14', ['1'])], ['1 from 2025-03-14']],
    ['not fitted', [entry('not fitted', '2025-03-14')], []],
    [
      'fitted after all',
      [entry('not fitted', '2025-03-14'), entry('fitted', '2025-04-01', ['1'])],
      ['1 from 2025-04-01'],
    ],
    [
      'recorded wrong, then right',
      [entry('fitted', '2025-03-14', ['1']), entry('fitted', '2025-03-15', ['2'])],
      ['2 from 2025-03-15'],
    ],
    [
      'recorded as fitted, then as not',
      [entry('fitted', '2025-03-14', ['1']), entry('not fitted', '2025-03-15')],
      [],
    ],
    [
      'moved later',
      [entry('fitted', '2025-03-14', ['1']), entry('moved', '2026-01-02')],
      ['1 from 2025-03-14'],
    ],
    [
      'replaced',
      [entry('fitted', '2025-03-14', ['1']), entry('replaced', '2027-06-01', ['9'], ['1'], 'light out')],
      ['1 from 2025-03-14 until 2027-06-01, then 9 (light out)', '9 from 2027-06-01'],
    ],
    [
      'replaced twice',
      [
        entry('fitted', '2025-03-14', ['1']),
        entry('replaced', '2027-06-01', ['9'], ['1'], 'surge'),
        entry('replaced', '2029-06-01', ['10'], ['9'], 'age'),
      ],
      [
        '1 from 2025-03-14 until 2027-06-01, then 9 (surge)',
        '9 from 2027-06-01 until 2029-06-01, then 10 (age)',
        '10 from 2029-06-01',
      ],
    ],
    [
      'a replacement recorded once more, with another serial',
      [
        entry('fitted', '2025-03-14', ['1']),
        entry('replaced', '2027-06-01', ['9'], ['1'], 'surge'),
        entry('replaced', '2027-06-02', ['8'], ['1'], 'surge'),
      ],
      ['1 from 2025-03-14 until 2027-06-02, then 8 (surge)', '8 from 2027-06-02'],
    ],
    [
      'replaced what no record tells of',
      [entry('replaced', '2027-06-01', ['9'], ['1'], 'recall')],
      ['1 from  until 2027-06-01, then 9 (recall)', '9 from 2027-06-01'],
    ],
    [
      'replaced, nobody wrote what was taken away',
      [entry('fitted', '2025-03-14', ['1']), entry('replaced', '2027-06-01', ['9'], [], 'damage')],
      ['1 from 2025-03-14 until 2027-06-01, then 9 (damage)', '9 from 2027-06-01'],
    ],
    [
      'removed, and another one fitted later',
      [
        entry('fitted', '2025-03-14', ['1']),
        entry('removed', '2027-06-01', [], ['1'], 'damage'),
        entry('fitted', '2027-07-01', ['9']),
      ],
      ['1 from 2025-03-14 until 2027-06-01, then  (damage)', '9 from 2027-07-01'],
    ],
    [
      'replaced after it was removed',
      [
        entry('fitted', '2025-03-14', ['1']),
        entry('removed', '2027-06-01', [], ['1'], 'damage'),
        entry('replaced', '2027-07-01', ['9'], [], 'damage'),
      ],
      ['1 from 2025-03-14 until 2027-06-01, then  (damage)', '9 from 2027-07-01'],
    ],
  ])('%s', (_name, entries, expected) => {
    expect(told(entries)).toEqual(expected);
  });
});
