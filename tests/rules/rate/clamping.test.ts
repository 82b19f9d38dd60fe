import { clamping } from '../../../src/rules/rate/clamping.js';
import { THRESHOLDS } from '../facts.js';
import { fitTable } from '../table.js';

/** Withstand stated, leads 200 V: Up of 1800 V reaches 80 % of 2500 V, of 2300 V all of it (own case). */
const stated = { withstand: 2500, leadVoltage: 200 } as const;
const assumed = { ...stated, withstandAssumed: true } as const;

export const table = fitTable(import.meta.url, clamping, [
  ...(['nec-2017', 'nec-2020', 'nec-2023', 'iec'] as const).map((basis) => ({
    name: `${basis}: 80 % of the withstand itself is aimed at (IEC 60364-5-53 cl. 534.4.4.2)`,
    given: { ...stated, basis },
    part: { up: 1800 },
  })),
  {
    name: 'just above 80 % of a stated withstand: ranks after',
    given: stated,
    part: { up: 1801 },
    shortfall: 'VPR 1801 V + leads 200 V > 80 % of the withstand of 2500 V',
  },
  {
    name: 'a stated withstand itself: still only a shortfall',
    given: stated,
    part: { up: 2300, upBasis: 'Up' },
    shortfall: 'Up 2300 V + leads 200 V > 80 % of the withstand of 2500 V',
  },
  {
    name: 'above a stated withstand: rejected',
    given: stated,
    part: { up: 2400 },
    rejects: 'VPR 2400 V + leads 200 V > withstand 2500 V',
    gap: 0.04,
  },
  {
    name: 'the leads count',
    given: { ...stated, leadVoltage: 201 },
    part: { up: 1800, upBasis: null },
    shortfall: 'Up 1800 V + leads 201 V > 80 % of the withstand of 2500 V',
  },
  {
    name: 'above an assumed withstand: never rejected, it ranks and asks',
    given: assumed,
    part: { up: 9000 },
    shortfall: 'VPR 9000 V + leads 200 V > the whole assumed withstand of 2500 V',
  },
  {
    name: 'an assumed withstand itself isn’t passed: above the share alone',
    given: assumed,
    part: { up: 2300 },
    shortfall: 'VPR 2300 V + leads 200 V > 80 % of the assumed withstand of 2500 V',
  },
  {
    name: 'within an assumed withstand',
    given: assumed,
    part: { up: 1800 },
  },
  {
    name: 'the share is a setting (own case)',
    given: { ...stated, thresholds: { ...THRESHOLDS, withstandShare: 0.7 } },
    part: { up: 1800 },
    shortfall: 'VPR 1800 V + leads 200 V > 70 % of the withstand of 2500 V',
  },
  {
    name: 'no withstand is known: nothing to compare',
    part: { up: 9000 },
  },
  {
    name: 'neither VPR nor Up is stated',
    given: stated,
    part: { up: null },
    rejects: 'neither VPR nor Up is stated',
  },
  {
    name: 'neither is stated, and no withstand is known either: never guessed',
    part: { up: null },
    rejects: 'neither VPR nor Up is stated',
  },
]);
