import { amperes, metres, quantity, type Quantity } from '../model/quantity.js';
import { reason } from '../model/reason.js';
import { subject, type Step, type Working } from '../model/step.js';
import { steepestCurrentRise } from './waves.js';
import { computed, taken, workingOf } from './working.js';

/** H/m; permeability of free space over 2 pi. */
const MU0_OVER_TWO_PI = 2e-7;
/** m; the 6 in of lead that a VPR is measured with: UL 1449 ed. 5. */
export const UL_1449_ED5_LEAD_IN_VPR = 0.1524;

const INDUCTANCE_SOURCE = reason('source/wire-inductance');
const VPR_SOURCE = reason('source/lead-in-level');
const WAVE_SOURCE = reason('source/current-wave');
const SUM_SOURCE = reason('source/lead-voltage');
const LENGTH = subject('leads/length');
const DIAMETER = subject('leads/diameter');

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
  const inLevel = inductanceInLevel(input.upBasis, diameter);
  const inductanceAdded = Math.max(0, inductance - inLevel);
  const slope = steepestCurrentRise(input.peak);
  return { inductance, inductanceInLevel: inLevel, inductanceAdded, slope, value: inductanceAdded * slope };
}

/**
 * Voltage of a protector's leads by their length, for looking at many lengths of one wire.
 * @param input m, A; see the fields
 * @returns of a length in m the V of `leadFigures`
 * Source: as `leadVoltage`.
 */
export function leadVoltageByLength({
  diameter,
  peak,
  upBasis,
}: Omit<LeadInput, 'length'>): (length: number) => number {
  const slope = steepestCurrentRise(peak);
  const inLevel = inductanceInLevel(upBasis, diameter);
  return (length) => {
    const inductance = wireInductance({ length, diameter, frequency: 'high' });
    return Math.max(0, inductance - inLevel) * slope;
  };
}

/** H; part of the inductance of leads that a level already holds. */
function inductanceInLevel(upBasis: LeadInput['upBasis'], diameter: number): number {
  if (upBasis !== 'VPR') return 0;
  return wireInductance({ length: UL_1449_ED5_LEAD_IN_VPR, diameter, frequency: 'high' });
}

/** 1/us; steepest rise of a current of peak 1 A. */
const RISE = { fine: steepestCurrentRise(1) * 1e-6 };
const PER_METRE = quantity(MU0_OVER_TWO_PI * 1e6, 'uH/m');

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
  const wire = (of: number): { perMetre: Quantity; length: Quantity; diameter: Quantity } => ({
    perMetre: PER_METRE,
    length: metres(of),
    diameter: metres(diameter),
  });
  const microhenries = (henries: number): Quantity => quantity(henries * 1e6, 'uH');
  const inductance = microhenries(figures.inductance);
  const inLevel = microhenries(figures.inductanceInLevel);
  const steps: Step[] = [
    taken('l', LENGTH, length, 'm'),
    taken('d', DIAMETER, diameter * 1e3, 'mm'),
    computed('L', subject('leads/inductance', wire(length)), {
      value: inductance.value,
      unit: 'µH',
      sure: 'memory',
      uses: ['l', 'd'],
      source: INDUCTANCE_SOURCE,
    }),
  ];
  const isVpr = input.upBasis === 'VPR';
  if (isVpr) {
    const six = subject('leads/inductance-in-level', wire(UL_1449_ED5_LEAD_IN_VPR));
    const of = { value: inLevel.value, unit: 'µH', sure: 'memory', uses: ['d'], source: VPR_SOURCE } as const;
    steps.push(computed('L6', six, of));
  }
  const rise = quantity(figures.slope * 1e-6, 'A/us');
  steps.push(
    computed('di/dt', subject('leads/current-rise', { rise: RISE, peak: amperes(peak) }), {
      value: rise.value,
      unit: 'A/µs',
      sure: 'computed',
      uses: [],
      source: WAVE_SOURCE,
    }),
  );
  const voltage = isVpr
    ? subject('leads/voltage-beyond-level', { inductance, inLevel, rise })
    : subject('leads/voltage', { inductance, rise });
  const result = computed('Ul', voltage, {
    value: figures.value,
    unit: 'V',
    sure: 'computed',
    uses: isVpr ? ['L', 'L6', 'di/dt'] : ['L', 'di/dt'],
    source: SUM_SOURCE,
  });
  return {
    inductance: figures.inductance,
    inductanceInLevel: figures.inductanceInLevel,
    inductanceAdded: figures.inductanceAdded,
    slope: figures.slope,
    value: figures.value,
    working: workingOf(steps, result),
  };
}
