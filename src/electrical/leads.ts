import type { Step, Working } from '../model/fact.js';
import { steepestCurrentRise, WAVE_SOURCE } from './waves.js';
import { FROM_MEMORY, shown, taken, workingOf } from './working.js';

/** H/m; permeability of free space over 2 pi. */
const MU0_OVER_TWO_PI = 2e-7;
/** m; the 6 in of lead that a VPR is measured with: UL 1449 ed. 5. */
export const UL_1449_ED5_LEAD_IN_VPR = 0.1524;

const INDUCTANCE_SOURCE = `Rosa, Bulletin of the Bureau of Standards 4(2), 1908, p. 301; Grover, ${FROM_MEMORY}`;
const VPR_SOURCE = `UL 1449 ed. 5: a VPR is measured with leads of 6 in, ${FROM_MEMORY}`;

/**
 * Self-inductance of a straight round wire, away from its return.
 *
 * Holds for lengths much greater than the diameter; below that the formula turns negative, and 0 is returned. `high`: the
 * current flows in the skin, as in a surge; `low`: it fills the wire.
 * @param input m, m
 * @returns H
 * Source: Rosa, Bulletin of the Bureau of Standards 4(2), 1908, p. 301; Grover, Inductance Calculations (value from memory).
 */
export function wireInductance(input: {
  readonly length: number;
  readonly diameter: number;
  readonly frequency: 'high' | 'low';
}): number {
  const { length, diameter } = input;
  if (!(length > 0)) return 0;
  const less = input.frequency === 'high' ? 1 : 0.75;
  return Math.max(0, MU0_OVER_TWO_PI * length * (Math.log((4 * length) / diameter) - less));
}

export interface LeadInput {
  /** m; line lead plus ground lead. */
  readonly length: number;
  /** m; of the conductor. */
  readonly diameter: number;
  /** A; peak of the 8/20 us wave: a setting. */
  readonly peak: number;
  /** What the part's level stands on; null (not stated) takes nothing off, the safe side. */
  readonly upBasis: 'VPR' | 'Up' | null;
}

export interface LeadFigures {
  /** H; of the whole length. */
  readonly inductance: number;
  /** H; part of it that the level already holds; 0 but for a VPR. */
  readonly inductanceInLevel: number;
  /** H; what adds. */
  readonly inductanceAdded: number;
  /** A/s; steepest rise of the wave. */
  readonly slope: number;
  /** V. */
  readonly value: number;
}

/**
 * Voltage of a protector's leads, without the working: for ranking many parts.
 * @param input m, m, A; see the fields
 * @returns V, never negative, with H and A/s
 * Source: as `leadVoltage`.
 */
export function leadFigures(input: LeadInput): LeadFigures {
  const { diameter } = input;
  const inductance = wireInductance({ length: input.length, diameter, frequency: 'high' });
  const inLevel =
    input.upBasis === 'VPR'
      ? wireInductance({ length: UL_1449_ED5_LEAD_IN_VPR, diameter, frequency: 'high' })
      : 0;
  const inductanceAdded = Math.max(0, inductance - inLevel);
  const slope = steepestCurrentRise(input.peak);
  return { inductance, inductanceInLevel: inLevel, inductanceAdded, slope, value: inductanceAdded * slope };
}

/** 1/us; as printed: five digits, so that the product can be checked by hand. */
const RISE_TEXT = String(Number((steepestCurrentRise(1) * 1e-6).toPrecision(5)));

const PER_METRE = `${shown(MU0_OVER_TWO_PI * 1e6)} µH/m`;

/** A step of an inductance, printed in uH (trade unit). */
function inductanceStep(
  symbol: string,
  says: string,
  length: number,
  diameter: number,
  henries: number,
  source: string,
): Step {
  return {
    symbol,
    says,
    formula: `${PER_METRE} × l × (ln(4 × l / d) - 1)`,
    substituted: `${PER_METRE} × ${shown(length)} m × (ln(4 × ${shown(length)} m / (${shown(diameter)} m)) - 1)`,
    value: henries * 1e6,
    unit: 'µH',
    sure: 'memory',
    source,
  };
}

/**
 * Voltage along a protector's leads while an 8/20 us current rises at its steepest.
 *
 * Straight wire, line lead and ground lead as one length. A VPR already holds the first 6 in: only what exceeds their
 * inductance adds. Adding this peak to the level is conservative: the two don't fall on the same instant.
 * @param input m, m, A; see the fields
 * @returns V with the inductances in H, the slope in A/s and the working (µH, A/µs)
 * Source: inductance: Rosa 1908, Grover (value from memory); wave: IEEE C62.41.2-2002; total lead length: IEC 60364-5-53
 * cl. 534.4.8; 6 in: UL 1449 (value from memory).
 */
export function leadVoltage(input: LeadInput): LeadFigures & { readonly working: Working } {
  const figures = leadFigures(input);
  const { length, diameter, peak } = input;
  const steps: Step[] = [
    taken('l', 'Total length of the leads, line lead plus ground lead', length, 'm'),
    taken('d', 'Diameter of the lead', diameter * 1e3, 'mm'),
    inductanceStep(
      'L',
      'Inductance of the leads, straight round wire at high frequency',
      length,
      diameter,
      figures.inductance,
      INDUCTANCE_SOURCE,
    ),
  ];
  const isVpr = input.upBasis === 'VPR';
  if (isVpr) {
    const says = 'Inductance of the 6 in that the rating already holds';
    const six = UL_1449_ED5_LEAD_IN_VPR;
    steps.push(inductanceStep('L6', says, six, diameter, figures.inductanceInLevel, VPR_SOURCE));
  }
  steps.push({
    symbol: 'di/dt',
    says: 'Steepest rise of the 8/20 µs current',
    formula: `${RISE_TEXT} 1/µs × Ip`,
    substituted: `${RISE_TEXT} 1/µs × ${shown(peak)} A`,
    value: figures.slope * 1e-6,
    unit: 'A/µs',
    sure: 'computed',
    source: WAVE_SOURCE,
  });
  const added = isVpr
    ? `max(0 µH, ${shown(figures.inductance * 1e6)} µH - ${shown(figures.inductanceInLevel * 1e6)} µH)`
    : `${shown(figures.inductance * 1e6)} µH`;
  const result: Step = {
    symbol: 'Ul',
    says: 'Voltage of the leads, added to the level',
    formula: isVpr ? 'max(0 µH, L - L6) × di/dt' : 'L × di/dt',
    substituted: `${added} × ${shown(figures.slope * 1e-6)} A/µs`,
    value: figures.value,
    unit: 'V',
    sure: 'computed',
    source: 'computed; adding the two peaks is conservative',
  };
  return {
    inductance: figures.inductance,
    inductanceInLevel: figures.inductanceInLevel,
    inductanceAdded: figures.inductanceAdded,
    slope: figures.slope,
    value: figures.value,
    working: workingOf(steps, result),
  };
}
