import type { AcSystem } from '../model/words.js';
import { AC_SYSTEM_DATA } from './ac-systems.js';

export interface TransformerInput {
  /** kVA. */
  readonly kva: number;
  /** %. */
  readonly impedancePercent: number;
  /** System of its secondary. */
  readonly system: AcSystem;
}

/**
 * The most that a transformer can drive into a fault at its secondary terminals: with an unlimited supply ahead of it.
 * @param input rated power, impedance, secondary system
 * @returns A: kVA x 1000 / (phase factor x V line to line x Z); phase factor 1 for one phase, root 3 for three
 * Source: definition of the impedance voltage of a transformer (IEC 60076-1, value from memory).
 */
export function transformerFaultCurrent({ kva, impedancePercent, system }: TransformerInput): number {
  // Between its lines; of one line to N.
  const { phases, betweenConductors: volts } = AC_SYSTEM_DATA[system];
  const factor = phases === 3 ? Math.sqrt(3) : 1;
  return (kva * 1000) / (factor * volts * (impedancePercent / 100));
}
