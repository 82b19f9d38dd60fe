import type { None } from '../none.js';
import type { Quantity } from '../quantity.js';

/** The id of a rating rule, whose title a calculation of it bears; which there are, rules/ and words/ know. */
export type RatingRuleId = `rate/${string}`;

/** The lines that feed a site. */
export type FeedingLine = 'lv-overhead' | 'lv-underground' | 'hv-overhead' | 'hv-underground';

/** What a calculation works out, its title: code and values. */
export interface CalculationReasons {
  'calculation/of-rule': { readonly rule: RatingRuleId };
  /** Of several voltages at a place this one decides. */
  'calculation/deciding': { readonly rule: RatingRuleId };
  'calculation/converter-limit': { readonly converter: string; readonly reached: Quantity };
  'calculation/code-limit': { readonly reached: Quantity };
  'calculation/leads': { readonly atHalfMetre: Quantity; readonly atOneMetre: Quantity };
  'calculation/level-between': None;
  'calculation/reach': { readonly margin: Quantity };
  'calculation/flash-density': None;
  'calculation/risk-level': None;
  'calculation/strikes-to-line': { readonly line: FeedingLine };
  'calculation/strikes-near-line': { readonly line: FeedingLine };
  'calculation/critical-length': { readonly at: string };
}
