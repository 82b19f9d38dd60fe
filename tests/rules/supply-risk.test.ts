import { describe, expect, test } from 'vitest';
import { BASES } from '../../src/model/editions.js';
import { riskAsksForProtection, riskDecides, serviceAsksForProtection } from '../../src/rules/supply-risk.js';

// IEC 60364-4-44:2007+A1:2015 cl. 443.4 and 443.5: limit 1000.
test('a risk level below 1000 asks for protection, 1000 itself does not', () => {
  expect([999.99, 1000, 1000.01].map(riskAsksForProtection)).toEqual([true, false, false]);
});

describe('at a service under iec', () => {
  test.each([
    ['dwelling', 400, true, true],
    ['dwelling', 1000, true, false],
    ['dwelling', undefined, false, false],
    ['sleeping', 5000, false, true],
    ['other', undefined, false, true],
  ] as const)('%s, risk level %s', (occupancy, riskLevel, decides, asks) => {
    const facts = { basis: 'iec', occupancy, riskLevel } as const;
    expect([riskDecides(facts), serviceAsksForProtection(facts)]).toEqual([decides, asks]);
  });
});

test('under the NEC the risk level decides nothing', () => {
  for (const basis of BASES.filter((b) => b !== 'iec')) {
    const facts = { basis, occupancy: 'dwelling', riskLevel: 1 } as const;
    expect([riskDecides(facts), serviceAsksForProtection(facts)]).toEqual([false, false]);
  }
});
