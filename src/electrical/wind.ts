import { bare, quantity, volts } from '../model/quantity.js';
import { reason } from '../model/reason.js';
import { withoutDust } from '../model/rounding.js';
import { subject } from '../model/step.js';
import { PEAK_OVER_EFFECTIVE } from './continuous-voltage.js';
import { computed, taken, workingOf, type Computed } from './working.js';

/**
 * Open-circuit DC voltage behind the rectifier of a three-phase turbine: the peak of its line-to-line voltage.
 * @param input V line to line at the highest unloaded speed (effective value)
 * @returns V DC
 * Source: computed, six-pulse rectifier without load.
 */
export function rectifiedVoltage(input: { readonly lineToLine: number }): Computed {
  const value = withoutDust(PEAK_OVER_EFFECTIVE * input.lineToLine);
  const rectified = subject('turbine-voltage/rectified', {
    factor: bare(PEAK_OVER_EFFECTIVE),
    lineToLine: volts(input.lineToLine),
  });
  const result = computed('UDC', rectified, {
    value,
    unit: 'V',
    sure: 'computed',
    uses: ['ULL'],
    source: reason('source/rectifier'),
  });
  const steps = [taken('ULL', subject('turbine-voltage/between-lines'), input.lineToLine, 'V')];
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
  const frequency = subject('turbine-frequency/frequency', {
    poles: bare(input.poles),
    speed: quantity(input.rpm, '1/min'),
  });
  const result = computed('f', frequency, {
    value,
    unit: 'Hz',
    sure: 'computed',
    uses: ['poles', 'rpm'],
    source: reason('source/pole-pairs'),
  });
  const steps = [
    taken('poles', subject('turbine-frequency/poles'), input.poles, ''),
    taken('rpm', subject('turbine-frequency/speed'), input.rpm, '1/min'),
  ];
  return { value, working: workingOf(steps, result) };
}
