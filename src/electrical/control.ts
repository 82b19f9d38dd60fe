import type { ControlVoltage } from '../model/list.js';
import { bare, volts } from '../model/quantity.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Working } from '../model/step.js';
import { leadAcidCellVoltage } from './battery.js';
import { COMMON_PRACTICE, computed, FROM_MEMORY, taken, workingOf } from './working.js';

/** V; nominal voltage of a lead-acid cell, by definition. */
const LEAD_ACID_NOMINAL_CELL = 2;

export interface ControlCircuitInput {
  readonly control: ControlVoltage;
  /** The supply holds its voltage: no battery charge lies on the circuit. */
  readonly regulated: boolean;
  /** Share of the nominal voltage on DC: the setting `continuousShare`. */
  readonly continuousShare: number;
  /** Share of the nominal voltage on AC: the setting `controlAcShare`. */
  readonly acShare: number;
  /** °C; lowest temperature, for a circuit that may hang on a battery. */
  readonly lowestTemp?: number | undefined;
}

export interface ControlCircuitVoltage {
  /** V; least MCOV of a channel. */
  readonly value: number;
  readonly current: 'dc' | 'ac';
  /** V; the share of the nominal voltage. */
  readonly share: number;
  /** V; charge voltage of a lead-acid battery of that nominal voltage; null: not looked at. */
  readonly battery: number | null;
  readonly working: Working;
}

/**
 * Continuous voltage of a low-voltage control circuit.
 *
 * DC: the larger of the share of nominal and the charge voltage of a lead-acid battery of that nominal voltage (nominal/2
 * cells), unless the supply is regulated. AC: the share of nominal. Circuits of up to 60 V, the caller sees to that.
 * @param input nominal V and kind of current, supply, shares
 * @returns V with intermediates and working
 * Source: common practice, no source; charge voltage: value from memory.
 */
export function controlCircuitVoltage(input: ControlCircuitInput): ControlCircuitVoltage {
  const { volts: u, current } = input.control;
  const factor = current === 'ac' ? input.acShare : input.continuousShare;
  const share = withoutDust(factor * u);
  const nominal = volts(u);
  const ofNominal = subject('control-voltage/share', { current, share: bare(factor), nominal });
  const shareStep = computed('Us', ofNominal, {
    value: share,
    unit: 'V',
    sure: 'common practice',
    uses: ['U'],
    source: COMMON_PRACTICE,
  });
  const stated = taken('U', subject('control-voltage/nominal'), u, 'V');
  if (current === 'ac' || input.regulated) {
    return { value: share, current, share, battery: null, working: workingOf([stated], shareStep) };
  }
  const cell = leadAcidCellVoltage(input.lowestTemp);
  const battery = withoutDust((cell * u) / LEAD_ACID_NOMINAL_CELL);
  const value = Math.max(share, battery);
  const ofBattery = subject('control-voltage/battery', {
    cell: volts(cell),
    nominal,
    nominalCell: volts(LEAD_ACID_NOMINAL_CELL),
  });
  const batteryStep = computed('Ucharge', ofBattery, {
    value: battery,
    unit: 'V',
    sure: 'memory',
    uses: ['U'],
    source: FROM_MEMORY,
  });
  const larger = subject('control-voltage/larger', { share: volts(share), battery: volts(battery) });
  const result = computed('MCOV', larger, {
    value,
    unit: 'V',
    sure: 'common practice',
    uses: ['Us', 'Ucharge'],
    source: COMMON_PRACTICE,
  });
  return { value, current, share, battery, working: workingOf([stated, shareStep, batteryStep], result) };
}
