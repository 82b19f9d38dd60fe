import { isUnsaid } from '../../words/messages/told.js';
import { reasonKey } from '../../model/reason.js';
import { fiveDecimals, workingFigure } from '../../model/rounding.js';
import { say } from '../../words/reasons/say.js';
import { z } from 'zod';
import type { Calculation, Plan } from '../../model/plan.js';
import type { Step } from '../../model/step.js';
import { stepTold, type StepTold } from '../../words/steps/told.js';
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

/** A step with its words. */
interface ToldStep {
  readonly step: Step;
  readonly told: StepTold;
  /** Formula and figures of a computed figure; `` for one that is taken. */
  readonly working: string;
}

function toldStep(step: Step): ToldStep {
  const told = stepTold(step);
  const working = [told.formula, told.substituted].filter((t) => !isUnsaid(t)).join(' = ');
  return { step, told, working };
}

/** `Voc × n × F = 41.2 V × 10 × 1.12; F = max(...) = 1.12`: whoever checks it needs what isn't on the list. */
function howText(steps: readonly ToldStep[], result: ToldStep): string {
  if (result.working === '') return 'as stated';
  const symbols = new Set(result.step.uses);
  const under = steps.filter((s) => s !== result && symbols.has(s.step.symbol) && s.working !== '');
  return [
    result.working,
    ...under.map(
      ({ step, told }) =>
        `${step.symbol} = ${isUnsaid(told.substituted) ? told.formula : told.substituted} = ${quantity(step.value, step.unit)}`,
    ),
  ].join('; ');
}

/** A calculation as its table prints it. */
export function calculationView(calculation: Calculation, tags: readonly string[] = []): CalculationView {
  const steps = calculation.steps.map(toldStep);
  const result = steps.at(-1);
  return {
    tags: tags.join(', '),
    title: say(calculation.title),
    rule: calculation.rule,
    short: {
      how: result === undefined ? '' : howText(steps, result),
      result:
        result === undefined ? notKnown('see the open items') : quantity(result.step.value, result.step.unit),
      source: result === undefined ? '' : result.told.sourced,
    },
    steps: steps.map(({ step, told }, index) => ({
      symbol: step.symbol,
      says: told.says,
      formula: told.formula,
      substituted: told.substituted,
      result: quantity(step.value, step.unit),
      sure: told.sure,
      source: told.sourced,
      last: index === steps.length - 1,
    })),
  };
}

/** Equal calculations have one key: figures that differ in no digit that is printed are one. */
function keyOf({ rule, title, steps }: Calculation): string {
  const printed = steps.map((one) => [
    one.symbol,
    one.code,
    one.values,
    one.value,
    one.unit,
    one.sure,
    one.source,
  ]);
  const data = [rule, title, printed];
  return JSON.stringify(data, (key, value: unknown) => {
    if (typeof value !== 'number') return value;
    return key === 'fine' ? fiveDecimals(value) : workingFigure(value);
  });
}

/** The calculations of all protectors, rule by rule; equal ones stand once, with the tags of all that share them. */
export function calculationViews(plan: Plan): CalculationView[] {
  const found = new Map<string, { calculation: Calculation; tags: string[] }>();
  for (const protector of plan.protectors) {
    for (const calculation of protector.calculations) {
      const key = keyOf(calculation);
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
