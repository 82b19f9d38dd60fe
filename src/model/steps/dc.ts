import type { VoltageCoefficient } from '../list.js';
import type { FineFactor, Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { BatteryChemistry } from '../words.js';

/** Steps about arrays, turbines, batteries and DC inputs: code and values. */
export interface DcSteps {
  'cold-voltage/module-voltage': None;
  'cold-voltage/modules-in-series': None;
  'cold-voltage/lowest-temperature': None;
  /** `cells`: of one module; null: the coefficient isn't counted by cell. */
  'cold-voltage/change-per-degree': {
    readonly coefficient: VoltageCoefficient;
    readonly module: Quantity;
    readonly cells: number | null;
  };
  /** `reference`: the temperature that module voltages are stated at. */
  'cold-voltage/factor': {
    readonly change: Quantity;
    readonly lowest: Quantity;
    readonly reference: Quantity;
    readonly module: Quantity;
  };
  'cold-voltage/factor-of-table': None;
  'cold-voltage/factor-of-coldest-row': None;
  'cold-voltage/factor-without-temperature': None;
  'cold-voltage/string': {
    readonly module: Quantity;
    readonly modules: Quantity;
    readonly factor: FineFactor;
  };
  'array-voltage/stated': { readonly array: string };
  /** What a converter bears, taken for what isn't stated of the array. */
  'array-voltage/stand-in': { readonly converter: string };
  'array-voltage/code-limit': None;
  'array-current/module': None;
  'array-current/strings': None;
  'array-current/array': {
    readonly share: Quantity;
    readonly module: Quantity;
    readonly strings: Quantity;
  };
  'array-current/stated': None;
  /** Other arrays on the circuit, joined at `at`; `current`: Isc × strings of all of them. */
  'array-current/others': {
    readonly count: number;
    readonly at: string;
    readonly share: Quantity;
    readonly current: Quantity;
  };
  'array-current/backfeed': { readonly converter: string; readonly inputs: number };
  'array-current/total': { readonly parts: readonly Quantity[] };
  /** Tags of the arrays that feed the conductor at once. */
  'array-current/sum': { readonly arrays: readonly string[] };
  /** Tags of the arrays of each source, of which one feeds the input. */
  'array-current/largest': { readonly sources: readonly (readonly string[])[] };
  'input-limit/converter': { readonly converter: string };
  'turbine-voltage/stated': { readonly turbine: string; readonly lineToLine: boolean };
  'turbine-voltage/between-lines': None;
  'turbine-voltage/rectified': { readonly factor: Quantity; readonly lineToLine: Quantity };
  'turbine-frequency/poles': None;
  'turbine-frequency/speed': None;
  'turbine-frequency/frequency': { readonly poles: Quantity; readonly speed: Quantity };
  'battery-voltage/stated': { readonly battery: string };
  'battery-voltage/cell': { readonly chemistry: BatteryChemistry };
  'battery-voltage/lowest-temperature': None;
  /** `rise`: V a cell for each degree below the reference. */
  'battery-voltage/compensated-cell': {
    readonly equalise: Quantity;
    readonly absorb: Quantity;
    readonly rise: Quantity;
    readonly reference: Quantity;
    readonly lowest: Quantity;
  };
  'battery-voltage/usual-cells': { readonly nominal: Quantity };
  'battery-voltage/cells': None;
  'battery-voltage/battery': { readonly cell: Quantity; readonly cells: Quantity };
}
