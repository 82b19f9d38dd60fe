import type { None } from '../reason.js';

/** What feeds a site from outside, as the job's facts name it. */
export type SupplyLine = 'lv_overhead_km' | 'lv_underground_km' | 'hv_overhead_km' | 'hv_underground_km';

/** What a calculation about the exposure of a site computes: code and values. */
export interface ExposureReasons {
  'exposure/flash-density': None;
  'exposure/risk-level': None;
  'exposure/strikes-to-line': { readonly line: SupplyLine };
  'exposure/strikes-near-line': { readonly line: SupplyLine };
  /** Of the arrays on a converter. */
  'exposure/critical-length': { readonly at: string };
}
