import { describe, expect, test } from 'vitest';
import { isStandardNominalCurrent, isStandardVpr } from '../../src/electrical/ratings.js';
import { UL_1449_ED5_NOMINAL_CURRENTS, UL_1449_ED5_VPR } from '../../src/model/ratings.js';
import { UL_1449_ED5_LEAD_IN_VPR } from '../../src/electrical/leads.js';
import { protectiveDistance } from '../../src/electrical/reach.js';
import {
  assumedWithstand,
  IEC_60664_1_2020_TABLE_F_1,
  withstandEntryVoltage,
} from '../../src/electrical/withstand.js';
import { defaultSettings } from '../../src/model/settings.js';
import { OVERVOLTAGE_CATEGORIES, type AcSystem, type SystemGrounding } from '../../src/model/words.js';
import { clause } from '../../src/rules/clauses.js';

function rowOf(voltage: number): { row: number; withstand: number[] } {
  const found = OVERVOLTAGE_CATEGORIES.map((category) => assumedWithstand({ voltage, category }));
  const rows = found.map((f) => (f.ok ? f.row : NaN));
  return { row: rows[0] ?? NaN, withstand: found.map((f) => (f.ok ? f.value : NaN)) };
}

describe('rated impulse withstand, IEC 60664-1 Table F.1 (read)', () => {
  const printed: readonly (readonly [number, readonly number[]])[] = [
    [50, [330, 500, 800, 1500]],
    [100, [500, 800, 1500, 2500]],
    [150, [800, 1500, 2500, 4000]],
    [300, [1500, 2500, 4000, 6000]],
    [600, [2500, 4000, 6000, 8000]],
    [1000, [4000, 6000, 8000, 12000]],
    [1250, [4000, 6000, 8000, 12000]],
    [1500, [6000, 8000, 10000, 15000]],
  ];
  test.each(printed)('%d V', (voltage, withstand) => {
    expect(rowOf(voltage)).toEqual({ row: voltage, withstand });
  });
  test.each(
    printed.slice(1).map(([voltage, withstand], i) => [printed[i]?.[0] ?? 0, voltage, withstand] as const),
  )('just above %d V the row of %d V covers it', (below, row, withstand) => {
    expect(rowOf(below + 0.01)).toEqual({ row, withstand });
  });
  test('above the largest row: not known', () => {
    expect(assumedWithstand({ voltage: 1500.01, category: 'II' })).toEqual({
      ok: false,
      reason: 'above-table',
    });
  });
  test('it has no other rows', () => {
    expect(IEC_60664_1_2020_TABLE_F_1.map((r) => r.upTo)).toEqual(printed.map(([v]) => v));
  });
});

describe('the row of a system (read)', () => {
  const rowFor = (system: AcSystem, grounding: SystemGrounding): number =>
    rowOf(withstandEntryVoltage({ system, grounding, basis: 'nec-2023', earthing: 'TN' })).row;
  test.each([
    ['120/240', 'solid', 150],
    ['480Y/277', 'solid', 300],
    ['600Y/347', 'solid', 600],
    // Ungrounded and corner-grounded systems enter with the line-to-line voltage.
    ['240 delta', 'none', 300],
    ['240 delta', 'corner', 300],
    ['480 delta', 'none', 600],
    ['480 delta', 'corner', 600],
    ['480Y/277', 'impedance', 600],
    ['120/240', 'none', 300],
    // The high leg enters with its own 208 V (rules.md section 5).
    ['240/120 high-leg', 'solid', 300],
  ] as const)('%s %s uses the row of %d V', (system, grounding, row) => {
    expect(rowFor(system, grounding)).toBe(row);
  });
});

test('PV equipment with no stated withstand: category II by the highest open-circuit voltage (assumption)', () => {
  const found = assumedWithstand({ voltage: 592.6, category: 'II' });
  expect(found).toMatchObject({ ok: true, value: 4000, row: 600 });
  expect(found.ok && found.working.steps.at(-1)?.sure).toBe('assumption');
});

test('80 % of the withstand is the target (IEC 60364-5-53 cl. 534.4.4.2, read): a setting', () => {
  expect(defaultSettings().thresholds.withstandShare).toBe(0.8);
});

describe('OVE Fachinformation E09:2022 Annex C (read): Uw 2500 V, 500 V for the leads', () => {
  const { reachSlope: slope, leastReach } = defaultSettings().thresholds;
  const reach = (up: number, leads = 500): { kind: string; distance: number } =>
    protectiveDistance({ up, leads, withstand: 2500, slope, leastReach, limit: 1000 });
  test('Up 1300 V: 28 m', () => {
    expect(reach(1300)).toMatchObject({ kind: 'metres', distance: 28 });
  });
  test('Up 1500 V: 20 m', () => {
    expect(reach(1500)).toMatchObject({ kind: 'metres', distance: 20 });
  });
  test('Up 1000 V: no limit up to 50 % of Uw; level and leads count together here, so that with 500 V it is 40 m', () => {
    // Stricter than the annex, which looks at Up alone: IEC 62305-4 Annex, value from memory.
    expect(reach(1000, 0).kind).toBe('unlimited');
    expect(reach(1250, 0).kind).toBe('unlimited');
    expect(reach(1251, 0).kind).toBe('metres');
    expect(reach(750).kind).toBe('unlimited');
    expect(reach(1000)).toMatchObject({ kind: 'metres', distance: 40 });
  });
  test('at least 10 m by convention', () => {
    expect(reach(1999)).toMatchObject({ kind: 'metres', distance: 10 });
  });
});

describe('UL 1449', () => {
  test('In values 3, 5, 10, 20 kA (value from memory)', () => {
    expect(UL_1449_ED5_NOMINAL_CURRENTS).toEqual([3000, 5000, 10000, 20000]);
    for (const amperes of [3000, 5000, 10000, 20000]) expect(isStandardNominalCurrent(amperes)).toBe(true);
    for (const amperes of [0, 4000, 15000, 40000]) expect(isStandardNominalCurrent(amperes)).toBe(false);
  });
  test('VPR values (value from memory)', () => {
    const list = [
      330, 400, 500, 600, 700, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500, 3000, 4000, 5000, 6000,
    ];
    expect(UL_1449_ED5_VPR).toEqual(list);
    for (const volts of list) {
      expect(isStandardVpr(volts)).toBe(true);
      expect(isStandardVpr(volts + 1)).toBe(false);
    }
  });
  test('measured at 3 kA with leads of 6 in (read)', () => {
    expect(defaultSettings().thresholds.leadPeakNec).toBe(3000);
    expect(UL_1449_ED5_LEAD_IN_VPR).toBeCloseTo(6 * 0.0254, 12);
  });
});

test.each([
  ['impulse-withstand', 'nec-2023', 'IEC 60664-1', '2020', 'Table F.1', /overvoltage category/],
  ['protection-level', 'iec', 'IEC 60364-5-53', '2019', '534.4.4.2', /80 percent/],
  ['oscillation-distance', 'iec', 'OVE Fachinformation E09', '2022', 'Annex C', /25 V\/m; no limit at half/],
  [
    'protection-rating',
    'nec-2023',
    'UL 1449',
    '5th edition',
    'voltage protection rating',
    /6 kV and 3 kA with leads of 6 in/,
  ],
] as const)(
  'the rulebook cites %s under %s as %s (%s) %s',
  (subject, basis, standard, edition, number, says) => {
    const found = clause(subject, basis);
    expect(found).toMatchObject({ standard, edition, clause: number });
    expect(found?.says).toMatch(says);
  },
);
