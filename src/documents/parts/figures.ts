import { figure } from '../../words/figures.js';

/** What an unknown figure prints as: never blank, always with its reason. */
export function notKnown(reason: string): string {
  return `not known: ${reason}`;
}

/** A figure with at most `decimals` decimals and no trailing zeros. */
export function plainNumber(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}

/** Volts, `178.2 V`; null prints the reason. */
export function volts(value: number | null, reason: string): string {
  return value === null ? notKnown(reason) : figure(value, 'V');
}

/** Amperes, `10 kA` from 1000 A up, else `25 A`; null prints the reason. */
export function amperes(value: number | null, reason: string): string {
  if (value === null) return notKnown(reason);
  return value >= 1000 ? figure(value / 1000, 'kA') : figure(value, 'A');
}

/** A step's result with its unit. */
export function quantity(value: number, unit: string): string {
  return unit === '' ? plainNumber(value, 4) : `${plainNumber(value, 4)} ${unit}`;
}
