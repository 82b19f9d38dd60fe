import { z } from 'zod';
import type { Calculation, Plan } from '../../model/plan.js';
import { notKnown, quantity } from '../figures.js';

export const CalculationViewSchema = z.object({
  title: z.string(),
  rule: z.string(),
  /** The last step in one line. */
  short: z.object({ how: z.string(), result: z.string(), source: z.string() }),
  steps: z.array(
    z.object({
      symbol: z.string(),
      says: z.string(),
      /** `formula = figures`, `` for a figure that is taken. */
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

export const CalculationGroupSchema = z.object({
  /** `P-1, P-2`: protectors whose calculations are the same, or `Site`. */
  tags: z.string(),
  calculations: z.array(CalculationViewSchema),
  rejected: z.array(z.object({ part: z.string(), rule: z.string(), because: z.string() })),
});
export type CalculationGroup = z.infer<typeof CalculationGroupSchema>;

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

/** A calculation as its table prints it. */
export function calculationView(calculation: Calculation): CalculationView {
  const result = calculation.steps.at(-1);
  return {
    title: calculation.title,
    rule: calculation.rule,
    short: {
      how: [result?.formula ?? '', result?.substituted ?? ''].filter((t) => t !== '').join(' = ') || 'taken',
      result: result === undefined ? notKnown('see the open items') : quantity(result.value, result.unit),
      source: result === undefined ? '' : `${SURE_TEXT[result.sure] ?? result.sure}: ${result.source}`,
    },
    steps: calculation.steps.map((step, index) => ({
      symbol: step.symbol,
      says: step.says,
      formula: step.formula,
      substituted: step.substituted,
      result: quantity(step.value, step.unit),
      sure: SURE_TEXT[step.sure] ?? step.sure,
      source: step.source,
      last: index === calculation.steps.length - 1,
    })),
  };
}

/** The calculations of the protectors; equal ones stand once, with the tags of all that share them. */
export function calculationGroups(plan: Plan): CalculationGroup[] {
  const groups = new Map<string, CalculationGroup & { all: string[] }>();
  for (const protector of plan.protectors) {
    const key = JSON.stringify([protector.calculations, protector.rejected]);
    const group = groups.get(key);
    if (group !== undefined) {
      group.all.push(protector.tag);
      continue;
    }
    groups.set(key, {
      tags: '',
      all: [protector.tag],
      calculations: protector.calculations.map(calculationView),
      rejected: protector.rejected.map((r) => ({ ...r })),
    });
  }
  return [...groups.values()].map(({ all, calculations, rejected }) => ({
    tags: all.join(', '),
    calculations,
    rejected,
  }));
}
