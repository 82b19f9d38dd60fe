import { describe, expect, it } from 'vitest';
import { changeTexts } from '../../src/documents/closeout-pack/changes.js';
import type { Plan } from '../../src/model/plan.js';
import { crewPackWords } from '../../src/words/crew-language.js';
import { item } from './fixtures/builder.js';
import { hutPlan } from './fixtures/plans.js';

const EN = crewPackWords('en');

function changed(change: (plan: Plan) => Plan): string[] {
  return changeTexts(hutPlan(), change(hutPlan()), EN);
}

describe('what changed since the last pack', () => {
  it('is nothing where nothing did', () => {
    expect(changed((p) => p)).toEqual([]);
  });

  it('names a protector that is gone, and one that is new', () => {
    expect(changed((p) => ({ ...p, protectors: p.protectors.slice(1) }))).toEqual([
      'P-1 at CC-1 DC input 1 is gone.',
    ]);
    expect(changeTexts({ ...hutPlan(), protectors: hutPlan().protectors.slice(1) }, hutPlan(), EN)).toEqual([
      'P-1 at CC-1 DC input 1 is new.',
    ]);
  });

  it('names another part and another tag at the same port', () => {
    const lines = changed((p) => ({
      ...p,
      protectors: p.protectors.map((q) => (q.tag === 'P-2' ? { ...q, tag: 'P-20', part: 'HT-DC-600-2' } : q)),
    }));
    expect(lines).toEqual(['P-20: tag was P-2, is P-20.', 'P-20: part was HT-DC-300-2, is HT-DC-600-2.']);
  });

  it('tells basis, revision, status and items', () => {
    const lines = changed((p) => ({
      ...p,
      basis: 'iec',
      revision: '',
      submittable: false,
      openItems: [item({ message: 'Something is missing.' })],
    }));
    expect(lines).toEqual([
      'The code was NEC (NFPA 70), 2023 edition, is IEC 60364 and IEC 61643.',
      'The revision was B, is not stated.',
      'The pack was complete and is a draft.',
      'Items settled: 1.',
      'Items raised: 1.',
    ]);
  });

  it('is told in the crew’s language', () => {
    const after = { ...hutPlan(), protectors: hutPlan().protectors.slice(1) };
    expect(changeTexts(hutPlan(), after, crewPackWords('es'))).toEqual([
      'P-1 en CC-1 entrada CC 1 ya no está.',
    ]);
  });

  it('counts what would not go on a cover', () => {
    const many = Array.from({ length: 60 }, (_, i) => ({
      ...(hutPlan().protectors[0] ?? never()),
      tag: `Q-${i}`,
      ports: [{ equipment: `CC-${i + 50}`, port: 'dc-in-1' }],
    }));
    const lines = changed((p) => ({ ...p, protectors: [...p.protectors, ...many] }));
    expect(lines).toHaveLength(9);
    expect(lines.at(-1)).toBe('And 52 more.');
  });
});

function never(): never {
  throw new Error('the plan has a first protector');
}
