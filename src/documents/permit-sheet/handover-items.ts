import { systemText } from '../../words/protectors.js';
import { reasonKey } from '../../model/reason.js';
import { say } from '../../words/reasons/say.js';
import { settledBy } from '../../words/settled.js';
import { z } from 'zod';
import type { Plan, PlannedEquipment, PlannedProtector } from '../../model/plan.js';
import { notKnown } from '../parts/figures.js';
import { groundingOf, groundingText } from '../parts/schedule.js';

export const ItemSchema = z.object({ what: z.string(), value: z.string(), toFillIn: z.boolean() });
type Item = z.infer<typeof ItemSchema>;

/** The equipments that feed a port's equipment, nearest first, the equipment itself included. */
function upstream(plan: Plan, tag: string): PlannedEquipment[] {
  const seen = new Set([tag]);
  const queue = [tag];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    for (const run of plan.site.runs) {
      if (run.to.equipment !== next || seen.has(run.from.equipment)) continue;
      seen.add(run.from.equipment);
      queue.push(run.from.equipment);
    }
  }
  return [...seen].flatMap((t) => plan.site.equipments.filter((e) => e.tag === t));
}

function groundingField({ required }: PlannedProtector): 'dc_grounding' | 'system_grounding' {
  return required.current === 'dc' ? 'dc_grounding' : 'system_grounding';
}

function isStated(plan: Plan, protector: PlannedProtector): boolean {
  const field = groundingField(protector);
  return protector.ports.some((port) =>
    upstream(plan, port.equipment).some((e) =>
      e.facts.some((f) => f.field === field && f.origin.from !== 'default'),
    ),
  );
}

/** How the company settled a grounding that the list doesn't state; undefined: it didn't. */
function settledText(plan: Plan, protector: PlannedProtector): string | undefined {
  const tags = new Set(protector.ports.flatMap((port) => upstream(plan, port.equipment).map((e) => e.tag)));
  const found = plan.settled.find(
    ({ field, rows }) => field === groundingField(protector) && rows.some((tag) => tags.has(tag)),
  );
  return found && settledBy(found);
}

/** The grounding of each system as stated or assumed, with the protectors that stand on it. */
export function groundingItems(plan: Plan): Item[] {
  const groups = new Map<string, { value: string; tags: string[] }>();
  for (const p of plan.protectors) {
    const grounding = groundingText(p);
    const earthing = plan.basis === 'iec' && p.required.current === 'ac' ? ` (${plan.earthing})` : '';
    const isKnown = p.grounding !== null && p.grounding !== 'not-known';
    const assumed = settledText(plan, p) ?? 'assumed, to be confirmed';
    const how = !isKnown ? null : isStated(plan, p) ? 'as stated on the list' : assumed;
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
