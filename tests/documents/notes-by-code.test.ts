import fc from 'fast-check';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { isolationView } from '../../src/documents/closeout-pack/isolation-view.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import type { NestedReason } from '../../src/model/nested-reason.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { Plan } from '../../src/model/plan.js';
import { CREW_LANGUAGES } from '../../src/words/crew-language.js';
import { crewSay } from '../../src/words/crew-notes.js';
import type * as Say from '../../src/words/reasons/say.js';
import { dataOfCsv } from '../plan/plan-of.js';
import { csvOfSite, sites } from '../plan/sites.js';
import { demoPlans } from './fixtures/demo-plans.js';

// A code that no crew's language tells falls back to the English of all papers: on a Spanish note that is a sentence nobody there reads.

const fallen = vi.hoisted(() => new Set<string>());

vi.mock('../../src/words/reasons/say.js', async (original) => {
  const actual = await original<typeof Say>();
  const say: typeof Say.say = (of, language) => {
    fallen.add(of.code);
    return actual.say(of, language);
  };
  return { ...actual, say };
});

beforeEach(() => {
  fallen.clear();
});

describe.each(CREW_LANGUAGES)('wiring notes and isolation pages in %s', (language) => {
  const codesLeft = (plans: readonly Plan[]): readonly string[] => {
    fallen.clear();
    for (const plan of plans) {
      wiringNotes(plan, defaultSettings(), language);
      isolationView(plan, language);
    }
    return [...fallen].sort();
  };

  it('fall back for a code that is not known', () => {
    const later = { code: 'position/of-a-later-plan', values: {} } as unknown as NestedReason;
    expect(crewSay(later, language)).toBe('position/of-a-later-plan');
    expect([...fallen]).toEqual(['position/of-a-later-plan']);
  });

  it('tell every code of the demo’s jobs', () => {
    expect(codesLeft(demoPlans())).toEqual([]);
  });

  it('tell every code of 60 generated sites', () => {
    const made = fc.sample(sites(), { seed: 20_260_101, numRuns: 60 });
    const plans = made.map((site) => dataOfCsv(csvOfSite(site), { unchecked: true }));
    expect(plans.flatMap(({ protectors }) => protectors).length).toBeGreaterThan(60);
    expect(codesLeft(plans)).toEqual([]);
  });
});
