import type { WireRange } from '../catalogue.js';
import type { Lead } from '../lead.js';
import type { None } from '../none.js';
import type { Quantity } from '../quantity.js';
import type { Conductor, PortName } from '../words.js';

/** The largest device that the part allows; null: its catalogue doesn't say. */
interface Most {
  readonly most: Quantity | null;
}

/** Overcurrent devices of protectors and the least of their leads: code and values. */
export interface OvercurrentReasons {
  'overcurrent/no-part': None;
  'overcurrent/not-needed': None;
  'overcurrent/size-not-stated': None;
  'overcurrent/ahead-of-disconnect': { readonly nec: boolean };
  'overcurrent/circuit-will-do': Most & { readonly rating: Quantity };
  'overcurrent/circuit-too-large': Most & { readonly rating: Quantity };
  'overcurrent/circuit-not-stated': Most;
  /** Nothing but the grounded phase or pole. */
  'overcurrent/grounded-only': { readonly nec: boolean };
  'overcurrent/array-below': Most & {
    readonly current: Quantity;
    readonly ampacity: Quantity | null;
    readonly nec: boolean;
  };
  'overcurrent/array-above': Most & { readonly current: Quantity };
  'overcurrent/array-not-known': Most;
  'overcurrent/of-battery-bus': Most;
  'overcurrent/by-maker-of-turbine': Most;
  'overcurrent/by-supply-of-control': Most;
  'overcurrent-outside/ac': None;
  'overcurrent-outside/array': None;
  'overcurrent-outside/battery': None;
  'overcurrent-outside/turbine': None;
  'overcurrent-outside/control': None;
  'overcurrent-note/straight-through': { readonly conductor: Conductor; readonly nec: boolean };
  'overcurrent-note/single-and-three-phase': None;
  /** In the room of a battery that may give off gas: its tags. */
  'overcurrent-note/battery-gas': { readonly batteries: readonly string[]; readonly nec: boolean };
  /** The catalogue's words name another number of poles than the plan has. */
  'overcurrent-note/poles-in-words': {
    readonly words: string;
    readonly named: number;
    readonly poles: number;
  };
  'overcurrent-note/one-for-each-port': { readonly ports: readonly PortName[]; readonly nec: boolean };
  /** Two channels on one conductor. */
  'overcurrent-note/one-wire-a-terminal': { readonly conductor: Conductor; readonly nec: boolean };
  'lead/device-not-stated': None;
  'lead/range-not-stated': None;
  'lead/beyond-table': { readonly current: Quantity };
  'lead/larger-than-range': {
    readonly lead: 'line' | 'ground';
    readonly needs: Lead;
    readonly most: Lead;
  };
  /** By what the last step is: the largest device that the part allows, the circuit's own, an ampacity, or a sum of currents. */
  'calculation/overcurrent': { readonly port: PortName };
  'calculation/overcurrent-of-circuit': { readonly port: PortName };
  'calculation/overcurrent-none': { readonly port: PortName };
  'calculation/overcurrent-sum': { readonly port: PortName };
  'calculation/smallest-lead': { readonly metal: WireRange['metal'] };
  'source/small-conductors': None;
  'source/ampacity': None;
  'source/array-conductors': None;
  'source/lead-by-instructions': None;
  'source/backfeed-taken-as-none': None;
}
