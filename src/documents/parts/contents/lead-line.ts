import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { lengthUnitOf, longestLead, paperLead, type LengthUnit } from '../../../words/lengths.js';

const INCH = 0.0254;

/** A lead of a calculation, to a tenth of an inch: the whole inches of the schedule are rounded down. */
const worked = (metres: number, unit: LengthUnit): string =>
  unit === 'ft' ? figure(Math.round((metres / INCH) * 10) / 10, 'in') : paperLead(metres, unit);

/**
 * The lead length that a lead voltage was worked out with, and how the schedule has it: `lead 19.7 in, in the schedule rounded down to 19 in`,
 * or less where the planned length is too long for the withstand.
 */
export function leadAsPlanned({ wiring }: PlannedProtector, plan: Plan): string {
  const unit = lengthUnitOf(plan);
  const lead = worked(wiring.leadLengthPlanned, unit);
  const longest = longestLead(wiring, unit);
  if (longest !== paperLead(wiring.leadLengthPlanned, unit, 'down'))
    return `lead ${lead} as planned; ${longest} in the schedule, so that the level keeps the withstand`;
  return lead === longest ? `lead ${lead}` : `lead ${lead}, in the schedule rounded down to ${longest}`;
}
