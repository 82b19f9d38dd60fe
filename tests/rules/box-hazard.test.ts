import { expect, test } from 'vitest';
import { boxHazard } from '../../src/rules/box-hazard.js';
import { THRESHOLDS } from './facts.js';

// 60 V DC and 30 V AC: common practice, no source.
test.each([
  ['nothing in it', { ac: 0, dc: 0, battery: false }, 'low-voltage'],
  ['60 V DC', { ac: 0, dc: 60, battery: false }, 'low-voltage'],
  ['above 60 V DC', { ac: 0, dc: 60.01, battery: false }, 'shock'],
  ['30 V AC', { ac: 30, dc: 0, battery: false }, 'low-voltage'],
  ['above 30 V AC', { ac: 30.01, dc: 0, battery: false }, 'shock'],
  ['a battery bus of 60 V', { ac: 0, dc: 60, battery: true }, 'arc'],
  ['a battery bus above 60 V', { ac: 0, dc: 60.01, battery: true }, 'shock'],
  ['a battery bus of 14.6 V beside 120 V AC', { ac: 120, dc: 14.6, battery: true }, 'shock'],
  ['a direct voltage that isn’t known', { ac: 0, dc: undefined, battery: true }, 'shock'],
  ['an alternating voltage that isn’t known', { ac: undefined, dc: 12, battery: false }, 'shock'],
] as const)('%s', (_, voltages, hazard) => {
  expect(boxHazard(voltages, THRESHOLDS)).toBe(hazard);
});

test('the limits are settings', () => {
  const limits = { dangerAc: 50, dangerDc: 120 };
  expect(boxHazard({ ac: 50, dc: 120, battery: true }, limits)).toBe('arc');
  expect(boxHazard({ ac: 50, dc: 121, battery: true }, limits)).toBe('shock');
  expect(boxHazard({ ac: 51, dc: 120, battery: false }, limits)).toBe('shock');
});
