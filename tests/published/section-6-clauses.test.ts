import { describe, expect, test } from 'vitest';
import { clause, type ClauseSubject } from '../../src/rules/clauses.js';

// NEC clauses by cycle, read. `-`: that cycle has none.
describe('NEC clauses by cycle: the pair (cycle, clause)', () => {
  test.each([
    ['uses-not-permitted', '285.3', '242.6', '242.12'],
    ['listing', '285.6', '242.8', '242.6'],
    ['short-circuit-current-rating', '285.7', '242.10', '242.8'],
    ['working-indication', '-', '-', '242.9'],
    ['type-1-places', '285.23', '242.12', '242.13'],
    ['type-2-places', '285.24', '242.14', '242.14'],
    ['type-3-places', '285.25', '242.16', '242.16'],
    ['each-ungrounded-conductor', '285.4', '242.20', '242.20'],
    ['out-of-reach', '285.11', '242.22', '242.22'],
    ['lead-routing', '285.12', '242.24', '242.24'],
    ['smallest-lead', '285.26', '242.28', '242.28'],
    ['dwelling-service', '-', '230.67', '230.67'],
    ['feeder', '-', '-', '215.18'],
    ['outside-feeder', '-', '-', '225.42'],
    ['wind', '694.7(D)', '694.7(D)', '694.7(D)'],
    ['array-ground-fault', '690.41(B)', '690.41(B)', '690.41(B)'],
    ['high-leg-position', '408.3(E)', '408.3(E)', '408.3(E)'],
    ['labels', '110.21(B)', '110.21(B)', '110.21(B)'],
    ['maker-instructions', '110.3(B)', '110.3(B)', '110.3(B)'],
  ] as const)('%s: %s in 2017, %s in 2020, %s in 2023', (subject, in2017, in2020, in2023) => {
    const numbers = (['nec-2017', 'nec-2020', 'nec-2023'] as const).map(
      (basis) => clause(subject, basis)?.clause ?? '-',
    );
    expect(numbers).toEqual([in2017, in2020, in2023]);
    const editions = (['nec-2017', 'nec-2020', 'nec-2023'] as const).map(
      (basis) => clause(subject, basis)?.edition ?? '-',
    );
    expect(editions).toEqual(
      ['2017', '2020', '2023'].map((edition, i) => (numbers[i] === '-' ? '-' : edition)),
    );
  });
});

describe('what the clauses say (read)', () => {
  const says = (subject: ClauseSubject, basis: 'nec-2017' | 'nec-2020' | 'nec-2023'): string =>
    clause(subject, basis)?.says ?? '';
  test('uses not permitted: over 1000 V; ungrounded, impedance or corner unless listed; rating below the voltage to ground', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const) {
      expect(says('uses-not-permitted', basis)).toMatch(
        /1000 V.*ungrounded, impedance-grounded or corner-grounded.*phase-to-ground/,
      );
    }
  });
  test('230.67 in 2023: more occupancies, and 10 kA', () => {
    expect(says('dwelling-service', 'nec-2023')).toMatch(/dormitory.*guest.*patient.*10 kA/);
    expect(says('dwelling-service', 'nec-2020')).not.toMatch(/10 kA|dormitory|guest|patient/);
  });
  test('10 kA on a feeder to a dwelling unit, inside and outside', () => {
    expect(says('feeder', 'nec-2023')).toMatch(/dwelling.*dormitory.*guest.*patient.*at least 10 kA/);
    expect(says('outside-feeder', 'nec-2023')).toMatch(/dwelling.*dormitory.*guest.*patient.*at least 10 kA/);
  });
  test('what may stand where, by type', () => {
    for (const basis of ['nec-2017', 'nec-2020', 'nec-2023'] as const) {
      expect(says('type-1-places', basis)).toMatch(/^a type 1 protector.*supply side/);
      expect(says('type-2-places', basis)).toMatch(/^a type 2 protector.*load side/);
      expect(says('type-3-places', basis)).toMatch(/^a type 3 protector.*load side/);
    }
    expect(says('dwelling-service', 'nec-2020')).toMatch(/type 1 or type 2 protector/);
  });
  test('ground-fault protection of an array over 30 V or 8 A from 2020', () => {
    expect(says('array-ground-fault', 'nec-2020')).toMatch(/30 V or 8 A/);
    expect(says('array-ground-fault', 'nec-2023')).toMatch(/30 V or 8 A/);
    expect(says('array-ground-fault', 'nec-2017')).not.toMatch(/30 V|8 A/);
  });
  test('voltage to ground of an ungrounded circuit: the greatest to any other conductor (Art. 100)', () => {
    expect(clause('voltage-to-ground', 'nec-2023')).toMatchObject({ clause: 'Article 100' });
    expect(says('voltage-to-ground', 'nec-2023')).toMatch(/greatest to any other/);
  });
  test('230.67(B) exception: the next level downstream', () => {
    expect(clause('dwelling-service-exception', 'nec-2017')).toBeUndefined();
    expect(clause('dwelling-service-exception', 'nec-2023')?.clause).toMatch(/^230\.67\(B\)/);
  });
});
