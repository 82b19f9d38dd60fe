import { describe, expect, it } from 'vitest';
import type { Origin } from '../../src/model/fact.js';
import type { Plan } from '../../src/model/plan.js';
import { current, levelVolts, neededCurrent, neededVolts } from '../../src/words/figures.js';
import { lengthUnitOf, paperLead, paperLength, reachWords } from '../../src/words/lengths.js';
import { knownHow } from '../../src/words/origin.js';

/** No figure may read as met where it isn't, nor as missed where it is kept. */
const tellsTheSame = (value: number, limit: number, printed: number): boolean =>
  value <= limit === printed <= limit;

describe('a needed voltage', () => {
  it.each([
    [461.45, 500, 462],
    [150, 150, 150],
    [600.0000000001, 600, 600],
    [440.00000000000006, 440, 440],
    [150.2, 150, 151],
    // 151 would stand above 150.5, which keeps it.
    [150.2, 150.5, 150.2],
    [150.2, 150.2, 150.2],
    [150.2, undefined, 151],
    [150.2, null, 151],
    [0.4, 1, 1],
    [0, 0, 0],
  ])('of %d V beside %s V given is printed as %d V', (needed, given, printed) => {
    expect(neededVolts(needed, given)).toBe(printed);
  });

  it('never reads the other way round than it is', () => {
    for (let needed = 14800; needed <= 15200; needed += 7)
      for (let given = 14900; given <= 15100; given += 11)
        expect(tellsTheSame(needed / 100, given / 100, neededVolts(needed / 100, given / 100))).toBe(true);
  });
});

describe('a lead voltage and a level', () => {
  it.each([
    [191.74, undefined, 200],
    [1991.74, 4000, 2000],
    [2500, 2500, 2500],
    [2503, 2500, 2510],
    [2491, 2495, 2491],
    [0, undefined, 0],
  ])('of %d V beside a withstand of %s V is printed as %d V', (level, withstand, printed) => {
    expect(levelVolts(level, withstand)).toBe(printed);
  });
});

describe('a current', () => {
  it.each([
    [12.75, 10000, 12.8],
    [9983.4, 10000, 9990],
    [10040, 10000, 10100],
    [9.996, 10, 10],
    [10.04, 10.05, 10.04],
    [22.04, undefined, 22.1],
    [100, 100, 100],
    [0, 5, 0],
  ])('of %d beside %s given is printed as %d', (needed, given, printed) => {
    expect(neededCurrent(needed, given)).toBe(printed);
  });

  it.each([
    [12.75, '12.8 A'],
    [0.0512, '0.05 A'],
    [999.4, '999 A'],
    [999.6, '1 kA'],
    [10345, '10.3 kA'],
    [22000, '22 kA'],
  ])('of %d A alone is printed as %s', (amperes, printed) => {
    expect(current(amperes)).toBe(printed);
  });
});

/** A plan with one row, whose lengths are typed so below such headings. */
function planOf(basis: Plan['basis'], cells: readonly (readonly [string, string])[]): Plan {
  const facts = cells.map(([text, column]) => ({
    field: 'run_length',
    text,
    origin: { from: 'list', file: 'a.csv', line: 2, column },
  }));
  return { basis, site: { equipments: [{ facts }] } } as unknown as Plan;
}

describe('lengths', () => {
  it.each([
    ['nec-2023', [['45 ft', 'run_length']], 'ft'],
    ['nec-2023', [['45', 'run_length (ft)']], 'ft'],
    ['nec-2023', [['14', 'run_length (m)']], 'm'],
    ['iec', [['120 ft', 'run_length (m)']], 'ft'],
    ['iec', [["30'", 'run_length']], 'ft'],
    ['iec', [['50 cm', 'run_length']], 'm'],
    ['nec-2023', [], 'ft'],
    ['iec', [['14', 'run_length']], 'm'],
    [
      'iec',
      [
        ['45 ft', 'x'],
        ['14 m', 'x'],
        ['15 m', 'x'],
      ],
      'm',
    ],
  ] as const)('of a job under %s with %j are in %s', (basis, cells, unit) => {
    expect(lengthUnitOf(planOf(basis, cells))).toBe(unit);
  });

  it('stand in that unit alone', () => {
    expect(paperLength(36.58, 'ft')).toBe('120 ft');
    expect(paperLength(36.58, 'm')).toBe('36.6 m');
    expect(paperLength(12, 'm')).toBe('12 m');
    expect(paperLead(0.508, 'ft')).toBe('20 in');
    expect(paperLead(0.5, 'm')).toBe('0.5 m');
    // 0.519 m are 20.43 in: a limit of 20, never of 21.
    expect(paperLead(0.519, 'ft', 'down')).toBe('20 in');
    expect(paperLead(0.519, 'm', 'down')).toBe('0.51 m');
    expect(paperLead(0.3048, 'ft', 'down')).toBe('12 in');
  });

  it('say a reach in one form', () => {
    expect(reachWords({ reach: null, up: 1500 }, 'm')).toBe('its whole run');
    expect(reachWords({ reach: 12, up: 1500 }, 'm')).toBe('12 m');
    expect(reachWords({ reach: 12.19, up: 1500 }, 'm')).toBe('12.1 m');
    expect(reachWords({ reach: 0, up: 1500 }, 'ft')).toBe('none');
    expect(reachWords({ reach: null, up: null }, 'ft')).toBe('not known');
    expect(reachWords(null, 'ft')).toBe('not known');
  });
});

describe('where a fact comes from', () => {
  const place = { file: 'a.csv', line: 1, column: 'x' };
  it.each<readonly [Origin, string]>([
    [{ from: 'list', ...place }, 'stated'],
    [{ from: 'job-facts', ...place }, 'stated'],
    [{ from: 'library', ...place }, 'looked up'],
    [{ from: 'catalogue', ...place }, 'looked up'],
    [{ from: 'setting', name: 'x' }, 'looked up'],
    [{ from: 'published', source: 'x' }, 'looked up'],
    [{ from: 'default', field: 'x' }, 'assumed'],
    [{ from: 'rule', id: 'x' }, 'assumed'],
  ])('has one of three words: %j', (origin, word) => {
    expect(knownHow(origin)).toBe(word);
  });
});
