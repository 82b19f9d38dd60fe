import { describe, expect, test } from 'vitest';
import {
  AC_SYSTEM_DATA,
  isForeign,
  isLiftedToLineVoltage,
  nominalToGround,
  worstGroundedLine,
} from '../../src/electrical/ac-systems.js';
import { AC_SYSTEMS, SYSTEM_GROUNDINGS, type AcSystem, type SystemGrounding } from '../../src/model/words.js';

describe('the systems of the contract', () => {
  test.each([
    ['120', ['L1', 'N'], 1, 120, 120, 'nec'],
    ['120/240', ['L1', 'L2', 'N'], 1, 240, 240, 'nec'],
    ['208Y/120', ['L1', 'L2', 'L3', 'N'], 3, 208, 208, 'nec'],
    ['240', ['L1', 'L2'], 1, 240, 240, 'nec'],
    ['208', ['L1', 'L2'], 1, 208, 208, 'nec'],
    ['240/120 high-leg', ['L1', 'L2', 'L3', 'N'], 3, 240, 240, 'nec'],
    ['240 delta', ['L1', 'L2', 'L3'], 3, 240, 240, 'nec'],
    ['480Y/277', ['L1', 'L2', 'L3', 'N'], 3, 480, 480, 'nec'],
    ['480 delta', ['L1', 'L2', 'L3'], 3, 480, 480, 'nec'],
    ['600Y/347', ['L1', 'L2', 'L3', 'N'], 3, 600, 600, 'nec'],
    ['230', ['L1', 'N'], 1, 400, 230, 'iec'],
    ['400Y/230', ['L1', 'L2', 'L3', 'N'], 3, 400, 400, 'iec'],
  ] as const)('%s: %j', (system, conductors, phases, lineToLine, betweenConductors, practice) => {
    const data = AC_SYSTEM_DATA[system];
    expect(data).toMatchObject({ system, phases, lineToLine, betweenConductors, practice });
    expect(data.conductors).toEqual(conductors);
    expect(data.lines).toEqual(conductors.filter((c) => c !== 'N'));
    expect(data.hasNeutral).toBe(conductors.some((c) => c === 'N'));
    expect(data.linesToGround).toHaveLength(data.lines.length);
    // A delta without a neutral has nothing nearer to ground than its lines.
    if (phases === 3 && !data.hasNeutral) expect(new Set(data.linesToGround)).toEqual(new Set([lineToLine]));
  });
  test('each has its data', () => {
    expect(Object.keys(AC_SYSTEM_DATA).sort()).toEqual([...AC_SYSTEMS].sort());
  });
});

test('foreign: a system of the other practice', () => {
  expect(isForeign('120/240', 'iec')).toBe(true);
  expect(isForeign('120/240', 'nec-2020')).toBe(false);
  expect(isForeign('400Y/230', 'iec')).toBe(false);
  expect(isForeign('230', 'nec-2017')).toBe(true);
});

describe('lifted to the line-to-line voltage', () => {
  const lifted = (
    system: AcSystem,
    grounding: SystemGrounding,
    basis: 'nec-2023' | 'iec',
    earthing: 'TN' | 'TT' | 'IT',
  ): boolean => isLiftedToLineVoltage({ system, grounding, basis, earthing });
  test.each(['none', 'corner', 'impedance'] as const)('%s, under any basis', (grounding) => {
    expect(lifted('480Y/277', grounding, 'nec-2023', 'TN')).toBe(true);
    expect(lifted('400Y/230', grounding, 'iec', 'TN')).toBe(true);
  });
  test('solid: not', () => {
    expect(lifted('480Y/277', 'solid', 'nec-2023', 'TN')).toBe(false);
    expect(lifted('120', 'solid', 'nec-2023', 'TN')).toBe(false);
    expect(lifted('240', 'solid', 'nec-2023', 'TN')).toBe(false);
    expect(lifted('400Y/230', 'solid', 'iec', 'TT')).toBe(false);
  });
  test('a delta said to be solid: yes', () => {
    expect(lifted('240 delta', 'solid', 'nec-2023', 'TN')).toBe(true);
    expect(lifted('480 delta', 'solid', 'iec', 'TN')).toBe(true);
  });
  test('IT counts under iec only', () => {
    expect(lifted('400Y/230', 'solid', 'iec', 'IT')).toBe(true);
    expect(lifted('120/240', 'solid', 'nec-2023', 'IT')).toBe(false);
  });
});

