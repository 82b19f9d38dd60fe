import type { Sureness } from '../model/fact.js';
import type { VoltageCoefficient } from '../model/list.js';
import { bare, celsius, quantity, volts } from '../model/quantity.js';
import { keeping } from '../model/keeping.js';
import { reason } from '../model/reason.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Step, type Working } from '../model/step.js';
import { isNec, type Basis } from '../model/editions.js';
import { computed, taken, workingOf } from './working.js';

/** °C; cell temperature of standard test conditions (IEC 60904-3). */
const STC_TEMPERATURE = 25;

/** One row of NEC Table 690.7(A): holds for ambient temperatures from `downTo` (°C) up to the row above it. */
export interface ColdFactorRow {
  readonly downTo: number;
  readonly factor: number;
}

/**
 * NEC Table 690.7(A), voltage correction factors for crystalline and multicrystalline silicon modules; the same figures
 * in the 2008 to 2023 editions. Warmest row first; `downTo` is the cold end of the printed row, so a temperature between
 * two printed rows falls into the colder one.
 */
export const NEC_2023_TABLE_690_7_A: readonly ColdFactorRow[] = [
  { downTo: 25, factor: 1.0 },
  { downTo: 20, factor: 1.02 },
  { downTo: 15, factor: 1.04 },
  { downTo: 10, factor: 1.06 },
  { downTo: 5, factor: 1.08 },
  { downTo: 0, factor: 1.1 },
  { downTo: -5, factor: 1.12 },
  { downTo: -10, factor: 1.14 },
  { downTo: -15, factor: 1.16 },
  { downTo: -20, factor: 1.18 },
  { downTo: -25, factor: 1.2 },
  { downTo: -30, factor: 1.21 },
  { downTo: -35, factor: 1.23 },
  { downTo: -40, factor: 1.25 },
];

/** Factor on Voc(STC) of an array whose lowest temperature is unknown: IEC 60364-7-712:2017 Annex B, value from memory. */
export const IEC_60364_7_712_2017_ANNEX_B_FACTOR = 1.2;
/** °C; where NEC Table 690.7(A) ends. */
export const NEC_2023_COLDEST = -40;
/** The coldest row of NEC Table 690.7(A): the draft's bound where no temperature is stated. */
export const NEC_2023_COLDEST_FACTOR = 1.25;

const TABLE_SOURCE = reason('source/cold-factor-table');
const PRODUCT_SOURCE = reason('source/string-voltage');
const ANNEX_B_SOURCE = reason('source/cold-voltage-annex');
const COEFFICIENT_SOURCES = {
  nec: reason('source/maker-coefficient', { practice: 'nec' }),
  iec: reason('source/maker-coefficient', { practice: 'iec' }),
};
const MODULE_VOLTAGE = subject('cold-voltage/module-voltage');
const MODULES = subject('cold-voltage/modules-in-series');
const LOWEST_TEMPERATURE = subject('cold-voltage/lowest-temperature');

export interface ColdVoltageInput {
  /** V; open-circuit voltage of one module at standard test conditions, above 0. */
  readonly vocStc: number;
  readonly modulesInSeries: number;
  /** °C; lowest expected ambient temperature. */
  readonly lowestTemp: number;
  /** The module's own coefficient; where it is given the table isn't looked at. */
  readonly coefficient?: VoltageCoefficient | undefined;
  /** Cells in series of one module; asked for by a coefficient in mV/cell/C only. */
  readonly cells?: number | undefined;
  /** Whose clause the working names; the NEC's where it isn't given. */
  readonly basis?: Basis | undefined;
}

export type ColdVoltage =
  | {
      readonly ok: true;
      /** V; highest open-circuit voltage of the string. */
      readonly value: number;
      /** Voc at the lowest temperature over Voc(STC), at least 1. */
      readonly factor: number;
      readonly method: 'coefficient' | 'table';
      readonly working: Working;
    }
  | {
      readonly ok: false;
      /**
       * `no-table-row`: colder than the table's last row, so a coefficient is needed; `cells-missing`: the coefficient is
       * in mV/cell/C; `coefficient-not-negative`: a sign is missing, or it isn't a coefficient of the voltage.
       */
      readonly reason: 'no-table-row' | 'cells-missing' | 'coefficient-not-negative';
    };

/**
 * The factor of NEC Table 690.7(A) for crystalline silicon.
 * @param lowestTemp °C
 * @returns the factor of the row that holds the temperature (the colder of two rows); undefined below -40 °C
 */
export function tableFactor(lowestTemp: number): number | undefined {
  return NEC_2023_TABLE_690_7_A.find((row) => lowestTemp >= row.downTo)?.factor;
}

/** Change of one module's Voc for each degree, in V/°C; undefined where the cells are needed and not known. */
function voltsForEachDegree(
  coefficient: VoltageCoefficient,
  vocStc: number,
  cells: number | undefined,
): number | undefined {
  switch (coefficient.unit) {
    case '%/C':
      return (coefficient.value / 100) * vocStc;
    case 'V/C':
      return coefficient.value;
    case 'mV/cell/C':
      return cells === undefined ? undefined : (coefficient.value / 1000) * cells;
  }
}

function inputSteps(input: Pick<ColdVoltageInput, 'vocStc' | 'modulesInSeries'>): Step[] {
  return [taken('Voc', MODULE_VOLTAGE, input.vocStc, 'V'), taken('n', MODULES, input.modulesInSeries, '')];
}

