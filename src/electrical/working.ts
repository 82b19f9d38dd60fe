import type { Sureness } from '../model/fact.js';
import { reason, type Reason } from '../model/reason.js';
import type { Step, StepSource, StepSubject, Working } from '../model/step.js';

/** Source of a figure whose text wasn't at hand when it was written down. */
export const FROM_MEMORY: Reason = reason('source/from-memory');
/** Source of a figure that the trade uses and nobody published. */
export const COMMON_PRACTICE: Reason = reason('source/common-practice');
/** Source of a figure that the caller states; `statedAt` puts the place in its stead. */
const AS_STATED: Reason = reason('source/as-stated');

const NO_SYMBOLS: readonly string[] = [];

/**
 * A figure that is taken as it is, not computed: it rests on no other.
 * @param subject what it is
 */
export function taken(
  symbol: string,
  subject: StepSubject,
  value: number,
  unit: string,
  sure: Sureness = 'stated',
  source: StepSource = AS_STATED,
): Step {
  const { code, values } = subject;
  return { symbol, code, values, value, unit, sure, uses: NO_SYMBOLS, source } as Step;
}

/** The result of a step that is computed. */
interface Result {
  readonly value: number;
  readonly unit: string;
  readonly sure: Sureness;
  /** Symbols of the steps that its formula rests on. */
  readonly uses: readonly string[];
  readonly source: StepSource;
}

/**
 * A figure that is computed from others.
 * @param subject what it is, with the figures that stand in its formula
 */
export function computed(
  symbol: string,
  { code, values }: StepSubject,
  { value, unit, sure, uses, source }: Result,
): Step {
  return { symbol, code, values, value, unit, sure, uses, source } as Step;
}

/** A figure with its working. */
export interface Computed {
  readonly value: number;
  readonly working: Working;
}

/** The working of a figure: the steps before it, then the figure itself as last step. */
export function workingOf(before: readonly Step[], result: Step): Working {
  return { value: result.value, unit: result.unit, steps: [...before, result] };
}

/**
 * Puts the place where a figure is stated to the steps that take it.
 * @param working a working
 * @param places where the figure of a symbol stands, such as `{ Voc: fact.origin }`
 * @returns the working with the source of each stated step replaced; other steps and symbols stay as they are
 */
export function statedAt(
  working: Working,
  places: Readonly<Record<string, StepSource | undefined>>,
): Working {
  const steps = working.steps.map((step) => {
    const place = step.sure === 'stated' ? places[step.symbol] : undefined;
    if (!place) return step;
    const { symbol, code, values, value, unit, sure, uses } = step;
    return { symbol, code, values, value, unit, sure, uses, source: place } as Step;
  });
  return { value: working.value, unit: working.unit, steps };
}

/** How sure a figure is, and where it comes from. */
export interface From {
  readonly sure: Sureness;
  readonly source: StepSource;
}

/**
 * Says where figures come from that were taken as they are: a place, a default, or another calculation.
 * @param working a working
 * @param from by symbol
 * @returns the working with how sure and from where of these steps; other steps stay as they are
 */
export function takenFrom(working: Working, from: Readonly<Record<string, From | undefined>>): Working {
  const steps = working.steps.map((step): Step => {
    const its = step.uses.length === 0 ? from[step.symbol] : undefined;
    return its ? { ...step, ...its } : step;
  });
  return { ...working, steps };
}
