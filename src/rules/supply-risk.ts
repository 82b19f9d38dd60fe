import { IEC_60364_4_44_2015_RISK_LIMIT } from '../electrical/exposure.js';
import { isNec, type Basis } from '../model/editions.js';
import type { Occupancy } from '../model/words.js';

/**
 * Whether a calculated risk level asks for protection.
 * @param level CRL, without a unit
 * Source: IEC 60364-4-44:2007+A1:2015 cl. 443.5.
 */
export function riskAsksForProtection(level: number): boolean {
  return level < IEC_60364_4_44_2015_RISK_LIMIT;
}

/** What decides whether protection is asked for at a service. */
export interface SupplyFacts {
  readonly basis: Basis;
  readonly occupancy: Occupancy;
  /** CRL, without a unit; undefined: not known. */
  readonly riskLevel: number | undefined;
}

/**
 * Whether the risk level decides at a service: of a single dwelling, where the level is known.
 * Source: IEC 60364-4-44:2007+A1:2015 cl. 443.4 and 443.5.
 */
export function riskDecides({ basis, occupancy, riskLevel }: SupplyFacts): boolean {
  return !isNec(basis) && occupancy === 'dwelling' && riskLevel !== undefined;
}

/**
 * Whether `iec` asks for protection at the service of a site: at any but a single dwelling, and there where the risk level
 * asks for it.
 * Source: IEC 60364-4-44:2007+A1:2015 cl. 443.4 and 443.5.
 */
export function serviceAsksForProtection({ basis, occupancy, riskLevel }: SupplyFacts): boolean {
  if (isNec(basis)) return false;
  if (occupancy !== 'dwelling') return true;
  return riskLevel !== undefined && riskAsksForProtection(riskLevel);
}
