import { expect, test } from 'vitest';
import { isStandardNominalCurrent, isStandardVpr } from '../../src/electrical/ratings.js';

test.each([
  [600, true],
  [1200, true],
  [1100, false],
  [0, false],
  [6001, false],
])('VPR of %d V: %s', (volts, standard) => {
  expect(isStandardVpr(volts)).toBe(standard);
});

test.each([
  [20000, true],
  [20, false],
  [50000, false],
])('In of %d A: %s', (amperes, standard) => {
  expect(isStandardNominalCurrent(amperes)).toBe(standard);
});
