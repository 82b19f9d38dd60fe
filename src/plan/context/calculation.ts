import type { Reason } from '../../model/reason.js';
import { workingFigure } from '../../model/rounding.js';
import type { Step, Working } from '../../model/step.js';

/** One calculation as the plan holds it. */
export interface Calculated {
  readonly rule: string;
  readonly title: Reason;
  readonly steps: readonly Step[];
}

/** A calculation of a working, its results rounded as the plan holds them. */
export function calculation(rule: string, title: Reason, working: Working): Calculated {
  return { rule, title, steps: working.steps.map(roundedStep) };
}

function roundedStep(step: Step): Step {
  const value = workingFigure(step.value);
  if (value === step.value) return step;
  const { symbol, code, values, unit, sure, uses, source } = step;
  return { symbol, code, values, value, unit, sure, uses, source } as Step;
}
