import { figure } from '../../../words/figures.js';

/** Takes the dust of binary arithmetic off before a figure is rounded up. */
const DUST = 1e-6;

/** V that a place asks for, rounded up to the next volt: never less than what is asked. */
export function neededVolts(value: number): string {
  return String(Math.ceil(value - DUST));
}

/** V of a level or a lead, to 10 V. */
export function levelVolts(value: number): string {
  return String(Math.round(value / 10) * 10);
}

/** Three digits. */
export function threeDigits(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A current with its unit, three digits: `12.8 A`, `10 kA`. */
export function current(amperes: number): string {
  return amperes >= 1000 ? figure(Number(threeDigits(amperes / 1000)), 'kA') : `${threeDigits(amperes)} A`;
}

/** A current in kA, three digits. */
export function kiloamperes(amperes: number): string {
  return threeDigits(amperes / 1000);
}
