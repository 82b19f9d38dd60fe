import { describe, expect, test } from 'vitest';
import { generatorFrequency, rectifiedVoltage } from '../../src/electrical/wind.js';

describe('frequency at which the indicators flicker: pole pairs x rpm/60 (common practice, no source; computed)', () => {
  test.each([
    [12, 300, 30],
    [8, 300, 20],
  ])('%d poles, %d rpm: %d Hz', (poles, rpm, hertz) => {
    expect(generatorFrequency({ poles, rpm }).value).toBeCloseTo(hertz, 9);
  });
});

test('rectified: 1.414 x line to line (computed)', () => {
  expect(rectifiedVoltage({ lineToLine: 100 }).value).toBeCloseTo(141.4, 9);
});
