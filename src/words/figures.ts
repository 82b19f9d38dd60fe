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

/** A quantity as documents and messages print it: its figure and its unit. */
export function measure({ value, unit }: Quantity): string {
  return figure(value, unit);
}
