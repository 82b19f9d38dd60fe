import { expect, test } from 'vitest';
import { BASES, type Basis } from '../../src/model/editions.js';
import { CLAUSE_SUBJECTS, clausesOf, undecidedClauses } from '../../src/rules/clauses.js';
import { NEC_CLAUSES } from '../../src/rules/clauses-nec.js';
import { undecidedUnder } from '../../src/rules/undecided-cycle.js';

test.each(BASES)('%s is whole: each rule and each clause is decided', (basis) => {
  expect(undecidedUnder(basis)).toEqual([]);
  expect(undecidedClauses(basis)).toEqual([]);
});

test('of a cycle that no table knows, each subject of the code is undecided', () => {
  // What the compiler refuses, as a job could meet it.
  const unknown = 'nec-2099' as Basis;
  expect(undecidedClauses(unknown)).toEqual(Object.keys(NEC_CLAUSES));
});

test('the clauses of a basis are those subjects that have one there', () => {
  const known = clausesOf('iec');
  expect(known.size).toBeGreaterThan(0);
  expect(known.size).toBeLessThan(CLAUSE_SUBJECTS.length);
});
