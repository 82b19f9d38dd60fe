import { areaOfDiameter, awgDiameter } from '../../electrical/wire-gauge.js';
import { COMMON_PRACTICE, type From } from '../../electrical/working.js';
import type { Fact } from '../../model/fact.js';
import { reason } from '../../model/reason.js';
import type { Part, WireSize } from '../../model/catalogue.js';
import type { Settings } from '../../model/settings.js';
import { isNec, type Basis } from '../../model/editions.js';

/** Smallest leads of a part at its place, the metal to plan with first; undefined: none is known. */
export type LineLead = { readonly line: WireSize } | undefined;

/** The lead of a part that states none (common practice, no source). */
const USUAL_GAUGE = '10 AWG';
const USUAL_DIAMETER = awgDiameter(10);

const USUAL_AREA = areaOfDiameter(USUAL_DIAMETER);

/** The smallest line lead, where the gauge of the catalogue is thinner than that; undefined: that gauge will do. */
function thicker(part: Part, smallest: LineLead): WireSize | undefined {
  const area = part.leadArea ?? USUAL_AREA;
  return smallest && smallest.line.area > area * (1 + 1e-9) ? smallest.line : undefined;
}

/** The gauge of a part's leads as planned: as the catalogue has it, or the smallest line lead where that is thicker. */
export function leadGaugeOf(part: Part, smallest: LineLead): string {
  return thicker(part, smallest)?.name ?? (part.leadGauge === '' ? USUAL_GAUGE : part.leadGauge);
}

/** The cross-section of a part's leads as planned; mm2 (trade unit). */
export function leadAreaOf(part: Part, smallest: LineLead): number {
  return thicker(part, smallest)?.area ?? part.leadArea ?? USUAL_AREA;
}

/** The leads of a part as planned: length, diameter and the current that its level is measured at; m, m, A. */
export function plannedLeads(
  part: Part,
  stated: number | undefined,
  basis: Basis,
  settings: Settings,
  smallest: LineLead,
): { readonly length: number; readonly diameter: number; readonly peak: number } {
  const t = settings.thresholds;
  return {
    length: stated ?? part.leadLength ?? t.leadLength,
    diameter: thicker(part, smallest)?.diameter ?? part.leadDiameter ?? USUAL_DIAMETER,
    peak: isNec(basis) ? t.leadPeakNec : t.leadPeakIec,
  };
}

const ON_THIS_PAGE: From = { sure: 'computed', source: reason('source/on-this-page') };
const USUAL: From = { sure: 'common practice', source: COMMON_PRACTICE };
const DEFAULT_LENGTH: From = { sure: 'assumption', source: { from: 'default', field: 'lead_length' } };

/**
 * Where the length and the diameter of a part's leads as planned come from: the list, the catalogue, what its device asks for, or what
 * stands in where nobody states one.
 */
export function leadsFrom(
  part: Part,
  stated: Fact<number> | undefined,
  smallest: LineLead,
): { readonly length: From; readonly diameter: From } {
  const { file, line } = part;
  const ofCatalogue: From = { sure: 'stated', source: { from: 'catalogue', file, line, column: '' } };
  const ofList: From | undefined = stated && { sure: 'stated', source: stated.origin };
  return {
    length: ofList ?? (part.leadLength === null ? DEFAULT_LENGTH : ofCatalogue),
    diameter: thicker(part, smallest) ? ON_THIS_PAGE : part.leadDiameter === null ? USUAL : ofCatalogue,
  };
}
