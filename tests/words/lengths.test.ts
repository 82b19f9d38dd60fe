import { describe, expect, it } from 'vitest';
import { drawnLength, leadLength, paperLengths, runLength } from '../../src/words/lengths.js';

// 1 ft = 0.3048 m and 1 in = 0.0254 m, exactly (NIST SP 811, appendix B).
describe('a length', () => {
  it('is told in feet first under the NEC, in metres alone under IEC', () => {
    expect(runLength(36.576, 'nec-2020')).toBe('120 ft (36.58 m)');
    expect(runLength(36.576, 'iec')).toBe('36.58 m');
    expect(drawnLength(36.576, 'nec-2023')).toBe('120 ft');
    expect(drawnLength(36.576, 'iec')).toBe('36.58 m');
    expect(leadLength(0.508, 'nec-2017')).toBe('20 in (0.51 m)');
    expect(leadLength(0.5, 'iec')).toBe('0.5 m');
  });

  it('of several runs is told one by one, of many by the shortest and the longest', () => {
    expect(paperLengths([4.572, 3.9624, 4.572, 4.2672], 'ft')).toBe('13, 14, 15 ft');
    expect(paperLengths([12, null], 'm')).toBe('12 m');
    expect(paperLengths([9, 2.5, 10, 4], 'm')).toBe('2.5 to 10 m');
  });

  it('keeps two lengths apart that a rule tells apart', () => {
    expect(runLength(30.49, 'nec-2023')).not.toBe(runLength(30.48, 'nec-2023'));
  });
});
