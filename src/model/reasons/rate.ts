import type { Quantity } from '../quantity.js';
import type { CalculationReasons } from './calculation.js';
import type { None } from '../none.js';
import type { SourceReasons } from './source.js';

type Tags = readonly string[];

/** What rating rules ask of a place, and why they can't or don't: code and values. */
export interface RateReasons extends CalculationReasons, SourceReasons {
  'ac-voltage/no-system-here': None;
  'ac-voltage/system-not-stated': None;
  'array-current/no-dc-port': None;
  'array-current/no-array': None;
  'array-current/source-not-listed': None;
  'array-current/others-not-stated': { readonly count: number; readonly at: string };
  'array-current/not-stated': { readonly arrays: Tags };
  'array-voltage/no-array': None;
  'array-voltage/not-known': None;
  'array-voltage/stand-in': { readonly arrays: Tags };
  'battery-voltage/no-bus': None;
  'battery-voltage/no-battery': None;
  'battery-voltage/not-known': { readonly batteries: Tags };
  'control-voltage/no-circuit': None;
  'control-voltage/not-stated': None;
  'fault-current/no-port': None;
  'fault-current/not-asked': None;
  'fault-current/known': None;
  'fault-current/not-stated': None;
  'fault-current/not-stated-of': { readonly sources: Tags };
  /** Of what they pass on the list doesn't say all. */
  'fault-current/passed-on-by': { readonly sources: Tags };
  'input-limit/no-dc-input': None;
  'input-limit/no-converter': None;
  'input-limit/source-listed': None;
  'input-limit/combiner-unfed': None;
  'input-limit/not-known': None;
  'inverter-link/turned-off': None;
  'inverter-link/no-array': None;
  'inverter-link/no-inverter': None;
  'inverter-link/system-not-stated': None;
  'turbine-voltage/no-turbine': None;
  'turbine-voltage/not-known': None;
  'withstand/nothing-known': None;
  'withstand/above-table': None;
  /** What a missing fact is needed for. */
  'needed/optimizer-voltage': None;
  'needed/array-voltage': None;
  /** What the converter bears stands in for the draft. */
  'needed/array-rated-by-converter': { readonly converter: string; readonly bears: Quantity };
  'needed/coefficient-without-table': { readonly technology: string };
  'needed/coefficient-below-table': { readonly coldest: Quantity };
  'needed/lowest-temperature': { readonly array: string };
  'needed/cells-of-coefficient': None;
  'needed/input-bound': None;
  'needed/inverter-system': None;
  'needed/turbine-current': None;
  'needed/turbine-voltage': None;
  'needed/battery-voltage': None;
  'needed/conductor-voltage': None;
  'needed/control-part': None;
}
