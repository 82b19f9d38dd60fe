import { expect, test } from 'vitest';
import { pvVoltageLimit } from '../../src/rules/pv-limits.js';

test.each([
  ['dwelling', false, 600],
  ['sleeping', false, 1000],
  ['other', false, 1000],
  ['dwelling', true, 1500],
  ['sleeping', true, 1500],
  ['other', true, 1500],
] as const)('%s, on the ground %s: %d V', (occupancy, groundMounted, volts) => {
  expect(pvVoltageLimit({ occupancy, groundMounted })).toBe(volts);
});
