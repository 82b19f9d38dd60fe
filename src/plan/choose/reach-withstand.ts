import { assumedWithstand, fedEntryVoltage, isFedLineToLine } from '../../electrical/withstand.js';
import type { JobContext } from '../context/job-context.js';
import type { Placement } from '../context/verdict.js';
import type { Requirement } from '../rate/rate.js';

/** What the reach of a protector is held against. */
export interface ReachWithstand {
  /** V. */
  readonly value: number;
  readonly assumed: boolean;
  /** V of what a service or panel feeds; undefined: it is that of the equipment itself. */
  readonly fedAt: number | undefined;
  /** True where that stands between lines; else it is to neutral. */
  readonly fedLineToLine: boolean;
}

/**
 * The withstand that a protector's reach is held against: of the equipment at its port, but at a service or panel of what that feeds,
 * overvoltage category II at the lowest voltage to neutral there.
 * @returns undefined where it isn't known
 */
export function reachWithstandOf(
  job: JobContext,
  { placement, requirement }: { readonly placement: Placement; readonly requirement: Requirement },
): ReachWithstand | undefined {
  const [port] = placement.ports;
  const own = requirement.withstand;
  const isFeeding = port?.cls === 'service' || (port?.cls === 'feeder' && port.equipment.kind === 'panel');
  if (port?.system === undefined || !isFeeding)
    return own && { value: own.value, assumed: own.assumed, fedAt: undefined, fedLineToLine: false };
  const of = { system: port.system, whole: job.groundingAt(port).whole };
  const voltage = fedEntryVoltage(of);
  const found = assumedWithstand({ voltage, category: 'II' });
  return found.ok
    ? { value: found.value, assumed: true, fedAt: voltage, fedLineToLine: isFedLineToLine(of) }
    : undefined;
}
