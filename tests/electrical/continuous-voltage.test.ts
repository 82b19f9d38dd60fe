import { describe, expect, test } from 'vitest';
import { AC_SYSTEM_DATA } from '../../src/electrical/ac-systems.js';
import {
  arrayFloorFromInverter,
  highestContinuousToGround,
  type ContinuousVoltageInput,
} from '../../src/electrical/continuous-voltage.js';
import { BASES } from '../../src/model/editions.js';
import { AC_SYSTEMS, EARTHINGS, SYSTEM_GROUNDINGS } from '../../src/model/words.js';
import { expectSound, symbols } from './evaluated.js';
import { englishSteps } from '../in-english.js';

const usual: ContinuousVoltageInput = {
  system: '120/240',
  grounding: 'solid',
  basis: 'nec-2023',
  earthing: 'TN',
  continuousShare: 1.15,
};

describe('nec', () => {
  test('solid: of the worst line to ground', () => {
    const found = highestContinuousToGround(usual);
    expect(found).toMatchObject({
      conductor: 'L1',
      nominal: 120,
      standsOn: 'line-to-ground',
      highest: 127,
      share: 138,
      required: 138,
      foreign: false,
    });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['U V', 'Umax V', 'Us V', 'MCOV V']);
    expect(englishSteps(found.working)[0]?.says).toContain('L1 to ground, system 120/240');
    expect(englishSteps(found.working).map((s) => s.sure)).toEqual([
      'stated',
      'memory',
      'common practice',
      'computed',
    ]);
    expect(englishSteps(found.working).map((s) => s.formula)).toEqual([
      '',
      '127 / 120 × U',
      '1.15 × U',
      'max(Umax, Us)',
    ]);
    expect(englishSteps(found.working)[1]?.source).toContain('range B');
    expect(englishSteps(found.working)[3]?.source).toContain('NEC 2023 242.12');
  });
  test.each([
    ['nec-2017', 'NEC 2017 285.3:'],
    ['nec-2020', 'NEC 2020 242.6:'],
    ['nec-2023', 'NEC 2023 242.12:'],
  ] as const)('%s: the working names the clause of its own cycle', (basis, clause) => {
    const found = highestContinuousToGround({
      system: '120/240',
      grounding: 'solid',
      basis,
      earthing: 'TN',
      continuousShare: 1.15,
    });
    expect(englishSteps(found.working).at(-1)?.source.startsWith(clause)).toBe(true);
  });
  test('a share below range B: range B is the floor', () => {
    expect(highestContinuousToGround({ ...usual, continuousShare: 1.02 }).required).toBe(127);
  });
  test('ungrounded: line to line', () => {
    const found = highestContinuousToGround({ ...usual, system: '480Y/277', grounding: 'impedance' });
    expect(found).toMatchObject({
      conductor: 'L1',
      nominal: 480,
      standsOn: 'line-to-line',
      highest: 508,
      required: 552,
    });
    expect(englishSteps(found.working)[0]?.says).toContain('between lines, system 480Y/277');
    expectSound(found.working);
  });
  test('the high leg of a delta that is not solidly grounded is a line like the others', () => {
    expect(
      highestContinuousToGround({ ...usual, system: '240/120 high-leg', grounding: 'none' }),
    ).toMatchObject({
      conductor: 'L1',
      nominal: 240,
    });
  });
  test('a system of the other practice: by the basis, and foreign', () => {
    expect(highestContinuousToGround({ ...usual, system: '400Y/230' })).toMatchObject({
      required: 264.5,
      foreign: true,
    });
  });
  test('earthing does not count', () => {
    expect(highestContinuousToGround({ ...usual, earthing: 'IT' }).required).toBe(138);
  });
});

describe('iec', () => {
  const iec = { ...usual, system: '400Y/230', basis: 'iec' } as const;
  test('TN: 1.1 x 230 V', () => {
    const found = highestContinuousToGround(iec);
    expect(found).toMatchObject({
      conductor: 'L1',
      nominal: 230,
      standsOn: 'line-to-ground',
      highest: 253,
      share: null,
      required: 253,
      foreign: false,
    });
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['U V', 'Uc V']);
    expect(englishSteps(found.working)[1]).toMatchObject({ formula: '1.1 × U', sure: 'memory' });
    expect(englishSteps(found.working)[1]?.source).toContain('Table 534.2');
  });
  test('IT: 1.1 x 400 V, 440 V and not a hair more', () => {
    for (const system of ['230', '400Y/230'] as const) {
      const found = highestContinuousToGround({ ...iec, system, earthing: 'IT' });
      expect(found).toMatchObject({ nominal: 400, standsOn: 'line-to-line', required: 440 });
    }
  });
  test('foreign systems by the formula of the basis', () => {
    expect(highestContinuousToGround({ ...iec, system: '240/120 high-leg' })).toMatchObject({
      conductor: 'L2',
      required: 228.8,
      foreign: true,
    });
  });
});

test('never below the nominal voltage, and no grounding asks for less than solid', () => {
  for (const system of AC_SYSTEMS)
    for (const basis of BASES)
      for (const earthing of EARTHINGS) {
        const solid = highestContinuousToGround({ ...usual, system, basis, earthing, grounding: 'solid' });
        expect(solid.required).toBeGreaterThan(solid.nominal);
        for (const grounding of SYSTEM_GROUNDINGS) {
          const found = highestContinuousToGround({ ...usual, system, basis, earthing, grounding });
          expect(found.required).toBeGreaterThanOrEqual(solid.required);
          expectSound(found.working);
        }
      }
});

describe('floor of an array from the inverter', () => {
  test.each([
    ['120/240', 'nec-2023', 240, 254, 359.156],
    ['208Y/120', 'nec-2020', 208, 220.1333, 311.2685],
    ['240', 'nec-2023', 240, 254, 359.156],
    ['120', 'nec-2023', 120, 127, 179.578],
    // One line: to N.
    ['230', 'iec', 230, 253, 357.742],
    ['400Y/230', 'iec', 400, 440, 622.16],
    ['480Y/277', 'nec-2017', 480, 508, 718.312],
  ] as const)('%s under %s: 1.414 x %d V x ... = %d, %d V', (system, basis, nominal, highest, value) => {
    const found = arrayFloorFromInverter({ system, basis });
    expect(found.nominal).toBe(nominal);
    expect(found.highest).toBeCloseTo(highest, 4);
    expect(found.value).toBeCloseTo(value, 3);
    expectSound(found.working);
    expect(symbols(found.working)).toEqual(['UAC V', 'UAC,max V', 'Ulink V']);
    expect(englishSteps(found.working)[0]?.says).toContain(system);
    expect(englishSteps(found.working)[1]?.formula).toBe(basis === 'iec' ? '1.1 × UAC' : '127 / 120 × UAC');
    expect(englishSteps(found.working)[1]?.source).toContain(basis === 'iec' ? 'Table 534.2' : 'range B');
    expect(englishSteps(found.working)[2]).toMatchObject({ sure: 'derived', formula: '1.414 × UAC,max' });
    expect(englishSteps(found.working)[2]?.says).toContain('ask the maker');
  });
  test('without the share of 1.15: the peak of range B only', () => {
    for (const system of AC_SYSTEMS) {
      const { value } = arrayFloorFromInverter({ system, basis: 'nec-2023' });
      expect(value / AC_SYSTEM_DATA[system].betweenConductors).toBeCloseTo((127 / 120) * 1.414, 9);
    }
  });
});
