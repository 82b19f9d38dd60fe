import type { Origin, Sureness } from './fact.js';
import type { None } from './none.js';
import type { Reason } from './reason.js';
import type { Steps } from './steps/steps.js';

/** The permanent codes of all steps of calculations. */
export type StepCode = keyof Steps;

/** What a step is: its code, and the figures and tags that its words are made of. The words stand in words/steps/. */
export type StepSubject = {
  readonly [C in StepCode]: { readonly code: C; readonly values: Steps[C] };
}[StepCode];

/** Where a step's figure comes from: a reason `source/...`, or of a stated figure the place where it stands. */
export type StepSource = Reason | Origin;

interface StepFigure {
  readonly symbol: string;
  readonly value: number;
  /** As printed: `V/°C`. */
  readonly unit: string;
  readonly sure: Sureness;
  /** Symbols of the steps that its formula rests on; none of a figure that is taken, not computed. */
  readonly uses: readonly string[];
  readonly source: StepSource;
}

/** One line of a calculation as data: what it is, what it rests on, and its result. */
export type Step = StepSubject & StepFigure;

/** A computed figure with the steps that led to it, in order; the last step is the figure itself. */
export interface Working {
  readonly value: number;
  readonly unit: string;
  readonly steps: readonly Step[];
}

const NO_VALUES: None = {};

/**
 * What a step is.
 * @param code its permanent code
 * @param values what its words are made of; left out where they need nothing
 */
export function subject<C extends StepCode>(
  code: C,
  ...values: None extends Steps[C] ? [] : [values: Steps[C]]
): StepSubject {
  return { code, values: values[0] ?? NO_VALUES } as StepSubject;
}