test.each([
  ['120', 'L1', 120],
  ['120/240', 'L1', 120],
  ['240/120 high-leg', 'L2', 208],
  ['240 delta', 'L1', 240],
  ['400Y/230', 'L1', 230],
] as const)('worst line of %s: %s, %d V', (system, conductor, nominal) => {
  expect(worstGroundedLine(system)).toEqual({ conductor, nominal });
});

describe('what a meter shows from a conductor to ground', () => {
  const shows = (
    system: AcSystem,
    grounding: SystemGrounding,
    conductor: 'L1' | 'L2' | 'L3' | 'N',
    earthing: 'TN' | 'IT' = 'TN',
  ): number | null =>
    nominalToGround({
      system,
      grounding,
      conductor,
      basis: earthing === 'IT' ? 'iec' : 'nec-2023',
      earthing,
    });
  test.each([
    ['120/240', 'solid', 'L1', 120],
    ['120/240', 'solid', 'L2', 120],
    ['120/240', 'solid', 'N', 0],
    ['240', 'solid', 'L2', 120],
    ['240/120 high-leg', 'solid', 'L1', 120],
    ['240/120 high-leg', 'solid', 'L2', 208],
    ['400Y/230', 'solid', 'L3', 230],
    ['240 delta', 'corner', 'L1', 240],
    ['240 delta', 'corner', 'L2', 0],
    ['240 delta', 'corner', 'L3', 240],
    ['480Y/277', 'corner', 'N', 277],
    ['480Y/277', 'corner', 'L3', 480],
    ['480Y/277', 'impedance', 'L1', 277],
    ['480Y/277', 'impedance', 'N', 0],
  ] as const)('%s %s %s: %d V', (system, grounding, conductor, volts) => {
    expect(shows(system, grounding, conductor)).toBe(volts);
  });
  test('an impedance-grounded delta: line voltage over root 3', () => {
    expect(shows('480 delta', 'impedance', 'L2')).toBeCloseTo(277.13, 2);
  });
  test.each([
    ['240 delta', 'none', 'L1'],
    ['120/240', 'none', 'N'],
    ['240 delta', 'solid', 'L1'],
    ['120', 'corner', 'L1'],
    ['120', 'corner', 'N'],
  ] as const)('%s %s %s: no figure can be stated', (system, grounding, conductor) => {
    expect(shows(system, grounding, conductor)).toBeNull();
  });
  test('IT has no reference to ground', () => {
    expect(shows('400Y/230', 'solid', 'L1', 'IT')).toBeNull();
    expect(
      nominalToGround({
        system: '120',
        grounding: 'solid',
        conductor: 'L1',
        basis: 'nec-2023',
        earthing: 'IT',
      }),
    ).toBe(120);
    expect(
      nominalToGround({ system: '230', grounding: 'solid', conductor: 'L1', basis: 'iec', earthing: 'TT' }),
    ).toBe(230);
  });
  test('a conductor that the system lacks', () => {
    expect(shows('120', 'solid', 'L2')).toBeNull();
    expect(shows('240', 'solid', 'N')).toBeNull();
    expect(shows('240 delta', 'impedance', 'N')).toBeNull();
  });
  test('no conductor shows more than the line-to-line voltage', () => {
    for (const system of AC_SYSTEMS)
      for (const grounding of SYSTEM_GROUNDINGS)
        for (const conductor of AC_SYSTEM_DATA[system].conductors) {
          const volts = nominalToGround({ system, grounding, conductor, basis: 'nec-2023', earthing: 'TN' });
          if (volts !== null) expect(volts).toBeLessThanOrEqual(AC_SYSTEM_DATA[system].lineToLine);
        }
  });
});
