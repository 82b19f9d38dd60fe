import { withoutDust } from '../model/rounding.js';
import type { BatteryChemistry } from '../model/words.js';
import { cellsInSeries, type BatteryInput } from './battery.js';

/** V/cell; what a cell shows at the least that isn't discharged too far or failed: common practice, no source. */
export const LEAST_CELL_VOLTAGES: Readonly<Record<BatteryChemistry, number>> = {
  'lead-acid': 1.75,
  lfp: 2.5,
  nicd: 1.0,
};

/**
 * The least that a sound battery shows between its poles.
 * @param battery as its charge voltage is worked out from, so that both count the same cells
 * @returns V; undefined where the voltage of a cell or their number isn't known
 * Source: common practice, no source.
 */
export function leastBatteryVoltage(battery: BatteryInput): number | undefined {
  const { chemistry } = battery;
  if (!Object.hasOwn(LEAST_CELL_VOLTAGES, chemistry)) return undefined;
  const cells = cellsInSeries(battery);
  return cells === undefined
    ? undefined
    : withoutDust(cells * LEAST_CELL_VOLTAGES[chemistry as BatteryChemistry]);
}

/** What a string's open-circuit voltage is made of. */
export interface StringInSun {
  /** V; of one module at standard test conditions. */
  readonly vocStc: number | undefined;
  readonly modulesInSeries: number | undefined;
  /** True where each module has its own converter: the string then gives what those let through. */
  readonly optimizers: boolean;
}

/**
 * The least that strings on one input give in full sun, before anything draws current.
 * @param strings those that are on it
 * @param share of Voc(STC): the setting `fullSunShare`
 * @returns V of the weakest of them; undefined where there is none, or what one gives isn't known
 * Source: common practice, no source.
 */
export function leastInFullSun(strings: readonly StringInSun[], share: number): number | undefined {
  let least: number | undefined;
  for (const { vocStc, modulesInSeries, optimizers } of strings) {
    if (optimizers || vocStc === undefined || modulesInSeries === undefined) return undefined;
    least = Math.min(least ?? Infinity, withoutDust(share * vocStc * modulesInSeries));
  }
  return least;
}
