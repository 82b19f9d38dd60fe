import { describe, expect, test } from 'vitest';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import {
  deviceAheadOf,
  leadBehindDevice,
  leadForCurrent,
  NEC_240_4_D,
  NEC_240_6_A,
  NEC_310_16_60C,
} from '../../src/rules/lead-ampacity.js';

// NEC 240.4(D) was read; Table 310.16 at 60 C, 240.4(B) and 240.6(A) are values from memory. Both sides of each boundary.
describe('the largest device ahead of a lead', () => {
  test.each([
    ['copper', '16 AWG', undefined],
    ['copper', '2 mm2', undefined],
    ['copper', '14 AWG', 15],
    ['copper', '2.5 mm2', 15],
    ['copper', '12 AWG', 20],
    ['copper', '10 AWG', 30],
    ['copper', '8 AWG', 40],
    ['copper', '6 AWG', 60],
    ['copper', '1 AWG', 110],
    ['copper', '4/0 AWG', 200],
    ['aluminium', '14 AWG', undefined],
    ['aluminium', '12 AWG', 15],
    ['aluminium', '10 AWG', 25],
    ['aluminium', '8 AWG', 35],
    ['aluminium', '4/0 AWG', 150],
  ] as const)('of %s, %s: %s A', (metal, gauge, amperes) => {
    const area = parseWireGauge(gauge)?.area ?? NaN;
    expect(deviceAheadOf(area, metal)).toBe(amperes);
    // A hair thinner, as a figure that was computed may be, is the same wire.
    expect(deviceAheadOf(area * (1 - 1e-12), metal)).toBe(amperes);
  });

  test.each(['copper', 'aluminium'] as const)(
    'bears what the smallest lead behind it is for: %s',
    (metal) => {
      for (let amperes = 1; amperes <= 150; amperes += 1) {
        const lead = leadBehindDevice(amperes, metal);
        expect(deviceAheadOf(lead?.area ?? NaN, metal)).toBeGreaterThanOrEqual(amperes);
      }
    },
  );
});

describe('the smallest lead behind a device', () => {
  test.each([
    [1, '14 AWG'],
    [15, '14 AWG'],
    [15.1, '12 AWG'],
    [20, '12 AWG'],
    [20.1, '10 AWG'],
    [25, '10 AWG'],
    [30, '10 AWG'],
    [30.1, '8 AWG'],
    [35, '8 AWG'],
    [40, '8 AWG'],
    [40.1, '6 AWG'],
    [50, '6 AWG'],
    [55, '6 AWG'],
    // 55 A is no standard size: the next larger one may stand there.
    [60, '6 AWG'],
    [60.1, '4 AWG'],
    [70, '4 AWG'],
    [70.1, '3 AWG'],
    [90, '3 AWG'],
    [90.1, '2 AWG'],
    [100, '2 AWG'],
    [110, '1 AWG'],
    [110.1, '1/0 AWG'],
    [125, '1/0 AWG'],
    [125.1, '2/0 AWG'],
    [150, '2/0 AWG'],
    [175, '3/0 AWG'],
    [175.1, '4/0 AWG'],
    [200, '4/0 AWG'],
  ])('of copper, %d A: %s', (amperes, gauge) => {
    expect(leadBehindDevice(amperes, 'copper')?.name).toBe(gauge);
  });

  test.each([
    [15, '12 AWG'],
    [15.1, '10 AWG'],
    [25, '10 AWG'],
    [25.1, '8 AWG'],
    [35, '8 AWG'],
    [35.1, '6 AWG'],
    [40, '6 AWG'],
    [40.1, '4 AWG'],
    [60, '4 AWG'],
    [60.1, '3 AWG'],
    [70, '3 AWG'],
    [80, '2 AWG'],
    [90, '1 AWG'],
    [100, '1/0 AWG'],
    [125, '2/0 AWG'],
    [125.1, '3/0 AWG'],
    [150, '3/0 AWG'],
  ])('of aluminium, %d A: %s', (amperes, gauge) => {
    expect(leadBehindDevice(amperes, 'aluminium')?.name).toBe(gauge);
  });

  test('is none where the table ends', () => {
    expect(leadBehindDevice(200.1, 'copper')).toBeUndefined();
    expect(leadBehindDevice(150.1, 'aluminium')).toBeUndefined();
  });
});

describe('the smallest lead that carries a current', () => {
  test.each([
    ['copper', 15, '14 AWG'],
    ['copper', 15.1, '12 AWG'],
    ['copper', 30, '10 AWG'],
    ['copper', 30.1, '8 AWG'],
    ['copper', 55, '6 AWG'],
    // No next size up without a device.
    ['copper', 55.1, '4 AWG'],
    ['copper', 195, '4/0 AWG'],
    ['aluminium', 15, '12 AWG'],
    ['aluminium', 25.1, '8 AWG'],
    ['aluminium', 150, '4/0 AWG'],
  ] as const)('of %s, %d A: %s', (metal, amperes, gauge) => {
    expect(leadForCurrent(amperes, metal)?.name).toBe(gauge);
  });

  test('is none where the table ends', () => {
    expect(leadForCurrent(195.1, 'copper')).toBeUndefined();
    expect(leadForCurrent(150.1, 'aluminium')).toBeUndefined();
  });
});

// The whole tables, written a second time: values from memory but for 240.4(D).
test('the tables are these', () => {
  expect(NEC_240_4_D.copper).toEqual([14, 12, 10].map((size, i) => [size, [15, 20, 30][i]]));
  expect(NEC_240_4_D.aluminium).toEqual([12, 10].map((size, i) => [size, [15, 25][i]]));
  expect(NEC_310_16_60C.copper.map(([size, amperes]) => `${size}:${amperes}`).join(' ')).toBe(
    '14:15 12:20 10:30 8:40 6:55 4:70 3:85 2:95 1:110 0:125 -1:145 -2:165 -3:195',
  );
  expect(NEC_310_16_60C.aluminium.map(([size, amperes]) => `${size}:${amperes}`).join(' ')).toBe(
    '12:15 10:25 8:35 6:40 4:55 3:65 2:75 1:85 0:100 -1:115 -2:130 -3:150',
  );
  expect(NEC_240_6_A.join(' ')).toBe('15 20 25 30 35 40 45 50 60 70 80 90 100 110 125 150 175 200');
});
