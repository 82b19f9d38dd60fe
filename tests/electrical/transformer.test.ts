import { expect, test } from 'vitest';
import { transformerFaultCurrent } from '../../src/electrical/transformer.js';

// kVA x 1000 / (phase factor x V x Z), worked by hand from the definition of the impedance voltage (IEC 60076-1, value from memory).
test.each([
  [37, 3.1, '120/240', 37_000 / (240 * 0.031)],
  [45, 4, '208Y/120', 45_000 / (Math.sqrt(3) * 208 * 0.04)],
  [5, 2, '120', 5000 / (120 * 0.02)],
  [10, 2, '277', 10_000 / (277 * 0.02)],
  [10, 2, '230', 10_000 / (230 * 0.02)],
  [25, 2.5, '480', 25_000 / (480 * 0.025)],
  [75, 5, '480 delta', 75_000 / (Math.sqrt(3) * 480 * 0.05)],
] as const)('%d kVA of %d %% on %s', (kva, impedancePercent, system, amperes) => {
  expect(transformerFaultCurrent({ kva, impedancePercent, system })).toBeCloseTo(amperes, 6);
});
