import { expect, test } from 'vitest';
import { generatorFrequency, rectifiedVoltage } from '../../src/electrical/wind.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

test('rectified voltage', () => {
  const found = rectifiedVoltage({ lineToLine: 120 });
  expect(found.value).toBe(169.68);
  expectSound(found.working);
  expect(symbols(found.working)).toEqual(['ULL V', 'UDC V']);
  expect(englishSteps(found.working)[1]).toMatchObject({ formula: '1.414 × ULL', sure: 'computed' });
});

test('frequency of a generator', () => {
  const found = generatorFrequency({ poles: 14, rpm: 430 });
  expect(found.value).toBeCloseTo((7 * 430) / 60, 6);
  expectSound(found.working);
  expect(symbols(found.working)).toEqual(['poles', 'rpm 1/min', 'f Hz']);
  expect(englishSteps(found.working)[2]).toMatchObject({
    formula: '(poles / 2) × rpm / (60 s/min)',
    sure: 'computed',
  });
});
