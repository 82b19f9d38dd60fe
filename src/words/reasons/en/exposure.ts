import type { ExposureReasons, SupplyLine } from '../../../model/reasons/exposure.js';
import type { Sayings } from '../sayings.js';

const LINES: Readonly<Record<SupplyLine, string>> = {
  lv_overhead_km: 'low-voltage overhead line',
  lv_underground_km: 'low-voltage cable',
  hv_overhead_km: 'high-voltage overhead line',
  hv_underground_km: 'high-voltage cable',
};

/** What a calculation about the exposure of a site computes, in English. */
export const EXPOSURE: Sayings<ExposureReasons> = {
  'exposure/flash-density': () => 'Ground flash density',
  'exposure/risk-level': () => 'Calculated risk level',
  'exposure/strikes-to-line': ({ line }) =>
    `Yearly strikes to the ${LINES[line]}; those to the structure aren’t counted, no fact gives its dimensions`,
  'exposure/strikes-near-line': ({ line }) => `Yearly strikes near the ${LINES[line]}`,
  'exposure/critical-length': ({ at }) => `Critical length at ${at}`,
};
