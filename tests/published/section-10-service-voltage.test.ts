import { describe, expect, test } from 'vitest';
import { rangeB } from '../../src/electrical/service-voltage.js';

// check-values.md section 10: ANSI C84.1 range B (values from memory).
describe('ANSI C84.1-2020 range B, lowest service voltage (value from memory)', () => {
  test.each([
    ['120', 120, 110],
    ['120/240', 240, 220],
    ['208Y/120', 208, 191],
    ['277', 277, 254],
    ['480Y/277', 480, 440],
    ['347', 347, 318],
    ['600Y/347', 600, 550],
  ])('%s: %d V nominal, %d V', (_, nominal, low) => {
    expect(rangeB(nominal, 'service').low).toBe(low);
  });
});

describe('ANSI C84.1-2020 range B, lowest utilization voltage (value from memory)', () => {
  test.each([
    [120, 104],
    [208, 180],
    [240, 208],
    [277, 240],
    [480, 416],
  ])('%d V nominal, %d V', (nominal, low) => {
    expect(rangeB(nominal, 'utilization').low).toBe(low);
  });
});

describe('ANSI C84.1-2020 range B, highest voltage (value from memory, x 127/120)', () => {
  test.each([
    [120, 127],
    [208, 220],
    [240, 254],
    [277, 293],
    [347, 367],
    [480, 508],
  ])('%d V nominal, %d V, at services and where it is used', (nominal, high) => {
    expect(Math.round(rangeB(nominal, 'service').high)).toBe(high);
    expect(rangeB(nominal, 'utilization').high).toBe(rangeB(nominal, 'service').high);
  });
});
