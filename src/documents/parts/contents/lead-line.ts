import type { Plan, PlannedProtector } from '../../../model/plan.js';
import { figure } from '../../../words/figures.js';
import { lengthUnitOf, longestLead, paperLead, type LengthUnit } from '../../../words/lengths.js';

const INCH = 0.0254;

/** A lead of a calculation, to a tenth of an inch: the whole inches of the schedule are rounded down. */
const worked = (metres: number, unit: LengthUnit): string =>
  unit === 'ft' ? figure(Math.round((metres / INCH) * 10) / 10, 'in') : paperLead(metres, unit);

/**
 * The lead length that a lead voltage was worked out with, and how it stands to the longest of the schedule:
 * `lead 9.8 in as planned; longest 17 in: level still ≤ 500 V`.
 */
export function leadAsPlanned({ wiring, figures }: PlannedProtector, plan: Plan): string {
  const unit = lengthUnitOf(plan);
  const { leadLengthLimit: limit, leadLengthPlanned: planned, leadLimitByWithstand: byWithstand } = wiring;
  const lead = `lead ${worked(planned, unit)}`;
  const longest = longestLead(wiring, unit);
  if (planned >= limit)
    return worked(planned, unit) === longest ? lead : `${lead} (${longest} in the schedule)`;
  const withstand = figures?.impulseWithstand ?? null;
  const still = byWithstand && withstand !== null ? `: level still ≤ ${figure(withstand, 'V')}` : '';
  return `${lead} as planned; longest ${longest}${still}`;
}
