import { describe, expect, test } from 'vitest';
import {
  currentAt,
  currentWaveFigures,
  steepestCurrentRise,
  voltageAt,
  voltageWaveFigures,
  type WaveFigures,
} from '../../src/electrical/waves.js';
import { mathematics } from './mathematics.js';

/**
 * The waves as solutions of their circuits' differential equations, integrated by a general-purpose library; nothing here
 * uses the formulas or figures of src/. Time in us.
 */
interface Curve {
  readonly t: readonly number[];
  readonly y: readonly number[];
  /** Integral of y at each time. */
  readonly sum: readonly number[];
}

/**
 * Integrates from a start, stretch by stretch.
 * @param stretches each until when, and its longest step: what is read between two points of the curve (its peak, the passage of
 * a level, a slope) needs steps as short as it is steep; how true each point is goes by the tolerance alone
 */
function integrate(
  rates: (y: readonly number[]) => number[],
  start: readonly number[],
  stretches: readonly (readonly [until: number, step: number])[],
): Curve {
  const last = start.length - 1;
  const t = [0];
  const points: (readonly number[])[] = [start];
  for (const [until, step] of stretches) {
    const solved = mathematics.solveODE((_t, y) => rates(y), [t.at(-1) ?? 0, until], points.at(-1) ?? start, {
      method: 'RK45',
      tol: 1e-9,
      maxStep: step,
      firstStep: step / 100,
      minStep: 1e-9,
      maxIter: 1e6,
    });
    t.push(...solved.t.slice(1));
    points.push(...solved.y.slice(1));
  }
  return { t, y: points.map((v) => v[last - 1] ?? 0), sum: points.map((v) => v[last] ?? 0) };
}

/** Time at which the curve passes a level between two indices, by a straight line between two points. */
function passes(curve: Curve, level: number, from: number, to: number): number {
  for (let i = from; i < to; i++) {
    const [y0 = 0, y1 = 0, t0 = 0, t1 = 0] = [curve.y[i], curve.y[i + 1], curve.t[i], curve.t[i + 1]];
    if ((y0 - level) * (y1 - level) <= 0) return t0 + ((level - y0) / (y1 - y0)) * (t1 - t0);
  }
  throw new Error(`no passage of ${level}`);
}

function measured(
  curve: Curve,
  low: number,
  high: number,
): { peak: number; peakTime: number; front: number; tail: number; integral: number; steepest: number } {
  const peak = Math.max(...curve.y);
  const at = curve.y.indexOf(peak);
  const tLow = passes(curve, low * peak, 0, at);
  const front = (passes(curve, high * peak, 0, at) - tLow) / (high - low);
  const origin = tLow - low * front;
  const slopes = curve.y
    .slice(1)
    .map((y, i) => (y - (curve.y[i] ?? 0)) / ((curve.t[i + 1] ?? 0) - (curve.t[i] ?? 0)));
  return {
    peak,
    peakTime: curve.t[at] ?? NaN,
    front,
    tail: passes(curve, 0.5 * peak, at, curve.y.length - 1) - origin,
    integral: curve.sum.at(-1) ?? NaN,
    steepest: Math.max(...slopes),
  };
}

describe('8/20 us current against numerical integration', () => {
  // t^3 exp(-t/tau) is what comes out of four equal first-order stages: each stage x' = x(before) - x/tau.
  const tau = 3.911;
  const curve = integrate(
    ([a = 0, b = 0, c = 0, i = 0]) => [-a / tau, a - b / tau, 2 * b - c / tau, 3 * c - i / tau, i],
    [0.01243, 0, 0, 0, 0],
    [
      [30, 0.05],
      [150, 1],
    ],
  );
  const found = measured(curve, 0.1, 0.9);
  // Made in each test: what a test makes while it is collected, a mutant of it isn’t tried against.
  const figures = (): WaveFigures => currentWaveFigures(1);
  test('charge', () => {
    const ours = figures();
    expect((ours.integral * 1e6) / found.integral).toBeCloseTo(1, 5);
    expect(ours.integral).toBeCloseTo(17.449e-6, 9);
  });
  test('peak', () => {
    const ours = figures();
    expect(ours.peak / found.peak).toBeCloseTo(1, 5);
    expect(Math.abs(ours.peakTime * 1e6 - found.peakTime)).toBeLessThan(0.06);
  });
  test('front and tail', () => {
    const ours = figures();
    expect((ours.front * 1e6) / found.front).toBeCloseTo(1, 4);
    expect((ours.tail * 1e6) / found.tail).toBeCloseTo(1, 4);
  });
  test('steepest rise', () => {
    const ours = figures();
    expect((ours.steepest * 1e-6) / found.steepest).toBeCloseTo(1, 4);
  });
  test('the whole curve', () => {
    curve.t.forEach((t, i) => {
      expect(Math.abs(currentAt(t * 1e-6, 1) - (curve.y[i] ?? 0))).toBeLessThan(1e-6);
    });
  });
});

