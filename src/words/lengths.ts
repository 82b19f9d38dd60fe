import { isNec, type Basis } from '../model/editions.js';
import type { Plan, PlannedProtector } from '../model/plan.js';
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

/** The unit that all lengths of a job's paper are in. */
export type LengthUnit = 'ft' | 'm';

/** A unit as a cell or a heading ends in it: `120 ft`, `20 in`, `run_length (m)`. */
const UNIT = /(ft|feet|foot|in|inch|inches|yd|['"′″]|m|cm|mm|metres?|meters?)\)?\s*$/i;
const METRIC = /^[cm]?m$|^met/i;

/**
 * The unit in which the list states its lengths: that of most of them; feet of a NEC job that states none, else metres.
 * @param plan its facts keep each cell as it was typed, and the heading above it
 */
export function lengthUnitOf({ site, basis }: Pick<Plan, 'site' | 'basis'>): LengthUnit {
  let metric = 0;
  let imperial = 0;
  for (const { facts } of site.equipments) {
    for (const { field, text, origin } of facts) {
      if (!field.endsWith('_length') || !('column' in origin)) continue;
      const unit = UNIT.exec(text)?.[1] ?? UNIT.exec(origin.column)?.[1];
      if (unit === undefined) continue;
      if (METRIC.test(unit)) metric += 1;
      else imperial += 1;
    }
  }
  if (metric === imperial) return isNec(basis) ? 'ft' : 'm';
  return metric > imperial ? 'm' : 'ft';
}

/** A length in parts of a step, as a whole number of them: `down` for what may not be exceeded. */
const inSteps = (length: number, step: number, round: 'nearest' | 'down'): number =>
  round === 'down' ? Math.floor(length / step + 1e-6) : Math.round(length / step);

/**
 * The length of a run as paper prints it: `120 ft`, `36.6 m`.
 * @param metres m
 */
export function paperLength(metres: number, unit: LengthUnit, round: 'nearest' | 'down' = 'nearest'): string {
  return figure(runFigure(metres, unit, round), unit);
}

function runFigure(metres: number, unit: LengthUnit, round: 'nearest' | 'down'): number {
  const one = unit === 'ft' ? FOOT : 1;
  return inSteps(metres, one / 10, round) / 10;
}

/** Lengths that are told one by one. */
const MOST_LENGTHS = 3;

/**
 * Lengths of runs that are alike but for them, from the shortest on: `13, 14, 15 ft`; of many the ends, `55 to 68 ft`.
 * @param metres m; null where one isn't stated, which is left out
 */
export function paperLengths(metres: readonly (number | null)[], unit: LengthUnit): string {
  const ordered = metres.filter((one) => one !== null).sort((a, b) => a - b);
  const figures = [...new Set(ordered.map((one) => plain(runFigure(one, unit, 'nearest'))))];
  const [first = ''] = figures;
  const told = figures.length <= MOST_LENGTHS ? figures.join(', ') : `${first} to ${figures.at(-1) ?? ''}`;
  return `${told} ${unit}`;
}

/**
 * The length of a lead as paper prints it: `20 in`, `0.5 m`; a limit is rounded down.
 * @param metres m
 */
export function paperLead(metres: number, unit: LengthUnit, round: 'nearest' | 'down' = 'nearest'): string {
  return unit === 'ft'
    ? figure(inSteps(metres, INCH, round), 'in')
    : figure(inSteps(metres, 0.01, round) / 100, 'm');
}

type LeadLimit = Pick<
  PlannedProtector['wiring'],
  'leadLengthLimit' | 'leadLengthPlanned' | 'leadLimitByWithstand'
>;

/**
 * The longest that line lead and ground lead are together: what is planned, since level and reach were worked out
 * with that and would not hold with longer ones, or less where the withstand asks for it. Where the level alone is above the withstand
 * no limit helps, and it is what is planned.
 * @returns m
 */
export function mostLead({
  leadLengthLimit: limit,
  leadLengthPlanned: planned,
  leadLimitByWithstand: byWithstand,
}: LeadLimit): number {
  return byWithstand && limit > 0 ? Math.min(limit, planned) : planned;
}

/** {@link mostLead} as paper prints it. */
export function longestLead(wiring: LeadLimit, unit: LengthUnit): string {
  return paperLead(mostLead(wiring), unit, 'down');
}

/**
 * How far along its cable a protector covers, in the one form that all paper has: `its whole run`, `12 m`, `none`, `not known`.
 * @param figures of the planned part; `reach` in m, null where it isn't limited
 */
export function reachWords(
  figures: Pick<NonNullable<PlannedProtector['figures']>, 'reach' | 'up'> | null,
  unit: LengthUnit,
): string {
  if (figures === null || (figures.reach === null && figures.up === null)) return 'not known';
  if (figures.reach === null) return 'its whole run';
  return figures.reach === 0 ? 'none' : paperLength(figures.reach, unit, 'down');
}
