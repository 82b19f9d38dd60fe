import { isNec, type Basis } from '../model/editions.js';
import { reason, type Reason } from '../model/reason.js';

/** Smallest leads of a protector, as gauges that `parseWireGauge` reads. */
export interface SmallestLeads {
  /** Copper, from the live conductor to the protector. */
  readonly live: string;
  /** Copper, from the protector to ground. */
  readonly earth: string;
  /** Either lead in aluminum; null: copper only. */
  readonly aluminum: string | null;
  readonly source: Reason;
}

/** NEC 242.28 (285.26 in 2017). */
export const NEC_2023_242_28 = {
  live: '14 AWG',
  earth: '14 AWG',
  aluminum: '12 AWG',
  source: reason('source/smallest-lead-nec'),
} satisfies SmallestLeads;

const IEC_SOURCE = reason('source/smallest-lead-iec');

/** IEC 60364-5-53:2019 cl. 534.4.10, values from memory: by the class of the protector. */
export const IEC_60364_5_53_2019_534_4_10: Readonly<Record<'T1' | 'T2', SmallestLeads>> = {
  T1: { live: '6 mm2', earth: '16 mm2', aluminum: null, source: IEC_SOURCE },
  T2: { live: '2.5 mm2', earth: '6 mm2', aluminum: null, source: IEC_SOURCE },
};

/**
 * Smallest leads of a protector.
 * @param basis the job's
 * @param iecClass class of the leads to IEC 61643, that of the part or that which its place asks for; counts under `iec` only; null
 * (neither is known) takes the larger leads
 * @returns gauges and their source
 * Source: NEC 242.28 (285.26 in 2017); IEC 60364-5-53:2019 cl. 534.4.10 (value from memory).
 */
export function smallestLeads(basis: Basis, iecClass: 'T1' | 'T2' | 'T3' | null): SmallestLeads {
  if (isNec(basis)) return NEC_2023_242_28;
  return IEC_60364_5_53_2019_534_4_10[iecClass === 'T1' || iecClass === null ? 'T1' : 'T2'];
}
