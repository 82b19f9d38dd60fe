import type { None } from '../none.js';

/** How a site is made dead and live again: code and values. */
export interface IsolateReasons extends DeadReasons, BackReasons, LiveReasons, GroundTerminalReasons {}

interface DeadReasons {
  'isolate/block-generator': None;
  'isolate/block-inverter': None;
  'isolate/block-ac-battery': None;
  /** Of a control circuit whose other end the list doesn't name. */
  'isolate/control-supply': None;
  /** `at`: tags of its other ends, one at least. */
  'isolate/control-supply-at': { readonly at: readonly string[] };
  'isolate/stop-wind': None;
  'isolate/stop-hydro': None;
  'isolate/keep-diversion': None;
  'isolate/loads-off': None;
  'isolate/inverters-off': None;
  'isolate/controllers-off': None;
  'isolate/ac-modules-off': None;
  'isolate/drives-off': None;
  'isolate/ac-batteries-off': None;
  'isolate/open-generator': None;
  'isolate/open-utility': None;
  'isolate/utility-off': None;
  'isolate/open-array': None;
  'isolate/open-turbine': None;
  'isolate/open-battery': None;
  'isolate/wait': { readonly minutes: number };
  'isolate/lock': None;
  'isolate/prove-dead': None;
}

interface BackReasons {
  'restore/battery': None;
  'restore/turbine': None;
  'restore/array': None;
  'restore/utility': None;
  'restore/utility-on': None;
  'restore/generator': None;
  'restore/loads': None;
  'restore/inverters': None;
  'restore/controllers': None;
  'restore/ac-modules': None;
  'restore/drives': None;
  'restore/ac-batteries': None;
  'restore/release-wind': None;
  'restore/release-hydro': None;
  'restore/automatic-starts': None;
  'restore/control-supply': None;
  'restore/control-supply-at': { readonly at: readonly string[] };
  /** `stay`: the steps whose locks stay on until they come. */
  'restore/unlock': { readonly stay: readonly number[] };
}

interface LiveReasons {
  'live/ahead-of-main': None;
  'live/line-side-of-service': None;
  'live/battery-terminals': None;
  'live/array-side': None;
  /** On the array's side of its disconnect itself. */
  'live/array-conductors': None;
  /** Of a turbine, whatever disconnect is open. */
  'live/turbine-conductors': None;
  /** At the far end of a turbine’s line: up to what was opened. */
  'live/turbine-side': None;
  'live-who/utility': None;
  /** Ahead of the main disconnect. */
  'live-who/utility-first': None;
  'live-who/nobody-battery': None;
  'live-who/nobody-array': None;
  'live-who/locked-rotor': None;
  'live-who/shut-water': None;
}

interface GroundTerminalReasons {
  'ground-terminal/fit': None;
  'ground-terminal/lead': None;
  'ground-terminal/electrode': { readonly of: 'circuit' | 'tower' | 'frame' | 'casing' };
  'ground-terminal/conductor': { readonly practice: 'nec' | 'iec' };
  'ground-terminal/never': { readonly practice: 'nec' | 'iec' };
  'ground-terminal/ask': { readonly practice: 'nec' | 'iec' };
}