describe('1.2/50 us voltage against numerical integration', () => {
  // A (exp(-t/tau2) - exp(-t/tau3)) with 1/tau3 = 1/tau1 + 1/tau2: two stages that decay by themselves.
  const tau1 = 0.4074;
  const tau2 = 68.22;
  const curve = integrate(
    ([slow = 0, rise = 0]) => {
      // (A exp(-t/tau2))' and (A (1 - exp(-t/tau1)) exp(-t/tau2))' = rise' + (slow - rise)/tau1.
      return [-slow / tau2, (slow - rise) / tau1 - rise / tau2, rise];
    },
    [1.037, 0, 0],
    [
      [5, 0.02],
      [1200, 0.5],
    ],
  );
  const found = measured(curve, 0.3, 0.9);
  const figures = (): WaveFigures => voltageWaveFigures(1);
  test('integral', () => {
    const ours = figures();
    expect((ours.integral * 1e6) / found.integral).toBeCloseTo(1, 5);
  });
  test('peak', () => {
    const ours = figures();
    expect(ours.peak / found.peak).toBeCloseTo(1, 5);
    expect(Math.abs(ours.peakTime * 1e6 - found.peakTime)).toBeLessThan(0.03);
  });
  test('front and tail', () => {
    const ours = figures();
    expect((ours.front * 1e6) / found.front).toBeCloseTo(1, 3);
    expect((ours.tail * 1e6) / found.tail).toBeCloseTo(1, 4);
  });
  test('steepest at the start', () => {
    const ours = figures();
    expect(ours.steepestTime).toBe(0);
    expect(ours.steepest * 1e-6).toBeCloseTo(1.037 / 0.4074, 6);
    expect(found.steepest / (ours.steepest * 1e-6)).toBeCloseTo(1, 2);
  });
});

describe('scale', () => {
  test('figures in A, V, s grow with the peak; times do not', () => {
    const one = currentWaveFigures(1);
    const many = currentWaveFigures(3000);
    for (const key of ['peak', 'integral', 'steepest'] as const)
      expect(many[key] / one[key]).toBeCloseTo(3000, 6);
    for (const key of ['peakTime', 'front', 'tail', 'steepestTime'] as const)
      expect(many[key]).toBe(one[key]);
    const v1 = voltageWaveFigures(1);
    const v6 = voltageWaveFigures(6000);
    for (const key of ['peak', 'integral', 'steepest'] as const)
      expect(v6[key] / v1[key]).toBeCloseTo(6000, 6);
    for (const key of ['peakTime', 'front', 'tail'] as const) expect(v6[key]).toBe(v1[key]);
  });
  test('the rise is the slope of the wave at that time', () => {
    const { steepestTime, steepest } = currentWaveFigures(1000);
    const h = 1e-10;
    expect(
      (currentAt(steepestTime + h, 1000) - currentAt(steepestTime - h, 1000)) / (2 * h) / steepest,
    ).toBeCloseTo(1, 6);
    expect(steepestCurrentRise(1000)).toBe(steepest);
    expect(mathematics.unit(steepest, 'A/s').toNumber('A/us')).toBeCloseTo(149, 1);
  });
  test('before 0 there is no wave', () => {
    expect(currentAt(-1e-6, 3000)).toBe(0);
    expect(currentAt(0, 3000)).toBe(0);
    expect(voltageAt(-1e-6, 6000)).toBe(0);
    expect(voltageAt(0, 6000)).toBe(0);
    expect(voltageAt(1e-9, 6000)).toBeGreaterThan(0);
    expect(currentAt(1e-9, 3000)).toBeGreaterThan(0);
  });
});
