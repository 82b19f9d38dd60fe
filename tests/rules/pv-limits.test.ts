import { expect, test } from 'vitest';
import { pvVoltageLimit } from '../../src/rules/pv-limits.js';

test.each([
  ['dwelling', false, 600],
  ['sleeping', false, 1000],
  ['other', false, 1000],
  ['dwelling', true, 1500],
  ['sleeping', true, 1500],
  ['other', true, 1500],
] as const)('%s, off buildings %s: %d V', (occupancy, offBuildings, volts) => {
  expect(pvVoltageLimit({ occupancy, offBuildings })).toBe(volts);
});
