import { areaOfDiameter, awgDiameter } from '../../electrical/wire-gauge.js';
import type { Part } from '../../model/catalogue.js';
import type { Settings } from '../../model/settings.js';
import { isNec, type Basis } from '../../model/editions.js';

/** The lead of a part that states none (common practice, no source). */
const USUAL_GAUGE = '10 AWG';
const USUAL_DIAMETER = awgDiameter(10);

/** The gauge of a part's leads as planned, as the catalogue has it. */
export function leadGaugeOf(part: Part): string {
  return part.leadGauge === '' ? USUAL_GAUGE : part.leadGauge;
}

/** The cross-section of a part's leads as planned; mm2 (trade unit). */
export function leadAreaOf(part: Part): number {
  return part.leadArea ?? areaOfDiameter(USUAL_DIAMETER);
}

/** The leads of a part as planned: length, diameter and the current that its level is measured at; m, m, A. */
export function plannedLeads(
  part: Part,
  stated: number | undefined,
  basis: Basis,
  settings: Settings,
): { readonly length: number; readonly diameter: number; readonly peak: number } {
  const t = settings.thresholds;
  return {
    length: stated ?? part.leadLength ?? t.leadLength,
    diameter: part.leadDiameter ?? USUAL_DIAMETER,
    peak: isNec(basis) ? t.leadPeakNec : t.leadPeakIec,
  };
}
