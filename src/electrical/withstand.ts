import { reason } from '../model/reason.js';
import { subject, type Working } from '../model/step.js';
import type { OvervoltageCategory } from '../model/words.js';
import {
  AC_SYSTEM_DATA,
  isLiftedToLineVoltage,
  linesToGround,
  wholeOf,
  worstGroundedLine,
  type GroundedSystem,
} from './ac-systems.js';
import { taken, workingOf } from './working.js';

/** One row of IEC 60664-1 Table F.1: V line to neutral that it covers, and V of rated impulse voltage by category. */
export interface ImpulseRow {
  readonly upTo: number;
  readonly withstand: Readonly<Record<OvervoltageCategory, number>>;
}

const row = (upTo: number, I: number, II: number, III: number, IV: number): ImpulseRow => ({
  upTo,
  withstand: { I, II, III, IV },
});

/** IEC 60664-1:2020 Table F.1, rated impulse voltage by line-to-neutral voltage (AC or DC) and overvoltage category; V. */
export const IEC_60664_1_2020_TABLE_F_1: readonly ImpulseRow[] = [
  row(50, 330, 500, 800, 1500),
  row(100, 500, 800, 1500, 2500),
  row(150, 800, 1500, 2500, 4000),
  row(300, 1500, 2500, 4000, 6000),
  row(600, 2500, 4000, 6000, 8000),
  row(1000, 4000, 6000, 8000, 12000),
  row(1250, 4000, 6000, 8000, 12000),
  row(1500, 6000, 8000, 10000, 15000),
];

const TABLE_SOURCE = reason('source/withstand-table');
const VOLTAGE_SOURCE = reason('source/withstand-entry');
const ENTRY = subject('withstand/entry');
const ROW = subject('withstand/row');

export type AssumedWithstand =
  | {
      readonly ok: true;
      /** V. */
      readonly value: number;
      /** V; the row of the table that covers the voltage. */
      readonly row: number;
      readonly working: Working;
    }
  | {
      readonly ok: false;
      /** The voltage is above the last row. */
      readonly reason: 'above-table';
    };

/**
 * Impulse withstand to assume of equipment that states none: an assumption to confirm, which never rejects a part.
 *
 * Equipment for low-voltage supply up to 1000 V AC or 1500 V DC. Real withstand may be lower: much low-voltage equipment has
 * no published figure at all.
 * @param input V line to neutral (an array: its highest open-circuit voltage), overvoltage category
 * @returns V of the row that covers the voltage; or `above-table`
 * Source: IEC 60664-1:2020 Table F.1.
 */
export function assumedWithstand(input: {
  readonly voltage: number;
  readonly category: OvervoltageCategory;
}): AssumedWithstand {
  const { voltage, category } = input;
  const found = IEC_60664_1_2020_TABLE_F_1.find((r) => voltage <= r.upTo);
  if (found === undefined) return { ok: false, reason: 'above-table' };
  const value = found.withstand[category];
  const steps = [
    taken('U', ENTRY, voltage, 'V', 'computed', VOLTAGE_SOURCE),
    taken('Urow', ROW, found.upTo, 'V', 'published', TABLE_SOURCE),
  ];
  const assumed = subject('withstand/assumed', { category });
  const result = taken('Uw', assumed, value, 'V', 'assumption', TABLE_SOURCE);
  return { ok: true, value, row: found.upTo, working: workingOf(steps, result) };
}

/**
 * Voltage that Table F.1 is entered with for an AC system.
 * @param input system, its grounding, basis and earthing of the job
 * @returns V: line to neutral where solidly grounded (208 V for a high leg); else line to line, and between its two
 * conductors for a two-wire circuit of 230 V (equipment for 230 V has no more withstand because its source has 400 V)
 * Source: IEC 60664-1:2020 Table F.1 and Annex B (value from memory).
 */
export function withstandEntryVoltage(input: GroundedSystem): number {
  if (!isLiftedToLineVoltage(input)) return worstGroundedLine(input.system, wholeOf(input)).nominal;
  const isIt = input.basis === 'iec' && input.earthing === 'IT';
  return AC_SYSTEM_DATA[isIt && input.system === '230' ? '230' : wholeOf(input)].betweenConductors;
}

/**
 * Voltage that Table F.1 is entered with for what a service or panel feeds: equipment that hangs on its lowest voltage to neutral has
 * the least withstand. Behind an impedance-grounded or ungrounded wye that is line to neutral too; a delta has line to line alone.
 * @param input the system there, and the one that it is a part of
 * @returns V: 120 of a high-leg delta
 * Source: IEC 60664-1:2020 Table F.1; that what is fed decides: this project's choice.
 */
export function fedEntryVoltage({ system, whole }: Pick<GroundedSystem, 'system' | 'whole'>): number {
  return Math.min(...linesToGround(system, whole ?? system));
}

/**
 * Whether the voltage of what a service or panel feeds stands between lines, since its system has no neutral: of a delta.
 * @param input the system there, and the one that it is a part of
 * Source: as for `fedEntryVoltage`.
 */
export function isFedLineToLine({ system, whole }: Pick<GroundedSystem, 'system' | 'whole'>): boolean {
  const { hasNeutral, lineToLine } = AC_SYSTEM_DATA[system];
  return !hasNeutral && fedEntryVoltage({ system, whole }) === lineToLine;
}
