/** 8/20 us current wave: I(t) = a Ip t^3 exp(-t/tau); a in 1/s^3, tau in s. IEEE C62.41.2-2002. */
export const IEEE_C62_41_2_2002_CURRENT_8_20 = { a: 0.01243e18, tau: 3.911e-6 };

/** 1.2/50 us voltage wave: V(t) = a Vp (1 - exp(-t/tau1)) exp(-t/tau2); s. IEEE C62.41.2-2002. */
export const IEEE_C62_41_2_2002_VOLTAGE_1_2_50 = { a: 1.037, tau1: 0.4074e-6, tau2: 68.22e-6 };

/** What a surge wave of a given peak amounts to; seconds, and the wave's own unit (A or V). */
export interface WaveFigures {
  /** Highest value; a little off the nominal peak, since the constants are rounded. */
  readonly peak: number;
  /** s; when it is reached. */
  readonly peakTime: number;
  /** s; virtual front time. */
  readonly front: number;
  /** s; from the virtual origin to half the highest value on the tail. */
  readonly tail: number;
  /** Integral over all time: C for a current, V s for a voltage. */
  readonly integral: number;
  /** A/s or V/s; the steepest rise. */
  readonly steepest: number;
  /** s; when it rises so. */
  readonly steepestTime: number;
}

const { a: A8, tau: TAU } = IEEE_C62_41_2_2002_CURRENT_8_20;
const { a: AV, tau1: TAU1, tau2: TAU2 } = IEEE_C62_41_2_2002_VOLTAGE_1_2_50;

/**
 * The 8/20 us current wave.
 * @param time s; before 0 the wave is 0
 * @param peak A; nominal peak Ip
 * @returns A
 * Source: IEEE C62.41.2-2002.
 */
export function currentAt(time: number, peak: number): number {
  return time <= 0 ? 0 : A8 * peak * time ** 3 * Math.exp(-time / TAU);
}

/**
 * The 1.2/50 us voltage wave.
 * @param time s; before 0 the wave is 0
 * @param peak V; nominal peak Vp
 * @returns V
 * Source: IEEE C62.41.2-2002.
 */
export function voltageAt(time: number, peak: number): number {
  return time <= 0 ? 0 : AV * peak * (1 - Math.exp(-time / TAU1)) * Math.exp(-time / TAU2);
}

/** Halvings of an interval: enough to reach the last digit of a double from any start of ours. */
const HALVINGS = 80;

/** The time in [from, to] at which a monotone wave of nominal peak 1 passes a level. */
function timeAtLevel(
  wave: (time: number, peak: number) => number,
  level: number,
  from: number,
  to: number,
): number {
  const rising = wave(from, 1) < wave(to, 1);
  let low = from;
  let high = to;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (wave(middle, 1) < level === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Front and half-value time by the straight line through two levels of the front. */
function virtualTimes(
  wave: (time: number, peak: number) => number,
  peakTime: number,
  lowLevel: number,
  highLevel: number,
): { readonly front: number; readonly tail: number } {
  const top = wave(peakTime, 1);
  const low = timeAtLevel(wave, lowLevel * top, 0, peakTime);
  const high = timeAtLevel(wave, highLevel * top, 0, peakTime);
  const front = (high - low) / (highLevel - lowLevel);
  const origin = low - lowLevel * front;
  return { front, tail: timeAtLevel(wave, 0.5 * top, peakTime, 100 * peakTime) - origin };
}

const CURRENT_PEAK_TIME = 3 * TAU;
/** Where the second derivative of t^3 exp(-t/tau) is 0 on the front. */
const CURRENT_STEEPEST_TIME = (3 - Math.sqrt(3)) * TAU;
/** 1/s; steepest rise of a wave of nominal peak 1. */
const CURRENT_STEEPEST =
  A8 *
  CURRENT_STEEPEST_TIME ** 2 *
  Math.exp(-CURRENT_STEEPEST_TIME / TAU) *
  (3 - CURRENT_STEEPEST_TIME / TAU);
const CURRENT_TIMES = virtualTimes(currentAt, CURRENT_PEAK_TIME, 0.1, 0.9);

/**
 * Steepest rise of the 8/20 us current wave.
 * @param peak A; nominal peak Ip
 * @returns A/s: 0.1490 Ip/us
 * Source: IEEE C62.41.2-2002 (the wave); computed.
 */
export function steepestCurrentRise(peak: number): number {
  return CURRENT_STEEPEST * peak;
}

/**
 * Figures of the 8/20 us current wave: peak, virtual front (10 % to 90 %) and half-value time, charge, steepest rise.
 * @param peak A; nominal peak Ip
 * @returns A, s, C, A/s
 * Source: IEEE C62.41.2-2002 (the wave); IEC 62475:2010 (the times, value from memory); computed.
 */
export function currentWaveFigures(peak: number): WaveFigures {
  return {
    peak: currentAt(CURRENT_PEAK_TIME, peak),
    peakTime: CURRENT_PEAK_TIME,
    ...CURRENT_TIMES,
    integral: A8 * peak * 6 * TAU ** 4,
    steepest: steepestCurrentRise(peak),
    steepestTime: CURRENT_STEEPEST_TIME,
  };
}

const VOLTAGE_PEAK_TIME = TAU1 * Math.log(1 + TAU2 / TAU1);
const VOLTAGE_TIMES = virtualTimes(voltageAt, VOLTAGE_PEAK_TIME, 0.3, 0.9);

/**
 * Figures of the 1.2/50 us voltage wave: peak, virtual front (30 % to 90 %) and half-value time, integral, steepest rise.
 * @param peak V; nominal peak Vp
 * @returns V, s, V s, V/s
 * Source: IEEE C62.41.2-2002 (the wave); IEC 60060-1:2010 (the times, value from memory); computed.
 */
export function voltageWaveFigures(peak: number): WaveFigures {
  return {
    peak: voltageAt(VOLTAGE_PEAK_TIME, peak),
    peakTime: VOLTAGE_PEAK_TIME,
    ...VOLTAGE_TIMES,
    integral: AV * peak * (TAU2 - 1 / (1 / TAU1 + 1 / TAU2)),
    steepest: (AV * peak) / TAU1,
    steepestTime: 0,
  };
}
