import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaOfDiameter,
  awgDiameter,
  awgGauge,
  awgName,
  diameterOfArea,
  mm2Gauge,
  parseWireGauge,
} from '../../src/electrical/wire-gauge.js';

describe('reading', () => {
  test.each([
    ['10 AWG', '10 AWG'],
    ['10AWG', '10 AWG'],
    ['  10 awg ', '10 AWG'],
    ['AWG 10', '10 AWG'],
    ['awg10', '10 AWG'],
    ['#10', '10 AWG'],
    ['# 8 AWG', '8 AWG'],
    ['1 AWG', '1 AWG'],
    ['56 AWG', '56 AWG'],
    ['1/0', '1/0 AWG'],
    ['2/0 AWG', '2/0 AWG'],
    ['3 / 0', '3/0 AWG'],
    ['4/0AWG', '4/0 AWG'],
    ['AWG 1/0', '1/0 AWG'],
    ['#2/0', '2/0 AWG'],
    ['# 2/0', '2/0 AWG'],
    ['0 AWG', '1/0 AWG'],
    ['00 AWG', '2/0 AWG'],
    ['000 awg', '3/0 AWG'],
    ['0000 AWG', '4/0 AWG'],
    ['6 mm2', '6 mm2'],
    ['6mm2', '6 mm2'],
    ['2.5 mm²', '2.5 mm2'],
    ['2,5 mm2', '2.5 mm2'],
    ['0.75 MM2', '0.75 mm2'],
    ['1.125 mm2', '1.125 mm2'],
    ['16 mm^2', '16 mm2'],
    ['16 sq mm', '16 mm2'],
    ['16 sqmm', '16 mm2'],
    ['16 sq. mm', '16 mm2'],
    ['1200 mm2', '1200 mm2'],
  ])('%j is %s', (text, name) => {
    expect(parseWireGauge(text)?.name).toBe(name);
  });
  test.each([
    '',
    '10',
    '0',
    '00',
    'AWG',
    '#',
    '57 AWG',
    '99 AWG',
    '100 AWG',
    '05 AWG',
    '00000 AWG',
    '5/0',
    '0/0',
    '1/1',
    '10/0',
    '-1 AWG',
    '10.5 AWG',
    '0 mm2',
    '-6 mm2',
    '6 mm',
    '6',
    '1,000 mm2',
    '12000 mm2',
    '6 mm2 x',
    'x 6 mm2',
    'x10 AWG',
    '10 AWG x',
    '=1/0',
    '1/0 mm2',
    '250 kcmil',
  ])('%j is no gauge', (text) => {
    expect(parseWireGauge(text)).toBeUndefined();
  });
});

describe('gauges', () => {
  test('AWG: unit, number, diameter, area, name', () => {
    const gauge = awgGauge(10);
    expect(gauge).toMatchObject({ unit: 'AWG', size: 10, name: '10 AWG' });
    expect(gauge?.diameter).toBeCloseTo(2.588e-3, 6);
    expect(gauge?.area).toBeCloseTo(5.261, 3);
  });
  test('mm2', () => {
    const gauge = mm2Gauge(6);
    expect(gauge).toMatchObject({ unit: 'mm2', size: 6, area: 6, name: '6 mm2' });
    expect(gauge?.diameter).toBeCloseTo(2.764e-3, 6);
  });
  test.each([-4, 57, 10.5, Number.NaN])('AWG %d does not exist', (size) => {
    expect(awgGauge(size)).toBeUndefined();
  });
  test('AWG 4/0 and 56 do', () => {
    expect(awgGauge(-3)?.name).toBe('4/0 AWG');
    // 0.00049 in, as rounded in ASTM B258.
    expect((awgGauge(56)?.diameter ?? 0) / 0.0254).toBeCloseTo(0.00049, 5);
  });
  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('%d mm2 does not exist', (area) => {
    expect(mm2Gauge(area)).toBeUndefined();
  });
  test('names', () => {
    expect([-3, -2, -1, 0, 1, 14].map(awgName)).toEqual([
      '4/0 AWG',
      '3/0 AWG',
      '2/0 AWG',
      '1/0 AWG',
      '1 AWG',
      '14 AWG',
    ]);
  });
});

describe('properties', () => {
  const size = fc.integer({ min: -3, max: 56 });
  test('what is written is read back', () => {
    fc.assert(
      fc.property(size, (n) => {
        expect(parseWireGauge(awgName(n))).toEqual(awgGauge(n));
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_000 }), (thousandths) => {
        const gauge = mm2Gauge(thousandths / 1000);
        expect(parseWireGauge(gauge?.name ?? '')).toEqual(gauge);
      }),
    );
  });
  test('a greater number is a thinner wire; 39 steps are a ratio of 92', () => {
    fc.assert(
      fc.property(size, (n) => {
        expect(awgDiameter(n + 1)).toBeLessThan(awgDiameter(n));
        expect(awgDiameter(n - 39) / awgDiameter(n)).toBeCloseTo(92, 9);
      }),
    );
  });
  test('area and diameter undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (area) => {
        expect(areaOfDiameter(diameterOfArea(area)) / area).toBeCloseTo(1, 12);
      }),
    );
  });
  test('no text throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(() => parseWireGauge(text)).not.toThrow();
      }),
    );
  });
});
