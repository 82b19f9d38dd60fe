import { isNec, type Basis } from '../model/editions.js';
import type { PlannedProtector } from '../model/plan.js';
import { figure, plain } from './figures.js';

const FOOT = 0.3048;
const INCH = 0.0254;

/** Feet to a tenth, metres to a hundredth: two lengths that a rule tells apart print apart. */
const feet = (metres: number): string => `${plain(Math.round((metres / FOOT) * 10) / 10)} ft`;

/** The length of a run: `120 ft (36.58 m)` with a NEC basis, `36.58 m` else. */
export function runLength(metres: number, basis: Basis): string {
  return isNec(basis) ? `${feet(metres)} (${figure(metres, 'm')})` : figure(metres, 'm');
}

/** The length of a run in its first unit alone, for a drawing: `120 ft` with a NEC basis, `36.58 m` else. */
export function drawnLength(metres: number, basis: Basis): string {
  return isNec(basis) ? feet(metres) : figure(metres, 'm');
}

/** The length of a lead: `20 in (0.51 m)` with a NEC basis, `0.51 m` else. */
export function leadLength(metres: number, basis: Basis): string {
  const inches = `${plain(Math.round((metres / INCH) * 10) / 10)} in`;
  return isNec(basis) ? `${inches} (${figure(metres, 'm')})` : figure(metres, 'm');
}

/** How long line lead and ground lead may be together: `at most 20 in (0.51 m)`, with why where the withstand limits them. */
export function leadLimitText(
  { leadLengthLimit: limit, leadLimitByWithstand }: PlannedProtector['wiring'],
  basis: Basis,
): string {
  if (!leadLimitByWithstand) return `at most ${leadLength(limit, basis)}`;
  return limit > 0
    ? `at most ${leadLength(limit, basis)}: beyond it the level is above the withstand of the equipment`
    : 'as short as can be: the level is above the withstand of the equipment at any length';
}
