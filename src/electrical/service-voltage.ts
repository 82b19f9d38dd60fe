import { withoutDust } from '../model/rounding.js';
import { ANSI_C84_1_2020_RANGE_B } from './continuous-voltage.js';

/** Where a voltage is measured: at services and panels that of the service, at what uses it that of utilization. */
export type VoltagePlace = 'service' | 'utilization';

/** What a sound supply shows, V. */
export interface VoltageBand {
  readonly low: number;
  readonly high: number;
}

/** Lowest service voltage of range B by nominal voltage, V: ANSI C84.1-2020 Table 1 (values from memory). */
export const ANSI_C84_1_2020_SERVICE_LOWS: Readonly<Record<number, number>> = {
  120: 110,
  208: 191,
  240: 220,
  277: 254,
  347: 318,
  480: 440,
  600: 550,
};

/** Lowest utilization voltage of range B by nominal voltage, V: ANSI C84.1-2020 Table 1 (values from memory). */
export const ANSI_C84_1_2020_UTILIZATION_LOWS: Readonly<Record<number, number>> = {
  120: 104,
  208: 180,
  240: 208,
  277: 240,
  480: 416,
};

const LOWS: Readonly<Record<VoltagePlace, Readonly<Record<number, number>>>> = {
  service: ANSI_C84_1_2020_SERVICE_LOWS,
  utilization: ANSI_C84_1_2020_UTILIZATION_LOWS,
};

/**
 * The voltages of range B.
 * @param nominal V, between the two conductors or to ground
 * @param place where it is measured
 * @returns V: the low of the table, of a nominal that it lacks the same share as at 120 V; the high of 127/120
 * Source: ANSI C84.1-2020 Table 1 (values from memory).
 */
export function rangeB(nominal: number, place: VoltagePlace): VoltageBand {
  const lows = LOWS[place];
  const low = lows[nominal] ?? withoutDust((nominal * (lows[120] ?? 0)) / 120);
  return { low, high: withoutDust(nominal * ANSI_C84_1_2020_RANGE_B) };
}

/**
 * The voltages around a nominal that an inverter or a generator alone, and any supply under `iec`, may show.
 * @param nominal V
 * @param share of the nominal, up and down: the setting `aroundNominal`
 * @returns V
 * Source: IEC 60038:2009 clause 4, 10 % (value from memory); of a source alone common practice, no source.
 */
export function aroundNominal(nominal: number, share: number): VoltageBand {
  return { low: withoutDust(nominal * (1 - share)), high: withoutDust(nominal * (1 + share)) };
}
