import { describe, expect, test } from 'vitest';
import {
  calculatedRiskLevel,
  criticalLength,
  type ExposedSite,
  type FeedingLines,
} from '../../src/electrical/exposure.js';
import { riskAsksForProtection } from '../../src/rules/supply-risk.js';
import {
  flashDensityFromThunderDays,
  structureCollectionArea,
  structureEvents,
} from '../../src/electrical/lightning.js';
import { clause } from '../../src/rules/clauses.js';

function critical(site: ExposedSite, flashDensity: number): number {
  const found = criticalLength({ site, flashDensity });
  if (!found.ok) throw new Error(found.reason);
  return found.value;
}

function crl(
  surroundings: 'rural' | 'urban',
  flashDensity: number,
  lines: FeedingLines,
): { value: number; asksForProtection: boolean } {
  const found = calculatedRiskLevel({ surroundings, flashDensity, lines });
  if (!found.ok) throw new Error(found.reason);
  return { value: found.value, asksForProtection: riskAsksForProtection(found.value) };
}

describe('critical length, IEC 60364-7-712 cl. 712.443', () => {
  test('dwelling 115/Ng (read): Ng 2.5 gives 46 m, Ng 4 gives 28.75 m', () => {
    expect(critical('dwelling', 2.5)).toBeCloseTo(46, 9);
    expect(critical('dwelling', 4)).toBeCloseTo(28.75, 9);
  });
  test('ground-mounted plant 200/Ng (value from memory): Ng 4 gives 50 m', () => {
    expect(critical('ground-mounted', 4)).toBeCloseTo(50, 9);
  });
  test('service, industrial and agricultural buildings 450/Ng (value from memory): Ng 4 gives 112.5 m', () => {
    expect(critical('other', 4)).toBeCloseTo(112.5, 9);
  });
});

describe('calculated risk level, IEC 60364-4-44 cl. 443.5 (formula read, fenv from memory)', () => {
  test('rural, 0.4 km LV cable + 0.6 km HV overhead, Ng 1: 132.8 (value from memory)', () => {
    const found = crl('rural', 1, { lvUnderground: 0.4, hvOverhead: 0.6 });
    expect(found.value).toBeCloseTo(132.8, 1);
    expect(found.asksForProtection).toBe(true);
  });
  test('urban, the same: 1328.1 (value from memory)', () => {
    const found = crl('urban', 1, { lvUnderground: 0.4, hvOverhead: 0.6 });
    expect(found.value).toBeCloseTo(1328.1, 1);
    expect(found.asksForProtection).toBe(false);
  });
  test('LP = 2 LPAL + LPCL + 0.4 LPAH + 0.2 LPCH, each kind alone (formula read)', () => {
    const none = { lvOverhead: 0, lvUnderground: 0, hvOverhead: 0, hvUnderground: 0 };
    expect(crl('rural', 1, { ...none, lvOverhead: 1 }).value).toBeCloseTo(85 / 2, 9);
    expect(crl('rural', 1, { ...none, lvUnderground: 1 }).value).toBeCloseTo(85, 9);
    expect(crl('rural', 1, { ...none, hvOverhead: 1 }).value).toBeCloseTo(85 / 0.4, 9);
    expect(crl('rural', 1, { ...none, hvUnderground: 1 }).value).toBeCloseTo(85 / 0.2, 9);
  });
  test('fenv 85 rural or suburban, 850 urban (value from memory)', () => {
    expect(crl('rural', 0.5, { lvUnderground: 1 }).value).toBeCloseTo(170, 9);
    expect(crl('urban', 0.5, { lvUnderground: 1 }).value).toBeCloseTo(1700, 9);
  });
  test('at most 1 km of line in all', () => {
    expect(
      crl('rural', 1, { lvOverhead: 1, lvUnderground: 3, hvOverhead: 2, hvUnderground: 2 }).value,
    ).toBeCloseTo(42.5, 9);
  });
  test('unknown lines: 1 km of low-voltage overhead line', () => {
    expect(crl('rural', 1, {}).value).toBeCloseTo(42.5, 9);
  });
  test('below 1000: protect', () => {
    // 850 / (1 km x Ng): 1000 at Ng 0.85.
    const line = { lvOverhead: 0, lvUnderground: 1, hvOverhead: 0, hvUnderground: 0 };
    expect(crl('urban', 0.849, line).asksForProtection).toBe(false);
    expect(crl('urban', 0.851, line).asksForProtection).toBe(true);
  });
});

describe('ground flash density', () => {
  test('Ng = 0.1 Td (IEC 62305-2:2006, read)', () => {
    expect(flashDensityFromThunderDays({ days: 25 }).value).toBeCloseTo(2.5, 9);
  });
  test('Ng = 0.04 Td^1.25 (IEEE 1410, value from memory)', () => {
    expect(flashDensityFromThunderDays({ days: 16, formula: 'ieee-1410' }).value).toBeCloseTo(0.04 * 32, 9);
  });
  test('they cross at 39 days (computed)', () => {
    const gap = (days: number): number =>
      flashDensityFromThunderDays({ days, formula: 'ieee-1410' }).value -
      flashDensityFromThunderDays({ days }).value;
    expect(gap(39)).toBeLessThan(0);
    expect(gap(39.1)).toBeGreaterThan(0);
  });
});

describe('IEC 62305-2 Annex A and E (value from memory)', () => {
  test('isolated structure 15 x 20 x 6 m, Ng 4: collection area 2.58e3 m2, N 1.03e-2 a year', () => {
    const area = structureCollectionArea({ length: 15, width: 20, height: 6 }).value;
    expect(area / 1e3).toBeCloseTo(2.58, 2);
    const events = structureEvents({ collectionArea: area, flashDensity: 4, location: 'isolated' }).value;
    expect(events * 100).toBeCloseTo(1.03, 2);
  });
});

test.each([
  ['pv-dc-protection', 'iec', 'IEC 60364-7-712', '2017', '712.443', /critical length/],
  ['calculated-risk-level', 'iec', 'IEC 60364-4-44', '2007+A1:2015', '443.5', /below 1000$/],
  ['yearly-flashes', 'iec', 'IEC 62305-2', '2010', 'Annex A', /collection areas/],
  ['flash-density-days', 'iec', 'IEC 62305-2', '2006', 'Annex A', /a tenth/],
] as const)(
  'the rulebook cites %s under %s as %s (%s) %s',
  (subject, basis, standard, edition, number, says) => {
    const found = clause(subject, basis);
    expect(found).toMatchObject({ standard, edition, clause: number });
    expect(found?.says).toMatch(says);
  },
);
