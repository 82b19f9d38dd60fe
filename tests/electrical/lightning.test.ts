import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flashDensityFromThunderDays,
  lineEvents,
  structureCollectionArea,
  structureEvents,
  type LineInput,
} from '../../src/electrical/lightning.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

describe('flash density from thunderstorm days', () => {
  test('0.1 Td unless asked otherwise', () => {
    const found = flashDensityFromThunderDays({ days: 30 });
    expect(found.value).toBe(3);
    expect(flashDensityFromThunderDays({ days: 30, formula: 'iec-62305-2' })).toEqual(found);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['Td 1/a', 'Ng 1/(km² a)']);
    expect(englishSteps(found.working)[1]).toMatchObject({
      formula: '0.1 × Td',
      sure: 'published',
      source: 'IEC 62305-2:2006 Annex A',
    });
  });
  test('0.04 Td^1.25', () => {
    const found = flashDensityFromThunderDays({ days: 81, formula: 'ieee-1410' });
    expect(found.value).toBeCloseTo(0.04 * 243, 9);
    expectSound(found.working);
    expect(englishSteps(found.working)[1]).toMatchObject({ formula: '0.04 × Td^1.25', sure: 'memory' });
    expect(englishSteps(found.working)[1]?.source).toContain('IEEE 1410');
  });
});

describe('structure', () => {
  test('collection area', () => {
    const found = structureCollectionArea({ length: 10, width: 8, height: 5 });
    expect(found.value).toBeCloseTo(80 + 30 * 18 + Math.PI * 225, 9);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['L m', 'W m', 'H m', 'AD m²']);
    expect(englishSteps(found.working)[3]).toMatchObject({
      formula: 'L W + 2 (3 H)(L + W) + π (3 H)²',
      sure: 'memory',
    });
  });
  test.each([
    ['among-higher', 0.25],
    ['among-equal', 0.5],
    ['isolated', 1],
    ['on-a-hill', 2],
  ] as const)(
    '%s: location factor %d (IEC 62305-2:2010 Table A.1, value from memory)',
    (location, factor) => {
      const found = structureEvents({ collectionArea: 2500, flashDensity: 4, location });
      expect(found.value).toBeCloseTo(0.01 * factor, 12);
      expectSound(found.working);
      expect(symbols(found.working)).toEqual(['Ng 1/(km² a)', 'AD m²', 'CD', 'ND 1/a']);
      expect(englishSteps(found.working)[2]?.value).toBe(factor);
      expect(englishSteps(found.working)[2]?.source).toContain('Table A.1');
      expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
        'stated',
        'computed',
        'memory',
        'memory',
      ]);
    },
  );
  test('a larger building is struck more often', () => {
    const side = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(side, side, side, (length, width, height) => {
        const small = structureCollectionArea({ length, width, height }).value;
        expect(small).toBeGreaterThanOrEqual(length * width);
        expect(structureCollectionArea({ length: length + 1, width, height }).value).toBeGreaterThanOrEqual(
          small,
        );
        expect(structureCollectionArea({ length, width, height: height + 1 }).value).toBeGreaterThan(small);
      }),
    );
  });
});

describe('line (IEC 62305-2:2010 Annex A, values from memory)', () => {
  const usual: LineInput = {
    length: 500,
    flashDensity: 4,
    laid: 'overhead',
    voltage: 'lv',
    surroundings: 'rural',
  };
  test('40 L to it, 4000 L near it', () => {
    const found = lineEvents(usual);
    expect(found).toMatchObject({ length: 500, areaTo: 20_000, areaNear: 2_000_000, factor: 1 });
    expect(found.to).toBeCloseTo(0.08, 12);
    expect(found.near).toBeCloseTo(8, 12);
    expectSound(found.workingTo);
    expectSound(found.workingNear);
    expect(symbols(found.workingTo)).toEqual(['Ng 1/(km² a)', 'LL m', 'CI', 'CE', 'CT', 'NL 1/a']);
    expect(symbols(found.workingNear).at(-1)).toBe('NI 1/a');
    expect(englishSteps(found.workingTo)[1]).toMatchObject({ sure: 'stated', says: 'Length of the line' });
    expect(englishSteps(found.workingTo)[5]?.formula).toBe('Ng × 40 m × LL × CI × CE × CT × 1e-6 km²/m²');
    expect(englishSteps(found.workingNear)[5]?.formula).toContain('4000 m');
    expect(found.workingTo.value).toBe(found.to);
    expect(found.workingNear.value).toBe(found.near);
  });
  test.each([
    ['laid', 'buried', 0.5, 2, 'Table A.2'],
    ['surroundings', 'suburban', 0.5, 3, 'Table A.4'],
    ['surroundings', 'urban', 0.1, 3, 'Table A.4'],
    ['voltage', 'hv', 0.2, 4, 'Table A.3'],
  ] as const)('%s %s: x %d', (key, value, factor, step, table) => {
    const found = lineEvents({ ...usual, [key]: value });
    expect(found.factor).toBe(factor);
    expect(found.to).toBeCloseTo(0.08 * factor, 12);
    expect(found.near).toBeCloseTo(8 * factor, 12);
    expect(englishSteps(found.workingTo)[step]).toMatchObject({ value: factor, sure: 'memory' });
    expect(englishSteps(found.workingTo)[step]?.says).toContain(value);
    expect(englishSteps(found.workingTo)[step]?.source).toContain(table);
    expectSound(found.workingTo);
  });
  test('factors multiply', () => {
    expect(lineEvents({ ...usual, laid: 'buried', voltage: 'hv', surroundings: 'urban' }).factor).toBeCloseTo(
      0.01,
      12,
    );
  });
  test('a length that is not stated: 1000 m, an assumption', () => {
    const { length, ...rest } = usual;
    const found = lineEvents(rest);
    expect(length).toBe(500);
    expect(found).toMatchObject({ length: 1000, areaTo: 40_000 });
    expect(englishSteps(found.workingTo)[1]).toMatchObject({
      sure: 'assumption',
      says: 'Length of the line, not stated',
    });
    expect(englishSteps(found.workingTo)[1]?.source).toContain('Annex A');
    expect(symbols(found.workingNear)[1]).toBe('LL m');
    expectSound(found.workingNear);
  });
});
