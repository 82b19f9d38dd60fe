import type { Quantity } from '../model/quantity.js';

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
  const rounded = Math.round(value * 100) / 100;
  return Number.isInteger(rounded) ? String(rounded) : String(Number(rounded.toFixed(2)));
}

/** A length in metres, with feet beside it. */
export function length(metres: number): string {
  return `${plain(metres)} m (${plain(Math.round((metres / 0.3048) * 10) / 10)} ft)`;
}

/** `a`, `a and b`, `a, b and c`. */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1] ?? ''}`;
}

/**
 * A figure of a working as it is kept: rounded to 0.01; what is smaller than 10 keeps four significant digits, so that a
 * coefficient or a leakage current doesn't vanish.
 * @param value in any unit
 */
export function kept(value: number): number {
  return Math.abs(value) < 10 ? Number(value.toPrecision(4)) : Math.round(value * 100) / 100;
}
