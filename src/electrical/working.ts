import type { Step, Sureness, Working } from '../model/fact.js';

/** Source of a figure whose text wasn't at hand when it was written down. */
export const FROM_MEMORY = 'value from memory';
/** Source of a figure that the trade uses and nobody published. */
export const COMMON_PRACTICE = 'common practice, no source';
/** Source of a figure that the caller states; `statedAt` puts the place in its stead. */
export const AS_STATED = 'as stated';

/**
 * Writes a figure for the working of a calculation: 0.01 from 10 upwards, else four significant digits, no trailing zeros.
 * @param value any finite number
 * @returns its text, with a point, without thousands separators
 */
export function shown(value: number): string {
  // Without toPrecision where it can be: a batch writes millions of figures.
  if (Number.isInteger(value)) return String(value);
  const size = Math.abs(value);
  if (size >= 10) return String(Math.round(value * 100) / 100);
  if (size >= 1) return String(Math.round(value * 1000) / 1000);
  return String(Number(value.toPrecision(4)));
}

/**
 * Takes the dust of binary arithmetic off a figure that is compared with a rating: 1.1 x 400 V must not exceed 440 V.
 * @param value a figure below 1e6 in its unit
 * @returns the value, rounded to 1e-9
 */
export function withoutDust(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

/**
 * A figure that is taken as it is, not computed.
 * @returns the step; formula and substituted are ``
 */
export function taken(
  symbol: string,
  says: string,
  value: number,
  unit: string,
  sure: Sureness = 'stated',
  source: string = AS_STATED,
): Step {
  return { symbol, says, formula: '', substituted: '', value, unit, sure, source };
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
 * @param places source text by symbol, such as `{ Voc: 'jobs.csv, line 12, Voc' }`
 * @returns the working with the source of each stated step replaced; other steps and symbols stay as they are
 */
export function statedAt(working: Working, places: Readonly<Record<string, string>>): Working {
  return {
    ...working,
    steps: working.steps.map((step) =>
      step.sure === 'stated' ? { ...step, source: places[step.symbol] ?? step.source } : step,
    ),
  };
}
