import type { Step } from '../model/fact.js';
import { PEAK_OVER_EFFECTIVE } from './continuous-voltage.js';
import { shown, taken, withoutDust, workingOf, type Computed } from './working.js';

/**
 * Open-circuit DC voltage behind the rectifier of a three-phase turbine: the peak of its line-to-line voltage.
 * @param input V line to line at the highest unloaded speed (effective value)
 * @returns V DC
 * Source: computed, six-pulse rectifier without load.
 */
export function rectifiedVoltage(input: { readonly lineToLine: number }): Computed {
  const value = withoutDust(PEAK_OVER_EFFECTIVE * input.lineToLine);
  const result: Step = {
    symbol: 'UDC',
    says: 'Open-circuit voltage behind the rectifier: peak of the voltage between lines',
    formula: `${shown(PEAK_OVER_EFFECTIVE)} × ULL`,
    substituted: `${shown(PEAK_OVER_EFFECTIVE)} × ${shown(input.lineToLine)} V`,
    value,
    unit: 'V',
    sure: 'computed',
    source: 'computed: rectifier without load',
  };
  const steps = [
    taken('ULL', 'Open-circuit voltage between lines at the highest unloaded speed', input.lineToLine, 'V'),
  ];
  return { value, working: workingOf(steps, result) };
}

/**
 * Frequency of a synchronous generator, at which the indicators on its output flicker.
 * @param input number of poles (two for each pole pair) and turns a minute
 * @returns Hz
 * Source: computed, pole pairs x turns a second.
 */
export function generatorFrequency(input: { readonly poles: number; readonly rpm: number }): Computed {
  const value = withoutDust(((input.poles / 2) * input.rpm) / 60);
  const result: Step = {
    symbol: 'f',
    says: 'Frequency of the generator, at which the indicators flicker',
    formula: '(poles / 2) × rpm / (60 s/min)',
    substituted: `(${shown(input.poles)} / 2) × ${shown(input.rpm)} 1/min / (60 s/min)`,
    value,
    unit: 'Hz',
    sure: 'computed',
    source: 'computed: pole pairs × turns a second',
  };
  const steps = [
    taken('poles', 'Poles of the generator', input.poles, ''),
    taken('rpm', 'Speed', input.rpm, '1/min'),
  ];
  return { value, working: workingOf(steps, result) };
}
