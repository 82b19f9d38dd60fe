import { describe, expect, it } from 'vitest';
import {
  issuedFor,
  STAMPS,
  stampOf,
  stampWords,
  type StampFacts,
} from '../../src/documents/permit-sheet/stamp.js';
import { uncheckedRequired } from '../../src/documents/permit-sheet/required-checks.js';
import { SettingsSchema } from '../../src/model/settings.js';
import { demoPlan, demoPlans } from './fixtures/demo-plans.js';

const BLANK = { tag: 'P-1', what: 'lead' } as const;
const facts = (more: Partial<StampFacts>): StampFacts => ({
  submittable: true,
  unchecked: [],
  blanks: [],
  ...more,
});

// paper.md section 2: the first that holds of DRAFT, AFTER CHECK OF CLAUSES, WHEN FILLED, FOR PERMIT.
describe('the stamp of permit sheets', () => {
  it.each([
    [facts({}), 'for-permit', 'FOR PERMIT', []],
    [facts({ blanks: [BLANK] }), 'when-filled', 'FOR PERMIT WHEN FILLED: 1 blank', ['lead: P-1']],
    [facts({ unchecked: ['230.67'] }), 'after-check', 'FOR PERMIT AFTER CHECK OF CLAUSES', []],
    [
      facts({ unchecked: ['230.67'], blanks: [BLANK] }),
      'after-check',
      'FOR PERMIT AFTER CHECK OF CLAUSES',
      ['To fill in, 1 blank', 'lead: P-1'],
    ],
    [
      facts({ submittable: false, unchecked: ['230.67'], blanks: [BLANK] }),
      'draft',
      'DRAFT, NOT FOR PERMIT',
      ['To fill in, 1 blank', 'lead: P-1'],
    ],
    [facts({ submittable: false }), 'draft', 'DRAFT, NOT FOR PERMIT', []],
  ])('%j: %s', (given, stamp, words, blanks) => {
    expect(stampOf(given)).toBe(stamp);
    expect(stampWords(given)).toEqual({ stamp: words, blanks });
  });

  it('has a revision row that never says more than it', () => {
    expect(STAMPS.map(issuedFor)).toEqual([
      'Draft',
      'For check of clauses',
      'To be filled in',
      'Issued for permit',
    ]);
  });

  it('names blanks by what they are, with their tags in few words', () => {
    const tags = ['P-1', 'P-5', 'P-6', 'P-7', 'P-8'];
    const blanks = [
      ...tags.map((tag) => ({ tag, what: 'fault current' as const })),
      { tag: 'P-2', what: 'device' as const },
    ];
    expect(stampWords(facts({ blanks }))).toEqual({
      stamp: 'FOR PERMIT WHEN FILLED: 6 blanks',
      blanks: ['device: P-2', 'fault current: P-1, P-5 to P-8'],
    });
  });
});

describe('clauses behind required lines', () => {
  const checked = (basis: string, ...clauses: string[]) =>
    SettingsSchema.parse({
      checkedClauses: clauses.map((clause) => ({ basis, clause, by: 'the desk', date: '2025-02-03' })),
    });

  it('are open until someone has checked each of them under the basis of the job', () => {
    const plan = demoPlan('UF-102');
    expect(uncheckedRequired(plan, checked('nec-2023')).sort()).toEqual(['215.18', '230.67']);
    expect(uncheckedRequired(plan, checked('nec-2023', '230.67'))).toEqual(['215.18']);
    expect(uncheckedRequired(plan, checked('nec-2020', '230.67', '215.18'))).toHaveLength(2);
    expect(uncheckedRequired(plan, checked('nec-2023', '230.67', ' 215.18 '))).toEqual([]);
  });

  it('are named with their standard where that isn’t the code itself, and taken with it or without', () => {
    const plan = demoPlan('UF-114');
    const open = uncheckedRequired(plan, checked('iec'));
    expect(open).toContain('IEC 60364-5-53 534.4.9');
    expect(uncheckedRequired(plan, checked('iec', ...open))).toEqual([]);
    expect(uncheckedRequired(plan, checked('iec', '534.4.9', '712.443', '712.534'))).toEqual([]);
  });

  it('are none where nothing is required', () => {
    for (const plan of demoPlans().filter((p) => p.protectors.every((one) => one.strength !== 'required')))
      expect(uncheckedRequired(plan, checked('nec-2023')), plan.job).toEqual([]);
  });
});
