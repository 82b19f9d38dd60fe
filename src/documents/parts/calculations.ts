import { reasonKey } from '../../model/reason.js';
import { say } from '../../words/reasons/say.js';
import { z } from 'zod';
import type { Calculation, Plan } from '../../model/plan.js';
import { notKnown, quantity } from './figures.js';

export const CalculationViewSchema = z.object({
  /** `P-1, P-2`: the protectors that share it; `` for the site as a whole. */
  tags: z.string(),
  title: z.string(),
  rule: z.string(),
  /** The last step in one line, with the steps that it rests on. */
  short: z.object({ how: z.string(), result: z.string(), source: z.string() }),
  steps: z.array(
    z.object({
      symbol: z.string(),
      says: z.string(),
      /** `` for a figure that is taken. */
      formula: z.string(),
      substituted: z.string(),
      result: z.string(),
      sure: z.string(),
      source: z.string(),
      last: z.boolean(),
    }),
  ),
});
export type CalculationView = z.infer<typeof CalculationViewSchema>;

/** A part of the catalogue that was left out, with each reason and the protectors that it holds for. */
export const LeftOutSchema = z.object({
  part: z.string(),
  reasons: z.array(z.object({ because: z.string(), rule: z.string(), tags: z.string() })),
});
export type LeftOut = z.infer<typeof LeftOutSchema>;

/** How sure a figure is, in words. */
const SURE_TEXT: { readonly [key: string]: string } = {
  published: 'published',
  memory: 'value from memory',
  'common practice': 'common practice',
  assumption: 'assumption',
  derived: 'derived by us',
  stated: 'stated',
  computed: 'computed',
};

/** `sure: source`, once where the source says it already. */
function sourceText(sure: string, source: string): string {
  const word = SURE_TEXT[sure] ?? sure;
  return source.includes(word) ? source : `${word}: ${source}`;
}

type CalculationStep = Calculation['steps'][number];

const working = ({ formula, substituted }: CalculationStep): string =>
  [formula, substituted].filter((t) => t !== '').join(' = ');

/** `Voc × n × F = 41.2 V × 10 × 1.12; F = max(...) = 1.12`: whoever checks it needs what isn't on the list. */
function howText(steps: readonly CalculationStep[], result: CalculationStep): string {
  if (working(result) === '') return 'as stated';
  const symbols = new Set(result.formula.match(/[\p{L}/][\p{L}\d/,']*/gu) ?? []);
  const under = steps.filter((s) => s !== result && symbols.has(s.symbol) && working(s) !== '');
  return [
    working(result),
    ...under.map((s) => `${s.symbol} = ${s.substituted || s.formula} = ${quantity(s.value, s.unit)}`),
  ].join('; ');
}

/** A calculation as its table prints it. */
export function calculationView(calculation: Calculation, tags: readonly string[] = []): CalculationView {
  const result = calculation.steps.at(-1);
  return {
    tags: tags.join(', '),
    title: say(calculation.title),
    rule: calculation.rule,
    short: {
      how: result === undefined ? '' : howText(calculation.steps, result),
      result: result === undefined ? notKnown('see the open items') : quantity(result.value, result.unit),
      source: result === undefined ? '' : sourceText(result.sure, result.source),
    },
    steps: calculation.steps.map((step, index) => ({
      symbol: step.symbol,
      says: step.says,
      formula: step.formula,
      substituted: step.substituted,
      result: quantity(step.value, step.unit),
      sure: SURE_TEXT[step.sure] ?? step.sure,
      source: sourceText(step.sure, step.source),
      last: index === calculation.steps.length - 1,
    })),
  };
}

/** The calculations of all protectors, rule by rule; equal ones stand once, with the tags of all that share them. */
export function calculationViews(plan: Plan): CalculationView[] {
  const found = new Map<string, { calculation: Calculation; tags: string[] }>();
  for (const protector of plan.protectors) {
    for (const calculation of protector.calculations) {
      const key = JSON.stringify(calculation);
      const entry = found.get(key) ?? { calculation, tags: [] };
      if (!entry.tags.includes(protector.tag)) entry.tags.push(protector.tag);
      found.set(key, entry);
    }
  }
  const entries = [...found.values()];
  const order = [...new Set(entries.map((e) => e.calculation.rule))];
  return order.flatMap((rule) =>
    entries.filter((e) => e.calculation.rule === rule).map((e) => calculationView(e.calculation, e.tags)),
  );
}

/** The parts that were left out, one entry a part; equal reasons stand once with the protectors that they hold for. */
export function leftOutParts(plan: Plan): LeftOut[] {
  const parts = new Map<string, Map<string, { because: string; rule: string; tags: string[] }>>();
  for (const protector of plan.protectors) {
    for (const { part, rule, because: why } of protector.rejected) {
      const reasons = parts.get(part) ?? new Map<string, { because: string; rule: string; tags: string[] }>();
      const key = `${rule}\n${reasonKey(why)}`;
      const reason = reasons.get(key) ?? { because: say(why), rule, tags: [] };
      if (!reason.tags.includes(protector.tag)) reason.tags.push(protector.tag);
      parts.set(part, reasons.set(key, reason));
    }
  }
  return [...parts].map(([part, reasons]) => ({
    part,
    reasons: [...reasons.values()].map((r) => ({
      because: r.because,
      rule: r.rule,
      tags: r.tags.join(', '),
    })),
  }));
}
