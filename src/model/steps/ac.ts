import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { AcSystem, Conductor, OvervoltageCategory } from '../words.js';

/** A factor that its source gives by two voltages: the highest over the nominal. */
interface VoltageRange {
  readonly highest: Quantity;
  readonly nominal: Quantity;
}

/** Steps about AC systems, control circuits, fault currents, discharge currents and withstand: code and values. */
export interface AcSteps {
  'ac-voltage/to-ground': { readonly conductor: Conductor; readonly system: AcSystem };
  'ac-voltage/between-lines': { readonly system: AcSystem };
  'ac-voltage/highest': { readonly range: VoltageRange; readonly nominal: Quantity };
  'ac-voltage/share': { readonly share: Quantity; readonly nominal: Quantity };
  'ac-voltage/larger': { readonly highest: Quantity; readonly share: Quantity };
  'ac-voltage/least': { readonly factor: Quantity; readonly nominal: Quantity };
  'inverter-link/nominal': { readonly system: AcSystem };
  'inverter-link/highest-of-range': { readonly range: VoltageRange; readonly nominal: Quantity };
  'inverter-link/highest': { readonly factor: Quantity; readonly nominal: Quantity };
  'inverter-link/peak': { readonly factor: Quantity; readonly highest: Quantity };
  'control-voltage/nominal': None;
  'control-voltage/share': {
    readonly current: 'ac' | 'dc';
    readonly share: Quantity;
    readonly nominal: Quantity;
  };
  /** `nominalCell`: nominal voltage of one cell. */
  'control-voltage/battery': {
    readonly cell: Quantity;
    readonly nominal: Quantity;
    readonly nominalCell: Quantity;
  };
  'control-voltage/larger': { readonly share: Quantity; readonly battery: Quantity };
  'fault-current/own': None;
  /** Tags of the equipment upstream. */
  'fault-current/transformer': { readonly at: string; readonly system: AcSystem };
  'fault-current/transformer-power': { readonly at: string };
  'fault-current/transformer-impedance': { readonly at: string };
  'fault-current/upstream': { readonly at: readonly string[] };
  'fault-current/from': { readonly at: string };
  /** Sources that feed at one time; `apart`: those that feed only in place of them; `without`: those of which it isn't known. */
  'fault-current/together': {
    readonly each: readonly Quantity[];
    readonly of: readonly string[];
    readonly apart: readonly string[];
    readonly without: readonly string[];
  };
  'fault-current/of-battery': { readonly battery: string };
  'fault-current/sum': { readonly each: readonly Quantity[] };
  'nominal-current/least': None;
  'nominal-current/service': None;
  'nominal-current/service-with-lightning-protection': None;
  'nominal-current/fed-panel': None;
  'withstand/stated': { readonly equipment: string };
  'withstand/entry': None;
  'withstand/row': None;
  'withstand/assumed': { readonly category: OvervoltageCategory };
}
