import { describe, expect, test } from 'vitest';
import { nominalToGround } from '../../src/electrical/ac-systems.js';
import {
  highestContinuousToGround,
  type ContinuousVoltage,
} from '../../src/electrical/continuous-voltage.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { Basis } from '../../src/model/editions.js';
import type { AcSystem, Earthing, SystemGrounding } from '../../src/model/words.js';
import { clause } from '../../src/rules/clauses.js';

const { continuousShare } = defaultSettings().thresholds;

function highest(
  system: AcSystem,
  grounding: SystemGrounding,
  basis: Basis,
  earthing: Earthing,
): ContinuousVoltage {
  return highestContinuousToGround({ system, grounding, basis, earthing, continuousShare });
}

/** Usual MCOV of parts for the NEC's systems, and for IEC's: common practice, no source. */
const USUAL_NEC = [150, 275, 320, 420, 640];
const USUAL_IEC = [255, 275, 440];

describe('to ground: normal, ANSI C84.1 range B (value from memory, x 127/120), x 1.15 (common practice), usual MCOV (common practice)', () => {
  test.each([
    ['120', 'solid', 120, 127, 138, 150],
    ['120/240', 'solid', 120, 127, 138, 150],
    ['208Y/120', 'solid', 120, 127, 138, 150],
    ['240/120 high-leg', 'solid', 208, 220, 239, 275],
    ['240 delta', 'none', 240, 254, 276, 320],
    ['240 delta', 'corner', 240, 254, 276, 320],
    ['480Y/277', 'solid', 277, 293, 319, 320],
    ['480 delta', 'none', 480, 508, 552, 640],
    ['480Y/277', 'impedance', 480, 508, 552, 640],
    ['600Y/347', 'solid', 347, 367, 399, 420],
    ['240', 'solid', 120, 127, 138, 150],
    ['208', 'solid', 120, 127, 138, 150],
  ] as const)(
    '%s, %s: %d V, %d V, %d V; parts of %d V',
    (system, grounding, nominal, rangeB, share, mcov) => {
      for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const) {
        const found = highest(system, grounding, basis, 'TN');
        expect(found.nominal).toBe(nominal);
        expect(Math.round(found.highest)).toBe(rangeB);
        expect(Math.round(found.share ?? 0)).toBe(share);
        expect(found.required).toBe(Math.max(found.highest, found.share ?? 0));
        expect(USUAL_NEC.find((usual) => usual >= found.required)).toBe(mcov);
      }
    },
  );

  test.each([
    ['230', 'TN', 230, 253, 255],
    ['400Y/230', 'TN', 230, 253, 255],
    ['230', 'TT', 230, 253, 255],
    ['400Y/230', 'TT', 230, 253, 255],
    ['400Y/230', 'IT', 400, 440, 440],
    ['230', 'IT', 400, 440, 440],
  ] as const)(
    '%s in %s: %d V x 1.1 = %d V (IEC 60364-5-53 Table 534.2, value from memory); parts of %d V',
    (system, earthing, nominal, required, mcov) => {
      const found = highest(system, 'solid', 'iec', earthing);
      expect(found.nominal).toBe(nominal);
      expect(found.required).toBeCloseTo(required, 6);
      expect(found.share).toBeNull();
      expect(USUAL_IEC.find((usual) => usual >= found.required)).toBe(mcov);
    },
  );

  test('the share of 115 % is common practice; the floor of the NEC is the highest continuous voltage', () => {
    const bare = highestContinuousToGround({
      system: '120',
      grounding: 'solid',
      basis: 'nec-2023',
      earthing: 'TN',
      continuousShare: 1,
    });
    expect(bare.required).toBeCloseTo(127, 9);
    expect(continuousShare).toBe(1.15);
  });

  test('the high leg is phase B, L2 (NEC 408.3(E), read)', () => {
    expect(highest('240/120 high-leg', 'solid', 'nec-2023', 'TN').conductor).toBe('L2');
    const common = {
      system: '240/120 high-leg',
      grounding: 'solid',
      basis: 'nec-2023',
      earthing: 'TN',
    } as const;
    expect(nominalToGround({ ...common, conductor: 'L2' })).toBe(208);
    expect(nominalToGround({ ...common, conductor: 'L1' })).toBe(120);
    expect(nominalToGround({ ...common, conductor: 'L3' })).toBe(120);
  });
});

test.each([
  ['voltage-ranges', 'nec-2023', 'ANSI C84.1', '2020', 'Table 1', /120 V system is 127 V/],
  ['continuous-voltage', 'iec', 'IEC 60364-5-53', '2019', 'Table 534.2', /1\.1 times/],
] as const)(
  'the rulebook cites %s under %s as %s (%s) %s',
  (subject, basis, standard, edition, number, says) => {
    const found = clause(subject, basis);
    expect(found).toMatchObject({ standard, edition, clause: number });
    expect(found?.says).toMatch(says);
  },
);
