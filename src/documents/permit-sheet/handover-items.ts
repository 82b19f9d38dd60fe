import { systemText } from '../../words/protectors.js';
import { reasonKey } from '../../model/reason.js';
import { say } from '../../words/reasons/say.js';
import { settledBy } from '../../words/settled.js';
import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { notKnown } from '../parts/figures.js';
import { groundingHow } from '../parts/grounding-how.js';
import { groundingOf, groundingText } from '../parts/schedule.js';

export const ItemSchema = z.object({ what: z.string(), value: z.string(), toFillIn: z.boolean() });
type Item = z.infer<typeof ItemSchema>;

/** The grounding of each system as stated or assumed, with the protectors that stand on it. */
export function groundingItems(plan: Plan): Item[] {
  const groups = new Map<string, { value: string; tags: string[] }>();
  const howOf = groundingHow(plan);
  for (const p of plan.protectors) {
    const grounding = groundingText(p);
    const earthing = plan.basis === 'iec' && p.required.current === 'ac' ? ` (${plan.earthing})` : '';
    const how = howOf(p);
    const key = JSON.stringify([p.system, earthing, groundingOf(p), how]);
    const value = `${systemText(p.system)}${earthing}: ${grounding}${how === null ? '' : `, ${how}`}`;
    const group = groups.get(key) ?? { value, tags: [] };
    group.tags.push(p.tag);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ value, tags }) => ({ what: tags.join(', '), value, toFillIn: false }));
}

/** What IEC 62446-1 cl. 4.3.5 (value from memory) asks a handover to name besides the schedule. */
export function handoverItems(plan: Plan): Item[] {
  const lightning = plan.facts.find((f) => f.field === 'lightning_protection');
  const settled = plan.settled.find(({ field }) => field === 'lightning_protection');
  const ground = new Map<string, { readonly value: string; readonly tags: string[] }>();
  for (const { tag, wiring } of plan.protectors) {
    const value = `${say(wiring.groundTo)}; lead ${wiring.leadGauge || 'by the part'}`;
    const key = JSON.stringify([reasonKey(wiring.groundTo), wiring.leadGauge]);
    const group = ground.get(key) ?? { value, tags: [] };
    group.tags.push(tag);
    ground.set(key, group);
  }
  return [
    {
      what: 'Protectors on the AC and the DC side: place, type and rating',
      value: plan.protectors.length === 0 ? 'none' : 'the protection schedule of this sheet',
      toFillIn: false,
    },
    {
      what: 'Ground leads of the protectors: where to, and size',
      value:
        ground.size === 0
          ? 'none'
          : [...ground.values()].map(({ value, tags }) => `${tags.join(', ')}: ${value}`).join('. '),
      toFillIn: false,
    },
    {
      what: 'Equipment grounding and bonding conductors of the site: size and type',
      value: notKnown('the equipment list has no such fact; written in on site:'),
      toFillIn: true,
    },
    {
      what: 'Connection to a lightning protection system',
      value:
        lightning === undefined
          ? notKnown('the list does not state it; taken as none, to be confirmed')
          : `${lightning.text}${settled ? `, ${settledBy(settled)}` : ''}`,
      toFillIn: false,
    },
  ];
}
