import type { Step, Working } from '../../model/fact.js';
import type { Said } from '../../model/reason.js';
import { kept } from '../../words/figures.js';

/** One calculation as the plan keeps it. */
export interface Calculated {
  readonly rule: string;
  readonly title: Said;
  readonly steps: readonly Step[];
}

/** A calculation of a working, its figures rounded as the plan keeps them. */
export function calculation(rule: string, title: Said, working: Working): Calculated {
  return { rule, title, steps: working.steps.map(roundedStep) };
}

function roundedStep(step: Step): Step {
  const value = kept(step.value);
  return value === step.value ? step : { ...step, value };
}
