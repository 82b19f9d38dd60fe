import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assumedWithstand,
  fedEntryVoltage,
  isFedLineToLine,
  IEC_60664_1_2020_TABLE_F_1,
  withstandEntryVoltage,
} from '../../src/electrical/withstand.js';
import {
  OVERVOLTAGE_CATEGORIES,
  type AcSystem,
  type Earthing,
  type SystemGrounding,
} from '../../src/model/words.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

test('working: an assumption with its row', () => {
  const found = assumedWithstand({ voltage: 120, category: 'III' });
  if (!found.ok) throw new Error(found.reason);
  expect(found).toMatchObject({ value: 2500, row: 150 });
  expectSound(found.working);
  expect(symbols(found.working)).toEqual(['U V', 'Urow V', 'Uw V']);
  expect(englishSteps(found.working).map((s) => s.sure)).toEqual(['computed', 'published', 'assumption']);
  expect(englishSteps(found.working)[0]?.source).toBe(
    'computed on these pages, or the nominal voltage of the system',
  );
  expect(englishSteps(found.working).map((s) => s.value)).toEqual([120, 150, 2500]);
  expect(englishSteps(found.working)[2]?.says).toContain('category III');
  expect(englishSteps(found.working)[2]?.source).toContain('Table F.1');
});

test.each([
  [0, 50],
  [50, 50],
  [50.1, 100],
  [100, 100],
  [150, 150],
  [150.1, 300],
  [300, 300],
  [600, 600],
  [600.1, 1000],
  [1000, 1000],
  [1000.1, 1250],
  [1250.1, 1500],
  [1500, 1500],
])('%d V enters the row of %d V', (voltage, row) => {
  expect(assumedWithstand({ voltage, category: 'II' })).toMatchObject({ ok: true, row });
});

test('above the last row: not known, in no category', () => {
  for (const category of OVERVOLTAGE_CATEGORIES)
    expect(assumedWithstand({ voltage: 1501, category })).toEqual({ ok: false, reason: 'above-table' });
});

describe('the voltage that the table is entered with', () => {
  const entry = (
    system: AcSystem,
    grounding: SystemGrounding,
    basis: 'nec-2023' | 'iec' = 'nec-2023',
    earthing: Earthing = 'TN',
  ): number => withstandEntryVoltage({ system, grounding, basis, earthing });
  test.each([
    ['120/240', 'solid', 120],
    ['208', 'solid', 120],
    ['240/120 high-leg', 'solid', 208],
    ['480Y/277', 'solid', 277],
    ['480Y/277', 'impedance', 480],
    ['240 delta', 'none', 240],
    ['240 delta', 'corner', 240],
    ['120/240', 'none', 240],
    ['120', 'none', 120],
  ] as const)('%s %s: %d V', (system, grounding, volts) => {
    expect(entry(system, grounding)).toBe(volts);
  });
  test('IT: line to line; a circuit of 230 V enters with its own 230 V', () => {
    expect(entry('400Y/230', 'none', 'iec', 'IT')).toBe(400);
    expect(entry('400Y/230', 'solid', 'iec', 'IT')).toBe(400);
    expect(entry('400Y/230', 'solid', 'iec', 'TT')).toBe(230);
    expect(entry('230', 'none', 'iec', 'IT')).toBe(230);
  });
});

describe('what a service or panel feeds enters with its lowest voltage to neutral', () => {
  test.each([
    ['120/240', undefined, 120],
    ['208Y/120', undefined, 120],
    ['240/120 high-leg', undefined, 120],
    ['240', '240/120 high-leg', 120],
    ['240 delta', '240/120 high-leg', 120],
    ['480Y/277', undefined, 277],
    ['480 delta', '480Y/277', 277],
    ['480', '480Y/277', 277],
    ['600Y/347', undefined, 347],
    ['240 delta', undefined, 240],
    ['480 delta', undefined, 480],
    ['400Y/230', undefined, 230],
  ] as const)('%s of %s: %d V', (system, whole, volts) => {
    expect(fedEntryVoltage({ system, whole })).toBe(volts);
  });

  test.each([
    ['240 delta', undefined, true],
    ['480 delta', undefined, true],
    ['480 delta', '480Y/277', false],
    ['240 delta', '240/120 high-leg', false],
    ['240', '240/120 high-leg', false],
    ['480Y/277', undefined, false],
    ['120/240', undefined, false],
    ['120', undefined, false],
  ] as const)('%s of %s is line to line: %s', (system, whole, isBetween) => {
    expect(isFedLineToLine({ system, whole })).toBe(isBetween);
  });
});

test('a higher voltage or category never has less withstand', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1500, noNaN: true }),
      fc.double({ min: 0, max: 1500, noNaN: true }),
      (a, b) => {
        const values = [Math.min(a, b), Math.max(a, b)].map((voltage) =>
          OVERVOLTAGE_CATEGORIES.map((category) => {
            const found = assumedWithstand({ voltage, category });
            return found.ok ? found.value : NaN;
          }),
        );
        values[0]?.forEach((low, i) => {
          expect(values[1]?.[i]).toBeGreaterThanOrEqual(low);
        });
        for (const row of values) expect(row).toEqual([...row].sort((x, y) => x - y));
      },
    ),
  );
  expect(IEC_60664_1_2020_TABLE_F_1).toHaveLength(8);
});
