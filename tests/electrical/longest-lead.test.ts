import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leadFigures } from '../../src/electrical/leads.js';
import { longestLead, type LongestLeadInput } from '../../src/electrical/longest-lead.js';

// 10 AWG, 3 kA; levels and withstands are own cases.
const usual: LongestLeadInput = {
  diameter: 2.588e-3,
  peak: 3000,
  upBasis: 'VPR',
  up: 400,
  withstand: 500,
  most: 0.5,
};
const at = ({ up, upBasis, diameter, peak }: LongestLeadInput, length: number): number =>
  up + leadFigures({ upBasis, diameter, peak, length }).value;

describe('the longest leads within a withstand', () => {
  test.each([
    ['no limit but what is aimed at', { withstand: 2500 }, 0.5],
    ['just what the length aimed at reaches', { withstand: at(usual, 0.5) }, 0.5],
    ['a hair less', { withstand: at(usual, 0.5) - 1e-6 }, 0.49],
    ['100 V for the leads', {}, 0.34],
    ['just what a length reaches', { withstand: at(usual, 0.34) }, 0.34],
    ['a hair less than a length reaches', { withstand: at(usual, 0.34) - 1e-6 }, 0.33],
    ['a level as high as the withstand: the 6 in of a VPR', { up: 500 }, 0.15],
    ['a level above the withstand', { up: 500.1 }, 0],
    ['an Up holds nothing of the leads', { upBasis: 'Up', up: 500 }, 0],
    ['an Up', { upBasis: 'Up', withstand: at({ ...usual, upBasis: 'Up' }, 0.2) }, 0.2],
    ['an odd length aimed at, and room', { most: 0.335 }, 0.335],
    ['an odd length aimed at, and none', { most: 0.345 }, 0.34],
    ['a length that no double holds', { most: 0.29, withstand: at(usual, 0.28) }, 0.28],
  ] as const)('%s', (_, some, metres) => {
    expect(longestLead({ ...usual, ...some })).toBe(metres);
  });

  test('holds, and a centimetre more does not, or is more than is aimed at', () => {
    fc.assert(
      fc.property(
        fc.record({
          diameter: fc.double({ min: 1e-3, max: 12e-3, noNaN: true }),
          peak: fc.double({ min: 100, max: 20_000, noNaN: true }),
          upBasis: fc.constantFrom('VPR', 'Up', null),
          up: fc.double({ min: 50, max: 4000, noNaN: true }),
          withstand: fc.double({ min: 50, max: 6000, noNaN: true }),
          most: fc.double({ min: 0.05, max: 1, noNaN: true }),
        }),
        (input) => {
          const metres = longestLead(input);
          expect(metres).toBeGreaterThanOrEqual(0);
          expect(metres).toBeLessThanOrEqual(input.most);
          if (input.up <= input.withstand) expect(at(input, metres)).toBeLessThanOrEqual(input.withstand);
          else expect(metres).toBe(0);
          if (metres < input.most) expect(at(input, metres + 0.01)).toBeGreaterThan(input.withstand);
        },
      ),
    );
  });
});
