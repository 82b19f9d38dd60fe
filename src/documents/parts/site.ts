import { say } from '../../words/reasons/say.js';
import { z } from 'zod';
import type { Plan } from '../../model/plan.js';
import { runLength } from '../../words/lengths.js';
import { cited, placeText } from '../../words/origin.js';
import { notKnown, quantity } from './figures.js';

type StatedFact = Plan['facts'][number];

export const FactViewSchema = z.object({ field: z.string(), value: z.string(), origin: z.string() });

export const EquipmentViewSchema = z.object({
  tag: z.string(),
  kind: z.string(),
  make: z.string(),
  place: z.string(),
  /** Facts that come from one line or one source stand together. */
  facts: z.array(z.object({ from: z.string(), values: z.string() })),
  where: z.string(),
});

export const RunViewSchema = z.object({
  from: z.string(),
  to: z.string(),
  length: z.string(),
  remarks: z.string(),
});

export const NotPlacedViewSchema = z.object({
  equipment: z.string(),
  port: z.string(),
  rule: z.string(),
  because: z.string(),
  /** True where a fact that decides isn't known. */
  open: z.boolean(),
});

export const SiteViewSchema = z.object({
  facts: z.array(FactViewSchema),
  equipments: z.array(EquipmentViewSchema),
  runs: z.array(RunViewSchema),
});
export type SiteView = z.infer<typeof SiteViewSchema>;

/**
 * A fact as it was typed, with the unit that it was read in: `-28 °C`; `10, read as -12.2 °C` where its heading or the
 * settings had another unit.
 */
export function statedText({ text, value, unit }: StatedFact): string {
  const read = typeof value === 'number' ? quantity(value, unit) : String(value);
  if (text.trim() === '') return read;
  if (unit === '' || typeof value !== 'number') return text;
  const bare = (given: string): string => given.replace(/[\s°]/g, '');
  return Number(text) === value || bare(text) === bare(read) ? read : `${text}, read as ${read}`;
}

function factView(fact: StatedFact): z.infer<typeof FactViewSchema> {
  return { field: fact.field, value: statedText(fact), origin: cited(fact.origin) };
}

/** `off-grid.csv, line 6`: the source of a fact without its column, which bears the name of the field. */
function lineText(origin: StatedFact['origin']): string {
  return 'column' in origin ? cited({ ...origin, column: '' }) : cited(origin);
}

/** What tells one source from another: the line, or what else it is. */
function lineKey(origin: StatedFact['origin']): string {
  const parts = 'column' in origin ? [origin.from, origin.file, origin.line] : Object.entries(origin);
  return JSON.stringify(parts);
}

/** Facts as they were typed, those of one line or one source together. */
export function factsByOrigin(facts: readonly StatedFact[]): { from: string; values: string }[] {
  const groups = new Map<string, { readonly from: string; readonly values: string[] }>();
  for (const fact of facts) {
    const view = factView(fact);
    const key = lineKey(fact.origin);
    const group = groups.get(key) ?? { from: lineText(fact.origin), values: [] };
    group.values.push(`${view.field} ${view.value}`);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ from, values }) => ({ from, values: values.join('; ') }));
}

/** The site as it was read: job facts, equipments with their stated facts, runs. */
export function siteView(plan: Plan): SiteView {
  return {
    facts: plan.facts.map(factView),
    equipments: plan.site.equipments.map((e) => ({
      tag: e.tag,
      kind: e.kind,
      make: [e.maker, e.model].filter((t) => t !== '').join(' '),
      place: e.place === '' ? notKnown('not stated') : e.outdoors ? `${e.place}, outdoors` : e.place,
      facts: factsByOrigin(e.facts),
      where: placeText({ file: e.file, line: e.line, column: '' }),
    })),
    runs: plan.site.runs.map((r) => ({
      from: `${r.from.equipment} ${r.from.port}`,
      to: `${r.to.equipment} ${r.to.port}`,
      length: r.length === null ? notKnown('the list states no length') : runLength(r.length, plan.basis),
      remarks: [
        ...(r.outdoors ? ['outdoors'] : []),
        ...(r.betweenBuildings ? ['between buildings'] : []),
        ...(r.long ? ['long run'] : []),
        ...(r.through.length === 0 ? [] : [`through ${r.through.join(', ')}`]),
      ].join(', '),
    })),
  };
}

/** Every port without a protector, with the reason. */
export function notPlacedViews(plan: Plan): z.infer<typeof NotPlacedViewSchema>[] {
  return plan.notPlaced.map((n) => ({ ...n, because: say(n.because) }));
}
