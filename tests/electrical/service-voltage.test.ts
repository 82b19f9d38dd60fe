import { describe, expect, it } from 'vitest';
import { aroundNominal, rangeB } from '../../src/electrical/service-voltage.js';

describe('range B', () => {
  it('of a nominal that the table lacks has the share of 120 V (computed)', () => {
    expect(rangeB(230, 'service')).toEqual({ low: 210.833333333, high: 243.416666667 });
    expect(rangeB(347, 'utilization').low).toBe(300.733333333);
  });

  it('of utilization is the lower one', () => {
    for (const nominal of [120, 208, 240, 277, 347, 480, 600])
      expect(rangeB(nominal, 'utilization').low).toBeLessThan(rangeB(nominal, 'service').low);
  });
});

describe('around a nominal', () => {
  it.each([
    [120, 0.1, 108, 132],
    [230, 0.1, 207, 253],
    [400, 0.06, 376, 424],
  ])('%d V, share %d: %d to %d V', (nominal, share, low, high) => {
    expect(aroundNominal(nominal, share)).toEqual({ low, high });
  });
});
