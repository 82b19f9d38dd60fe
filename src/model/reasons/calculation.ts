import type { None } from '../none.js';
import type { Quantity } from '../quantity.js';

/** The rating rules by id: a calculation of theirs bears their title. */
export type RatingRuleId =
  | 'rate/ac-voltage'
  | 'rate/array-current'
  | 'rate/array-voltage'
  | 'rate/battery-voltage'
  | 'rate/control-voltage'
  | 'rate/fault-current'
  | 'rate/input-limit'
  | 'rate/inverter-link'
  | 'rate/nominal-current'
  | 'rate/turbine-voltage'
  | 'rate/withstand';

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
  'calculation/reach': { readonly margin: Quantity };
  'calculation/flash-density': None;
  'calculation/risk-level': None;
  'calculation/strikes-to-line': { readonly line: FeedingLine };
  'calculation/strikes-near-line': { readonly line: FeedingLine };
  'calculation/critical-length': { readonly at: string };
}
