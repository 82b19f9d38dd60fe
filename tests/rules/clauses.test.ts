import { describe, expect, test } from 'vitest';
import { BASES } from '../../src/model/editions.js';
import { clause, CLAUSE_SUBJECTS, clausesOf } from '../../src/rules/clauses.js';

describe('clauses by basis', () => {
  test("a subject of both families has each one's own clause", () => {
    expect(clause('smallest-lead', 'nec-2017')).toMatchObject({
      standard: 'NEC (NFPA 70)',
      edition: '2017',
      clause: '285.26',
    });
    expect(clause('smallest-lead', 'iec')).toMatchObject({
      standard: 'IEC 60364-5-53',
      clause: '534.4.10',
      sure: 'memory',
    });
    expect(clause('lead-routing', 'nec-2023')?.clause).toBe('242.24');
    expect(clause('lead-routing', 'iec')?.clause).toBe('534.4.8');
    expect(clause('cold-voltage', 'nec-2020')?.clause).toBe('690.7(A)(1)');
    expect(clause('cold-voltage', 'iec')?.clause).toBe('Annex B');
  });
  test('a subject of one family is unknown to the other', () => {
    expect(clause('dwelling-service', 'iec')).toBeUndefined();
    expect(clause('pv-dc-protection', 'nec-2023')).toBeUndefined();
  });
  test('a subject that a cycle lacks', () => {
    expect(clause('feeder', 'nec-2020')).toBeUndefined();
    expect(clause('feeder', 'nec-2023')?.clause).toBe('215.18');
  });
  test('a standard that both sides use', () => {
    for (const basis of BASES)
      expect(clause('impulse-withstand', basis)).toMatchObject({
        standard: 'IEC 60664-1',
        clause: 'Table F.1',
      });
  });
  test('a text that was not at hand says so, one that was does not', () => {
    expect(clause('array-current', 'nec-2023')?.sure).toBe('memory');
    expect(clause('listing', 'nec-2023')).not.toHaveProperty('sure');
    expect(clause('protection-level', 'iec')).not.toHaveProperty('sure');
  });
  test('another standard than the NEC under its cycles', () => {
    expect(clause('lightning-protection', 'nec-2020')).toMatchObject({
      standard: 'NFPA 780',
      edition: '2020',
    });
  });
});

test.each(BASES)('%s: every clause is complete', (basis) => {
  const known = clausesOf(basis);
  expect(known.size).toBeGreaterThan(20);
  for (const [subject, found] of known) {
    expect(CLAUSE_SUBJECTS).toContain(subject);
    for (const text of [found.standard, found.edition, found.clause]) expect(text).not.toBe('');
    expect(found.says.length).toBeGreaterThan(20);
    expect(clause(subject, basis)).toEqual(found);
  }
});

test('every subject is known to a basis, and stands once', () => {
  for (const subject of CLAUSE_SUBJECTS) expect(BASES.some((basis) => clause(subject, basis))).toBe(true);
  expect(new Set(CLAUSE_SUBJECTS).size).toBe(CLAUSE_SUBJECTS.length);
});

describe('the standards that the rules cite', () => {
  // From rules.md; the NEC's own are checked in tests/published/section-6-clauses.test.ts.
  test.each([
    ['transient-overvoltage-risk', 'iec', 'IEC 60364-4-44', '443.4'],
    ['calculated-risk-level', 'iec', 'IEC 60364-4-44', '443.5'],
    ['origin-of-installation', 'iec', 'IEC 60364-5-53', '534.4.1'],
    ['continuous-voltage', 'iec', 'IEC 60364-5-53', 'Table 534.2'],
    ['protection-level', 'iec', 'IEC 60364-5-53', '534.4.4.2'],
    ['connection-types', 'iec', 'IEC 60364-5-53', '534.4.3'],
    ['discharge-currents', 'iec', 'IEC 60364-5-53', '534.4.4.4'],
    ['short-circuit-current-rating', 'iec', 'IEC 60364-5-53', '534.4.4.6'],
    ['protection-rating', 'iec', 'UL 1449', 'voltage protection rating'],
    ['ten-metre-distance', 'iec', 'IEC 60364-5-53', '534.4.9'],
    ['pv-dc-protection', 'iec', 'IEC 60364-7-712', '712.443'],
    ['yearly-flashes', 'iec', 'IEC 62305-2', 'Annex A'],
    ['handover-documents', 'iec', 'IEC 62446-1', '4.3.5'],
    ['maximum-pv-voltage', 'nec-2023', 'NEC (NFPA 70)', '690.7'],
    ['cold-voltage-table', 'nec-2023', 'NEC (NFPA 70)', 'Table 690.7(A)'],
    ['array-current', 'nec-2023', 'NEC (NFPA 70)', '690.8(A)'],
    ['high-leg-marking', 'nec-2023', 'NEC (NFPA 70)', '110.15'],
    ['conductor-colours', 'nec-2023', 'NEC (NFPA 70)', '200.6'],
    ['conductor-colours', 'iec', 'IEC 60445', '6'],
    ['pv-dc-both-ends', 'iec', 'IEC 60364-7-712', '712.534'],
    ['pv-ac-protection', 'iec', 'IEC 60364-7-712', '712.534'],
    ['signal-lines', 'nec-2023', 'IEEE C62.72', 'scope'],
    ['signal-words', 'iec', 'ANSI Z535.4 and Z535.6', 'signal words'],
    ['dwelling-service-exception', 'nec-2020', 'NEC (NFPA 70)', '230.67(B) exception'],
    ['lightning-protection', 'nec-2023', 'NFPA 780', 'chapter 4'],
  ] as const)('%s under %s: %s %s', (subject, basis, standard, number) => {
    expect(clause(subject, basis)).toMatchObject({ standard, clause: number });
  });
});

test.each([
  ['discharge-currents', 'iec', /at least 5 kA at the origin.*at least 12\.5 kA/],
  ['ten-metre-distance', 'iec', /^farther than 10 m/],
  ['pv-dc-both-ends', 'iec', /more than 10 m/],
  ['pv-ac-protection', 'iec', /more than 10 m/],
  ['array-current', 'nec-2023', /125 percent/],
  ['lightning-protection', 'nec-2023', /at least 20 kA/],
] as const)('%s under %s gives the figure that the rules use', (subject, basis, says) => {
  expect(clause(subject, basis)?.says).toMatch(says);
});

test('figures of the rules that were not read say so', () => {
  for (const subject of [
    'array-current',
    'high-leg-marking',
    'conductor-colours',
    'lightning-protection',
  ] as const)
    expect(clause(subject, 'nec-2023')?.sure).toBe('memory');
  for (const subject of [
    'discharge-currents',
    'continuous-voltage',
    'ten-metre-distance',
    'smallest-lead',
  ] as const)
    expect(clause(subject, 'iec')?.sure).toBe('memory');
});

test('editions', () => {
  expect(clause('conductor-colours', 'iec')?.edition).toBe('2021');
  expect(clause('handover-documents', 'iec')?.edition).toBe('2016');
  expect(clause('signal-lines', 'iec')?.edition).toBe('2016');
  expect(clause('signal-words', 'iec')?.edition).toBe('2011');
});
