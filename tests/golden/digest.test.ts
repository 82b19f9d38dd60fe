import { written } from '../in-english.js';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/index.js';
import { demoPlan } from '../documents/fixtures/demo-plans.js';
import { digest } from './digest.js';

const plan = (): Plan => demoPlan('UF-103');

/** What differs between the digests of two plans. */
function differing(a: Plan, b: Plan): string[] {
  const [one, other] = [digest(a), digest(b)];
  const flat = (d: typeof one): [string, unknown][] => [
    ...Object.entries(d).filter(([key]) => key !== 'parts'),
    ...Object.entries(d.parts).map(([key, part]): [string, unknown] => [`part ${key}`, part]),
  ];
  const others = new Map(flat(other));
  return flat(one).flatMap(([key, value]) =>
    JSON.stringify(value) === JSON.stringify(others.get(key)) ? [] : [key],
  );
}

describe('the digest of a plan', () => {
  it('is the same for the same plan, and names every part', () => {
    expect(differing(plan(), plan())).toEqual([]);
    expect(Object.keys(digest(plan()).parts)).toEqual(Object.keys(plan()));
  });

  it('shows another sentence as another hash of one part', () => {
    const [first, ...rest] = plan().notPlaced;
    if (first === undefined) throw new Error('nothing is bare');
    const reworded = {
      ...plan(),
      notPlaced: [{ ...first, because: written('in other words') }, ...rest],
    };
    expect(differing(plan(), reworded)).toEqual(['part notPlaced']);
  });

  it.each<[string, (p: Plan['protectors'][number]) => Plan['protectors'][number]]>([
    ['part', (p) => ({ ...p, part: 'ANOTHER-1' })],
    ['strength', (p) => ({ ...p, strength: p.strength === 'required' ? 'recommended' : 'required' })],
    ['MCOV', (p) => ({ ...p, figures: p.figures && { ...p.figures, mcov: 7 } })],
    ['required MCOV', (p) => ({ ...p, required: { ...p.required, mcov: 7 } })],
    ['port', (p) => ({ ...p, ports: [{ equipment: 'X', port: 'feeder' }] })],
  ])('shows another %s of a protector in its line', (_, change) => {
    const [first, ...rest] = plan().protectors;
    if (first === undefined) throw new Error('there is no protector');
    const changed = { ...plan(), protectors: [change(first), ...rest] };
    expect(differing(plan(), changed)).toEqual(['protectors', 'part protectors']);
  });

  it('shows open items by severity and code, ports left bare, and whether it can be handed in', () => {
    const { openItems, notPlaced, submittable } = plan();
    const fewer = { ...plan(), openItems: openItems.slice(1) };
    expect(differing(plan(), fewer)).toEqual(['openItems', 'part openItems']);
    const placed = { ...plan(), notPlaced: notPlaced.slice(1) };
    expect(differing(plan(), placed)).toEqual(['notPlaced', 'part notPlaced']);
    const other = { ...plan(), submittable: !submittable };
    expect(differing(plan(), other)).toEqual(['part submittable']);
  });
});
