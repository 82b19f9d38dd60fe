import type { Quantity } from '../model/quantity.js';
import { hundredths } from '../model/rounding.js';

/**
 * A figure with its unit as documents and messages print it: at most two decimals, no trailing zeros.
 * @param value in the unit
 */
export function figure(value: number, unit: string): string {
  return `${plain(value)}${unit === '' ? '' : ` ${unit}`}`;
}

/** A quantity as documents and messages print it. */
export function quantity({ value, unit }: Quantity): string {
  return figure(value, unit);
}

/** A number with at most two decimals and no trailing zeros. */
export function plain(value: number): string {
  return String(hundredths(value));
}

/** `a`, `a and b`, `a, b and c`. */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1] ?? ''}`;
}

/** Words that a message names one by one; all of them stand in the plan. */
const NAMED = 12;

/** The words that a message names, and how many more there are: `14 more`, or ``. */
export function firstNamed(words: readonly string[]): {
  readonly named: readonly string[];
  readonly more: string;
} {
  const more = words.length - NAMED;
  return { named: words.slice(0, NAMED), more: more > 0 ? `${String(more)} more` : '' };
}

/** A quantity as documents and messages print it: its figure and its unit. */
export function measure({ value, unit }: Quantity): string {
  return figure(value, unit);
}

/** Slack of a division in binary arithmetic: 600.0000000001 V is 600 V. */
const DUST = 1e-9;

/**
 * A figure rounded up to a step, as paper prints what is needed. Where that would lie above a limit that the figure itself
 * keeps, it would read as a fault that isn't there: then the figure stays as it is.
 */
function roundedUp(value: number, step: number, limit: number | null | undefined): number {
  // A step below 1 is a power of ten; its inverse is exact where the step isn't.
  const inverse = Math.round(1 / step);
  const up = step < 1 ? Math.ceil(value * inverse - DUST) / inverse : Math.ceil(value / step - DUST) * step;
  const misleads = limit !== null && limit !== undefined && value <= limit && up > limit;
  return misleads ? value : up || 0;
}

/** A step of three significant digits: 100 for 12 750, 0.1 for 12.75. */
const stepOfThree = (value: number): number =>
  value === 0 ? 1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2);

/**
 * A needed voltage as paper prints it: rounded up to the next volt. 150.2 V needed of a part that is given 150.5 V stay 150.2 V,
 * since 151 would stand above 150.5 as if the part fell short.
 * @param needed V
 * @param given V, what stands beside it: printed bare, never rounded
 */
export function neededVolts(needed: number, given?: number | null): number {
  return roundedUp(needed, 1, given);
}

/**
 * A lead voltage or a voltage level as paper prints it: rounded up to 10 V, by the rule of {@link neededVolts}.
 * @param level V
 * @param withstand V, what stands beside it: printed bare
 */
export function levelVolts(level: number, withstand?: number | null): number {
  return roundedUp(level, 10, withstand);
}

/**
 * A needed current, or one that is there against what is rated, as paper prints it: rounded up to three digits, by the rule of
 * {@link neededVolts}.
 * @param needed A or kA
 * @param given in the same unit, what stands beside it: printed bare
 */
export function neededCurrent(needed: number, given?: number | null): number {
  return roundedUp(needed, stepOfThree(needed), given);
}

/** A current that is compared with nothing as paper prints it: three digits, A up to 999 and kA from there on. */
export function current(amperes: number): string {
  const rounded = Number(amperes.toPrecision(3));
  return Math.abs(rounded) < 1000
    ? figure(rounded, 'A')
    : figure(Number((rounded / 1000).toPrecision(3)), 'kA');
}
