import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { isolationView } from '../../src/documents/closeout-pack/isolation-view.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import type { NestedReason } from '../../src/model/nested-reason.js';
import { defaultSettings } from '../../src/model/settings.js';
import type { Plan } from '../../src/model/plan.js';
import { CREW_LANGUAGES } from '../../src/words/crew-language.js';
import { crewSay } from '../../src/words/crew-notes.js';
import { CREW_SAYINGS_EN } from '../../src/words/languages/crew-sayings-en.js';
import { CREW_SAYINGS_ES } from '../../src/words/languages/crew-sayings-es.js';
import { dataOfCsv } from '../plan/plan-of.js';
import { csvOfSite, sites } from '../plan/sites.js';
import { demoPlans } from './fixtures/demo-plans.js';

// A code that no crew's language tells falls back to the English of all papers: on a Spanish note that is a sentence nobody there reads.

const fallen = new Set<string>();

// A code that a language lacks is looked for in what its table inherits from.
const inherited = new Proxy(
  {},
  {
    get: (_, code): undefined => {
      fallen.add(String(code));
    },
  },
);

beforeAll(() => {
  for (const sayings of [CREW_SAYINGS_EN, CREW_SAYINGS_ES]) Object.setPrototypeOf(sayings, inherited);
});

afterAll(() => {
  for (const sayings of [CREW_SAYINGS_EN, CREW_SAYINGS_ES]) Object.setPrototypeOf(sayings, Object.prototype);
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
