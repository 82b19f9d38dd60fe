import { bare, celsius, quantity, volts } from '../model/quantity.js';
import { withoutDust } from '../model/rounding.js';
import { subject, type Step, type Working } from '../model/step.js';
import type { BatteryChemistry } from '../model/words.js';
import { computed, FROM_MEMORY, taken, workingOf } from './working.js';

/** °C; the temperature that charge voltages are stated at. */
const REFERENCE_TEMPERATURE = 25;
/** V/cell; lead-acid without a known temperature (value from memory): covers a compensated charge in hard frost. */
export const LEAD_ACID_UNKNOWN_TEMPERATURE = 2.7;
/** V/cell; lead-acid, equalising charge: 15.5 V on six cells (value from memory). */
export const LEAD_ACID_EQUALISE = 2.583;
/** V/cell; lead-acid, highest absorption voltage at 25 °C: 14.8 V on six cells. */
export const LEAD_ACID_ABSORB = 2.467;
/** V/cell; the absorption voltage that cold compensation is usually reckoned from (value from memory). */
export const LEAD_ACID_ABSORB_MIDDLE = 2.45;
/** V/(cell x °C); rise of the charge voltage for each degree below 25 °C (value from memory). */
export const LEAD_ACID_COMPENSATION = 0.005;
/** V/cell; lithium iron phosphate, end of charge (value from memory). */
export const LFP_END_OF_CHARGE = 3.65;
/** V/cell; nickel-cadmium, highest charge (value from memory). */
export const NICD_HIGHEST_CHARGE = 1.7;

/**
 * Usual cells in series by chemistry and nominal voltage in V; values from memory. Lithium iron phosphate is named by its class
 * (48 V) or by its cells (16 of 3.2 V: 51.2 V).
 */
export const USUAL_CELLS: Readonly<Record<BatteryChemistry, Readonly<Record<number, number>>>> = {
  'lead-acid': { 12: 6, 24: 12, 36: 18, 48: 24 },
  lfp: { 12: 4, 12.8: 4, 24: 8, 25.6: 8, 36: 12, 38.4: 12, 48: 16, 51.2: 16 },
  nicd: { 12: 10, 24: 20, 48: 40 },
};

export interface BatteryInput {
  /** As the list has it; only lead-acid, lfp and nicd are known. */
  readonly chemistry: string;
  /** V. */
  readonly nominal?: number | undefined;
  /** Cells in series of the bank; goes before the usual number. */
  readonly cells?: number | undefined;
  /** °C; lowest temperature that the battery or its sensor sees. */
  readonly lowestTemp?: number | undefined;
}

export type BatteryVoltage =
  | {
      readonly ok: true;
      /** V; highest charge voltage. */
      readonly value: number;
      readonly cells: number;
      /** The number of cells was taken from the nominal voltage. */
      readonly usualCells: boolean;
      /** V/cell. */
      readonly perCell: number;
      readonly working: Working;
    }
  | {
      readonly ok: false;
      /** `chemistry-unknown`: no voltage of a cell is known; `cells-unknown`: the nominal voltage has no usual number of cells. */
      readonly reason: 'chemistry-unknown' | 'cells-unknown';
    };

function isKnown(chemistry: string): chemistry is BatteryChemistry {
  return Object.hasOwn(USUAL_CELLS, chemistry);
}

/**
 * Highest charge voltage of one lead-acid cell.
 * @param lowestTemp °C; undefined: not known
 * @returns V/cell: 2.70 without a temperature, else the larger of equalising and cold-compensated absorption charge
 * Source: value from memory (absorption 14.8 V on six cells: published charge tables).
 */
export function leadAcidCellVoltage(lowestTemp: number | undefined): number {
  if (lowestTemp === undefined) return LEAD_ACID_UNKNOWN_TEMPERATURE;
  return Math.max(
    LEAD_ACID_EQUALISE,
    LEAD_ACID_ABSORB + LEAD_ACID_COMPENSATION * (REFERENCE_TEMPERATURE - lowestTemp),
  );
}

function cellVoltage(chemistry: BatteryChemistry, lowestTemp: number | undefined): number {
  switch (chemistry) {
    case 'lead-acid':
      return leadAcidCellVoltage(lowestTemp);
    case 'lfp':
      return LFP_END_OF_CHARGE;
    case 'nicd':
      return NICD_HIGHEST_CHARGE;
  }
}

