import type { Thresholds } from '../model/settings.js';
import type { BoxHazard } from '../model/words.js';

/** What can stand in one box by the plan. */
export interface BoxVoltages {
  /** V; the highest alternating one, 0 where there is none; undefined: how high isn't known. */
  readonly ac: number | undefined;
  /** V; the highest direct one, 0 where there is none; undefined: how high isn't known. */
  readonly dc: number | undefined;
  /** True where a battery bus comes in. */
  readonly battery: boolean;
}

/**
 * What the gravest caution at a box is about.
 * @param voltages what can stand there
 * @param limits V; up to them a shock isn't the gravest hazard
 * @returns `shock` (DANGER) above either limit and where a voltage isn't known; up to both `arc` (WARNING) at a battery bus, else
 * `low-voltage` (WARNING)
 * Source: the limits are common practice, no source; signal words ANSI Z535.4.
 */
export function boxHazard(
  { ac, dc, battery }: BoxVoltages,
  limits: Pick<Thresholds, 'dangerAc' | 'dangerDc'>,
): BoxHazard {
  if (ac === undefined || dc === undefined) return 'shock';
  if (ac > limits.dangerAc || dc > limits.dangerDc) return 'shock';
  return battery ? 'arc' : 'low-voltage';
}
