import { expect, test } from 'vitest';
import { batteryGroundingByDefault } from '../../src/rules/dc-grounding.js';

// Common practice, no source.
test.each([
  [undefined, 'negative'],
  [12, 'negative'],
  [60, 'negative'],
  [60.1, 'floating'],
  [400, 'floating'],
] as const)('a battery of %s V is %s unless its row states it', (nominal, grounding) => {
  expect(batteryGroundingByDefault(nominal)).toBe(grounding);
});
