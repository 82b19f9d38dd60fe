import { isNec } from '../../model/editions.js';
import type { Basis } from '../../model/editions.js';

const FEET_PER_METRE = 1 / 0.3048;
const INCHES_PER_METRE = 1 / 0.0254;

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
  return value === null ? notKnown(reason) : `${plainNumber(value)} V`;
}

/** Amperes, `10 kA` from 1000 A up, else `25 A`; null prints the reason. */
export function amperes(value: number | null, reason: string): string {
  if (value === null) return notKnown(reason);
  return value >= 1000 ? `${plainNumber(value / 1000, 3)} kA` : `${plainNumber(value)} A`;
}

/** The length of a run: `140 ft (42.7 m)` with a NEC basis, `42.7 m` else. */
export function runLength(metres: number, basis: Basis): string {
  const si = `${plainNumber(metres, 1)} m`;
  return isNec(basis) ? `${plainNumber(metres * FEET_PER_METRE, 1)} ft (${si})` : si;
}

/** The length of a lead: `20 in (0.5 m)` with a NEC basis, `0.5 m` else. */
export function shortLength(metres: number, basis: Basis): string {
  const si = `${plainNumber(metres, 2)} m`;
  return isNec(basis) ? `${plainNumber(metres * INCHES_PER_METRE, 1)} in (${si})` : si;
}

/** A step's result with its unit. */
export function quantity(value: number, unit: string): string {
  return unit === '' ? plainNumber(value, 4) : `${plainNumber(value, 4)} ${unit}`;
}
