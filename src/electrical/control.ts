import type { Step, Working } from '../model/fact.js';
import type { ControlVoltage } from '../model/list.js';
import { leadAcidCellVoltage } from './battery.js';
import { COMMON_PRACTICE, FROM_MEMORY, shown, taken, withoutDust, workingOf } from './working.js';

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
  const { volts, current } = input.control;
  const factor = current === 'ac' ? input.acShare : input.continuousShare;
  const share = withoutDust(factor * volts);
  const shareStep: Step = {
    symbol: 'Us',
    says: `Share of the nominal voltage, ${current === 'ac' ? 'AC' : 'DC'} control circuit`,
    formula: `${shown(factor)} × U`,
    substituted: `${shown(factor)} × ${shown(volts)} V`,
    value: share,
    unit: 'V',
    sure: 'common practice',
    source: COMMON_PRACTICE,
  };
  const nominal = taken('U', 'Nominal voltage of the control circuit', volts, 'V');
  if (current === 'ac' || input.regulated) {
    return { value: share, current, share, battery: null, working: workingOf([nominal], shareStep) };
  }
  const cell = leadAcidCellVoltage(input.lowestTemp);
  const battery = withoutDust((cell * volts) / LEAD_ACID_NOMINAL_CELL);
  const value = Math.max(share, battery);
  const batteryStep: Step = {
    symbol: 'Ucharge',
    says: 'Charge voltage of a lead-acid battery of that nominal voltage, 2 V nominal for each cell',
    formula: 'Ucell × U / 2 V',
    substituted: `${shown(cell)} V × ${shown(volts)} V / 2 V`,
    value: battery,
    unit: 'V',
    sure: 'memory',
    source: FROM_MEMORY,
  };
  const result: Step = {
    symbol: 'MCOV',
    says: 'Least maximum continuous operating voltage: the larger of the two',
    formula: 'max(Us, Ucharge)',
    substituted: `max(${shown(share)} V, ${shown(battery)} V)`,
    value,
    unit: 'V',
    sure: 'common practice',
    source: COMMON_PRACTICE,
  };
  return { value, current, share, battery, working: workingOf([nominal, shareStep, batteryStep], result) };
}