function productStep(
  input: Pick<ColdVoltageInput, 'vocStc' | 'modulesInSeries' | 'basis'>,
  factor: number,
  sure: Sureness,
): Step {
  const string = subject('cold-voltage/string', {
    module: volts(input.vocStc),
    modules: bare(input.modulesInSeries),
    factor: { fine: factor },
  });
  return computed('Voc,max', string, {
    value: withoutDust(input.vocStc * input.modulesInSeries * factor),
    unit: 'V',
    sure,
    uses: ['Voc', 'n', 'F'],
    source: input.basis === 'iec' ? ANNEX_B_SOURCE : PRODUCT_SOURCE,
  });
}

function byCoefficient(input: ColdVoltageInput, coefficient: VoltageCoefficient): ColdVoltage {
  const source = COEFFICIENT_SOURCES[input.basis === 'iec' ? 'iec' : 'nec'];
  const { vocStc, lowestTemp, cells } = input;
  if (!(coefficient.value < 0)) return { ok: false, reason: 'coefficient-not-negative' };
  const slope = voltsForEachDegree(coefficient, vocStc, cells);
  if (slope === undefined) return { ok: false, reason: 'cells-missing' };
  // Above 25 °C the voltage falls, but a module in the morning still reaches its STC voltage: never below 1.
  const factor = Math.max(1, 1 + (slope * (lowestTemp - STC_TEMPERATURE)) / vocStc);
  const result = productStep(input, factor, 'computed');
  const module = volts(vocStc);
  const change = subject('cold-voltage/change-per-degree', {
    coefficient,
    module,
    cells: coefficient.unit === 'mV/cell/C' ? (cells ?? null) : null,
  });
  const coldFactor = subject('cold-voltage/factor', {
    change: quantity(slope, 'V/C'),
    lowest: celsius(lowestTemp),
    reference: celsius(STC_TEMPERATURE),
    module,
  });
  const uses = coefficient.unit === '%/C' ? ['Voc'] : [];
  const steps = inputSteps(input);
  steps.push(
    taken('T', LOWEST_TEMPERATURE, lowestTemp, '°C'),
    computed('dV/dT', change, { value: slope, unit: 'V/°C', sure: 'stated', uses, source }),
    computed('F', coldFactor, {
      value: factor,
      unit: '',
      sure: 'computed',
      uses: ['dV/dT', 'T', 'Voc'],
      source,
    }),
  );
  return { ok: true, value: result.value, factor, method: 'coefficient', working: workingOf(steps, result) };
}

/**
 * Highest open-circuit voltage of a string of modules at the lowest expected ambient temperature.
 *
 * The module's own coefficient goes first; without one NEC Table 690.7(A), which holds for crystalline silicon only, down
 * to -40 °C. The caller must not ask for the table for another technology. The result is never below Voc(STC).
 * @param input V, °C; see the fields
 * @returns the voltage in V with factor, method and working; or why it can't be computed
 * Source: NEC 690.7(A) and Table 690.7(A), 2017 to 2023; 110.3(B) for the precedence of the coefficient; under `iec`
 * IEC 60364-7-712:2017 Annex B (value from memory), whose formula is the same, with the NEC's table for want of a coefficient.
 */
export const coldOpenCircuitVoltage = keeping(
  ({ vocStc, modulesInSeries, lowestTemp, coefficient, cells, basis }: ColdVoltageInput) =>
    `${vocStc}|${modulesInSeries}|${lowestTemp}|${coefficient?.value}|${coefficient?.unit}|${cells}|${basis}`,
  workedOut,
);

function workedOut(input: ColdVoltageInput): ColdVoltage {
  if (input.coefficient !== undefined) return byCoefficient(input, input.coefficient);
  const factor = tableFactor(input.lowestTemp);
  if (factor === undefined) return { ok: false, reason: 'no-table-row' };
  const result = productStep(input, factor, 'computed');
  const steps = inputSteps(input);
  steps.push(
    taken('T', LOWEST_TEMPERATURE, input.lowestTemp, '°C'),
    taken('F', subject('cold-voltage/factor-of-table'), factor, '', 'published', TABLE_SOURCE),
  );
  return { ok: true, value: result.value, factor, method: 'table', working: workingOf(steps, result) };
}

export interface VoltageWithoutTemperature {
  /** V. */
  readonly value: number;
  readonly factor: number;
  /** `annex-b`: the rule of `iec`; `coldest-row`: a bound for a draft under `nec`, where the temperature stays missing. */
  readonly method: 'annex-b' | 'coldest-row';
  readonly working: Working;
}

/**
 * Open-circuit voltage of a string whose lowest temperature isn't stated.
 *
 * `iec`: 1.2 x Voc(STC), which the standard allows. `nec`: 1.25 x, the coldest row of Table 690.7(A), a bound for the draft
 * only: the temperature stays a missing fact, and the caller takes the converter's maximum where that is larger.
 * @param input Voc of one module in V, number of modules in series, basis
 * @returns V with factor and working
 * Source: IEC 60364-7-712:2017 Annex B (value from memory); NEC Table 690.7(A).
 */
export function coldVoltageWithoutTemperature(
  input: Pick<ColdVoltageInput, 'vocStc' | 'modulesInSeries'> & { readonly basis: Basis },
): VoltageWithoutTemperature {
  const nec = isNec(input.basis);
  const factor = nec ? NEC_2023_COLDEST_FACTOR : IEC_60364_7_712_2017_ANNEX_B_FACTOR;
  const steps = inputSteps(input);
  const coldest = subject('cold-voltage/factor-of-coldest-row');
  const without = subject('cold-voltage/factor-without-temperature');
  steps.push(
    nec
      ? taken('F', coldest, factor, '', 'assumption', TABLE_SOURCE)
      : taken('F', without, factor, '', 'memory', ANNEX_B_SOURCE),
  );
  const result = productStep(input, factor, nec ? 'assumption' : 'computed');
  return {
    value: result.value,
    factor,
    method: nec ? 'coldest-row' : 'annex-b',
    working: workingOf(steps, result),
  };
}
