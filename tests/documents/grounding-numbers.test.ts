import { describe, expect, it } from 'vitest';
import { assumptionRows, groundingNumbers } from '../../src/documents/parts/contents/assumptions.js';
import { wiringNotes } from '../../src/documents/closeout-pack/wiring-note.js';
import { defaultSettings } from '../../src/model/settings.js';
import { demoPlans } from './fixtures/demo-plans.js';

const byJob = new Map(demoPlans().map((plan) => [plan.job, plan]));

function planOf(job: string): ReturnType<typeof demoPlans>[number] {
  const found = byJob.get(job);
  if (!found) throw new Error(`no job ${job}`);
  return found;
}

describe('the grounding of a place', () => {
  it('that was taken for granted has the number of its assumption on the wiring note, a stated one has none', () => {
    const taken = planOf('UF-101');
    const rows = new Map(
      assumptionRows(taken).rows.map(({ number, text }) => [number, text.map((run) => run.text).join('')]),
    );
    for (const note of wiringNotes(taken, defaultSettings(), 'en')) {
      const [, number = ''] = /\((A\d+): verify\)/.exec(note.system) ?? [];
      expect(rows.get(number), note.tags).toMatch(/^(DC negative grounded|AC system solidly grounded) /);
    }
    // Its service is stated to be ungrounded.
    for (const { system } of wiringNotes(planOf('UF-109'), defaultSettings(), 'en'))
      expect(system).toBe('480\u00a0V delta, ungrounded');
  });

  it('is that of the array that feeds it, though the battery’s is stated, and none of a turbine that floats', () => {
    const dc = planOf('UF-116').protectors.filter(({ ports: [first] }) => first?.port === 'dc-in-1');
    expect(dc.length).toBeGreaterThan(0);
    for (const one of dc) expect(groundingNumbers(planOf('UF-116'))(one), one.tag).toHaveLength(1);
    const turbines = planOf('UF-114').protectors.filter(
      ({ grounding, required }) => grounding === 'floating' && required.current === 'ac',
    );
    expect(turbines.length).toBeGreaterThan(0);
    for (const one of turbines) expect(groundingNumbers(planOf('UF-114'))(one), one.tag).toEqual([]);
  });

  it('is told of what the place guards, on AC of nothing else', () => {
    const plan = planOf('UF-105');
    const numbers = groundingNumbers(plan);
    const turbine = plan.protectors.filter(({ grounding }) => grounding === 'floating');
    expect(turbine.length).toBeGreaterThan(0);
    for (const one of turbine) expect(numbers(one)).toEqual([]);
    expect(plan.protectors.filter((one) => numbers(one).length > 0).map(({ tag }) => tag)).toEqual([
      'P-1',
      'P-4',
      'P-5',
    ]);
  });
});

describe('the grounding of a control circuit', () => {
  it('rests on its own assumption at both its ends, and on none of the arrays', () => {
    const plan = planOf('UF-106');
    const numbers = groundingNumbers(plan);
    const ends = plan.protectors.filter(({ ports }) => ports.every(({ port }) => port === 'terminals'));
    expect(ends.length).toBe(2);
    const [first, second] = ends.map(numbers);
    expect(first).toHaveLength(1);
    expect(second).toEqual(first);
    const arrays = plan.protectors
      .filter(({ required }) => required.current === 'dc')
      .filter((one) => !ends.includes(one));
    for (const one of arrays) expect(numbers(one)).not.toEqual(first);
  });
});
