import { describe, expect, test } from 'vitest';
import {
  isLiftedToLineVoltage,
  linesToGround,
  nominalToGround,
  wholeOf,
  worstGroundedLine,
} from '../../src/electrical/ac-systems.js';
import { highestContinuousToGround } from '../../src/electrical/continuous-voltage.js';
import { withstandEntryVoltage } from '../../src/electrical/withstand.js';
import type { AcSystem, Conductor, SystemGrounding } from '../../src/model/words.js';

// A part has the grounding and the conductors of the whole that it is taken from; figures by the geometry of the systems.

const nec = { basis: 'nec-2023', earthing: 'TN' } as const;

test('without a whole a system is its own', () => {
  expect(wholeOf({ system: '240' })).toBe('240');
  expect(wholeOf({ system: '240', whole: '120/240' })).toBe('120/240');
});

describe('lines to ground while the whole is solidly grounded', () => {
  test.each([
    ['240', '240', [120, 120]],
    ['240', '120/240', [120, 120]],
    ['240', '240/120 high-leg', [120, 208]],
    ['240 delta', '240/120 high-leg', [120, 208, 120]],
    ['120/240', '240/120 high-leg', [120, 120]],
    ['120', '240/120 high-leg', [120]],
    ['480 delta', '480Y/277', [277, 277, 277]],
    ['480 delta', '480 delta', [480, 480, 480]],
    ['480', '480Y/277', [277, 277]],
    ['277', '480Y/277', [277]],
    ['240 delta', '240 delta', [240, 240, 240]],
  ] as const)('%s of %s', (system, whole, volts) => {
    expect(linesToGround(system, whole)).toEqual(volts);
  });
  test.each([
    ['240', '240/120 high-leg', 'L2', 208],
    ['240 delta', '240/120 high-leg', 'L2', 208],
    ['480 delta', '480Y/277', 'L1', 277],
    ['240', '120/240', 'L1', 120],
  ] as const)('the worst line of %s of %s', (system, whole, conductor, nominal) => {
    expect(worstGroundedLine(system, whole)).toEqual({ conductor, nominal });
  });
});

describe('whether a line is lifted is asked of the whole', () => {
  test.each([
    ['480 delta', '480Y/277', 'solid', false],
    ['480 delta', '480 delta', 'solid', true],
    ['240', '240 delta', 'solid', true],
    ['480 delta', '480Y/277', 'impedance', true],
  ] as const)('%s of %s, %s', (system, whole, grounding, lifted) => {
    expect(isLiftedToLineVoltage({ ...nec, system, whole, grounding })).toBe(lifted);
  });
});

describe('what a meter shows', () => {
  const shown = (
    system: AcSystem,
    whole: AcSystem,
    grounding: SystemGrounding,
    conductor: Conductor,
  ): number | null => nominalToGround({ ...nec, system, whole, grounding, conductor });
  test.each([
    ['480 delta', '480Y/277', 'solid', 'L3', 277],
    ['240', '240/120 high-leg', 'solid', 'L1', null],
    ['240', '120/240', 'solid', 'L1', 120],
    ['240 delta', '240/120 high-leg', 'solid', 'L2', 208],
    ['240', '240 delta', 'solid', 'L1', null],
    ['240', '240 delta', 'corner', 'L1', 240],
    ['240', '240 delta', 'corner', 'L2', 0],
    ['480', '480 delta', 'impedance', 'L1', 480 / Math.sqrt(3)],
    ['480 delta', '480Y/277', 'impedance', 'L1', 277],
  ] as const)('%s of %s, %s, %s', (system, whole, grounding, conductor, volts) => {
    const found = shown(system, whole, grounding, conductor);
    if (volts === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(volts, 9);
  });
});

describe('the least MCOV', () => {
  // 1.15 x nominal (common practice, no source).
  test.each([
    ['480 delta', '480Y/277', 'solid', 318.55, 'line-to-ground'],
    ['277', '480Y/277', 'none', 552, 'line-to-line'],
    ['120', '120/240', 'none', 276, 'line-to-line'],
    ['120', '208Y/120', 'impedance', 239.2, 'line-to-line'],
    ['240', '240/120 high-leg', 'solid', 239.2, 'line-to-ground'],
    ['347', '600Y/347', 'corner', 690, 'line-to-line'],
  ] as const)('%s of %s, %s: %d V', (system, whole, grounding, volts, standsOn) => {
    const found = highestContinuousToGround({ ...nec, system, whole, grounding, continuousShare: 1.15 });
    expect(found.required).toBeCloseTo(volts, 9);
    expect(found.standsOn).toBe(standsOn);
  });
});

describe('the table of withstand is entered with', () => {
  test.each([
    ['nec-2023', 'TN', '277', '480Y/277', 'none', 480],
    ['nec-2023', 'TN', '480 delta', '480Y/277', 'solid', 277],
    ['nec-2023', 'TN', '240', '240/120 high-leg', 'solid', 208],
    ['nec-2023', 'TN', '120', '120/240', 'corner', 240],
    ['iec', 'IT', '230', '400Y/230', 'none', 230],
    ['iec', 'IT', '400Y/230', '400Y/230', 'none', 400],
    ['iec', 'TN', '230', '400Y/230', 'none', 400],
    ['nec-2023', 'IT', '230', '400Y/230', 'none', 400],
  ] as const)('%s %s: %s of %s, %s: %d V', (basis, earthing, system, whole, grounding, volts) => {
    expect(withstandEntryVoltage({ basis, earthing, system, whole, grounding })).toBe(volts);
  });
});
