import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type * as PlanJob from '../../src/plan/plan-job.js';
import { defaultSettings } from '../../src/model/settings.js';
import { readListText } from '../../src/read/list/lists.js';
import type * as Rulebook from '../../src/rules/rulebook.js';
import { englishPlan, type EnglishPlan } from '../in-english.js';
import { listOf } from './plan-of.js';
import type * as PlanOf from './plan-of.js';

/** The placement rules that the plan knows in a test; undefined: all of them. */
const known = vi.hoisted(() => {
  // The quick tests of a worker share its modules: one that was loaded before holds the real rulebook, whatever is mocked.
  vi.resetModules();
  return { ids: undefined as readonly string[] | undefined };
});
afterAll(() => {
  vi.doUnmock('../../src/rules/rulebook.js');
  vi.resetModules();
});

vi.mock('../../src/rules/rulebook.js', async (original) => {
  const book = await original<typeof Rulebook>();
  return {
    ...book,
    get PLACEMENT_RULES() {
      const { ids } = known;
      return ids === undefined
        ? book.PLACEMENT_RULES
        : book.PLACEMENT_RULES.filter((r) => ids.includes(r.id));
    },
  };
});

const ROWS = 'S service; ac_in=120/240\nP panel; ac_in=120/240; connects_to=S; run_length=20 m';

/** What the plan finds of the rules it keeps: each rulebook is for modules loaded anew. */
async function planner(): Promise<typeof PlanJob & Pick<typeof PlanOf, 'dataOf'>> {
  vi.resetModules();
  const { dataOf } = await import('./plan-of.js');
  return { ...(await import('../../src/plan/plan-job.js')), dataOf };
}

async function plan(): Promise<EnglishPlan> {
  const { planJob } = await planner();
  const settings = defaultSettings();
  const [job] = readListText('list.csv', listOf('basis=nec-2023', ROWS), {
    settings,
    library: undefined,
  }).jobs;
  if (!job) throw new Error('no job');
  return englishPlan(planJob(job, { catalogue: undefined, settings }));
}

const undecided = ({ openItems }: EnglishPlan): readonly string[] =>
  openItems.filter((i) => i.code === 'place/undecided').map((i) => `${i.severity}: ${i.message}`);

describe('a port of which no rule says anything', () => {
  beforeEach(() => {
    known.ids = ['place/service'];
  });
  afterEach(() => {
    known.ids = undefined;
  });

  it('is a conflict in the plan, one item a port, beside what the rules decide', async () => {
    const made = await plan();
    expect(made.protectors.map((p) => p.protects)).toHaveLength(1);
    expect(made.notPlaced).toEqual([]);
    expect(made.submittable).toBe(false);
    expect(undecided(made)).toEqual([
      'conflict: No rule says anything of the port feeder of P under nec-2023: it has neither a protector nor a reason to have none.',
    ]);
  });

  it('throws in tests', async () => {
    const { dataOf } = await planner();
    expect(() => dataOf('basis=nec-2023', ROWS)).toThrow(
      'P has a port of which no rule says anything: feeder',
    );
  });

  it('isn’t there with all rules', async () => {
    known.ids = undefined;
    const { dataOf } = await planner();
    expect(undecided(await plan())).toEqual([]);
    expect(dataOf('basis=nec-2023', ROWS).protectors).toHaveLength(2);
  });
});
