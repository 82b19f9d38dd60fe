import { describe, expect, it } from 'vitest';
import { isolationView } from '../../src/documents/closeout-pack/isolation-view.js';
import { CREW_LANGUAGES } from '../../src/words/crew-language.js';
import { demoPlans } from './fixtures/demo-plans.js';
import { housePlan } from './fixtures/plans.js';

const plans = demoPlans();

describe('the isolation log', () => {
  it('has a row for each device that is opened, and one a place for what nothing is opened for', () => {
    for (const plan of plans) {
      const { parts } = isolationView(plan, 'en');
      plan.isolation.parts.forEach(({ steps }, index) => {
        const rows = parts[index]?.steps.map(({ where }) => where) ?? [];
        for (const { does, tags } of steps.flatMap(({ acts }) => acts)) {
          if (does.code === 'isolate/wait' || does.code === 'isolate/keep-diversion') continue;
          for (const tag of tags)
            expect(
              rows.some((where) => where === tag || where.startsWith(`${tag} ·`)),
              `${plan.job} ${tag}`,
            ).toBe(true);
        }
      });
    }
    const several = plans
      .flatMap(({ isolation }) => isolation.parts)
      .flatMap(({ steps }) => steps.flatMap(({ acts }) => acts))
      .filter(({ does, tags }) => does.code === 'isolate/open-array' && tags.length > 1);
    expect(several.length).toBeGreaterThan(0);
  });

  it('spans each step and each deed over its own rows', () => {
    for (const plan of plans)
      for (const { steps, back } of isolationView(plan, 'en').parts)
        for (const rows of [steps, back]) {
          expect(rows.reduce((sum, row) => sum + row.steps, 0)).toBe(rows.length);
          expect(rows.reduce((sum, row) => sum + row.places, 0)).toBe(rows.length);
        }
  });

  it.each(CREW_LANGUAGES)('has lines to fill in where no order is known, and says so, in %s', (language) => {
    const plan = housePlan();
    expect(plan.isolation.parts).toEqual([]);
    const [only, ...others] = isolationView(plan, language).parts;
    expect(others).toEqual([]);
    expect(only?.unknown).not.toBe('');
    expect(only?.unknownWhat).not.toBe('');
    expect(only?.steps.map(({ number }) => number)).toEqual(
      Array.from({ length: only?.steps.length ?? 0 }, (_, index) => String(index + 1)),
    );
    expect(only?.steps.length).toBeGreaterThanOrEqual(8);
  });
});