function cellSteps(chemistry: BatteryChemistry, lowestTemp: number | undefined, perCell: number): Step[] {
  if (chemistry !== 'lead-acid' || lowestTemp === undefined) {
    const cell = subject('battery-voltage/cell', { chemistry });
    return [taken('Ucell', cell, perCell, 'V', 'memory', FROM_MEMORY)];
  }
  const compensated = subject('battery-voltage/compensated-cell', {
    equalise: volts(LEAD_ACID_EQUALISE),
    absorb: volts(LEAD_ACID_ABSORB),
    rise: quantity(LEAD_ACID_COMPENSATION, 'V/C'),
    reference: celsius(REFERENCE_TEMPERATURE),
    lowest: celsius(lowestTemp),
  });
  return [
    taken('T', subject('battery-voltage/lowest-temperature'), lowestTemp, '°C'),
    computed('Ucell', compensated, {
      value: perCell,
      unit: 'V',
      sure: 'memory',
      uses: ['T'],
      source: FROM_MEMORY,
    }),
  ];
}

/**
 * How many cells a bank has in series.
 * @param input stated cells, which go first; else the usual number of its chemistry and nominal V
 * @returns undefined where neither is known
 * Source: value from memory.
 */
export function cellsInSeries({
  chemistry,
  nominal,
  cells,
}: Pick<BatteryInput, 'chemistry' | 'nominal' | 'cells'>): number | undefined {
  if (cells !== undefined) return cells;
  return isKnown(chemistry) && nominal !== undefined ? USUAL_CELLS[chemistry][nominal] : undefined;
}

/**
 * Highest charge voltage of a battery bank, the voltage that lasts on its bus.
 *
 * Lead-acid, lithium iron phosphate and nickel-cadmium only; the number of cells is taken from nominal voltages of 12, 24,
 * 36 and 48 V (nickel-cadmium: not 36 V; lithium iron phosphate: 12.8, 25.6, 38.4 and 51.2 V too), else it must be stated. Stated cells go first.
 * @param input chemistry, nominal V, cells, lowest temperature in °C
 * @returns V with cells, V/cell and working; or what isn't known
 * Source: value from memory.
 */
export function batteryChargeVoltage(input: BatteryInput): BatteryVoltage {
  const { chemistry, nominal, lowestTemp } = input;
  if (!isKnown(chemistry)) return { ok: false, reason: 'chemistry-unknown' };
  const cells = cellsInSeries(input);
  if (cells === undefined) return { ok: false, reason: 'cells-unknown' };
  const usualCells = input.cells === undefined;
  const perCell = cellVoltage(chemistry, lowestTemp);
  const steps = cellSteps(chemistry, lowestTemp, perCell);
  const value = withoutDust(perCell * cells);
  const cellsStep =
    input.cells === undefined && nominal !== undefined
      ? taken(
          'n',
          subject('battery-voltage/usual-cells', { nominal: volts(nominal) }),
          cells,
          '',
          'memory',
          FROM_MEMORY,
        )
      : taken('n', subject('battery-voltage/cells'), cells, '');
  const battery = subject('battery-voltage/battery', { cell: volts(perCell), cells: bare(cells) });
  const result = computed('Ucharge', battery, {
    value,
    unit: 'V',
    sure: 'computed',
    uses: ['Ucell', 'n'],
    source: FROM_MEMORY,
  });
  return { ok: true, value, cells, usualCells, perCell, working: workingOf([...steps, cellsStep], result) };
}

/**
 * Absorption voltage of a lead-acid bank compensated for cold: 2.45 V/cell and 5 mV/cell for each degree below 25 °C.
 * A check on `batteryChargeVoltage`, which starts from the highest absorption voltage instead.
 * @param input cells in series, temperature in °C
 * @returns V
 * Source: value from memory.
 */
export function coldCompensatedAbsorb(input: {
  readonly cells: number;
  readonly temperature: number;
}): number {
  const perCell =
    LEAD_ACID_ABSORB_MIDDLE + LEAD_ACID_COMPENSATION * (REFERENCE_TEMPERATURE - input.temperature);
  return withoutDust(input.cells * perCell);
}
