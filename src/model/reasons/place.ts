import type { Basis } from '../editions.js';
import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { NestedReason } from '../nested-reason.js';
import type { Kind, PortClass } from '../words.js';

/** Why rules place a protector at a kind of equipment, or don't: code and values. `basis`: its unit of lengths stands first. */
export interface PlaceReasons {
  'asked/no': None;
  'asked/yes': None;
  /** The list asks for one at the main port, which is another. */
  'asked/at-main-port': None;
  'asked/not-asked': None;
  /** A service whose required protector goes by the exception of 230.67(B). */
  'asked/no-by-exception': None;
  /** Equipment of kind `other`: no rule looks at it. */
  'asked/kind-other': None;
  /** A connection can't be used as it stands, so that a run may be missing here. */
  'run/in-doubt': None;
  'control/above-low-voltage': { readonly voltage: Quantity };
  'control/end-unknown': None;
  'control/length-unknown': None;
  'control/nothing-asks': None;
  'control/outdoors': None;
  'control/between-buildings': { readonly to: string };
  'control/place-unknown': { readonly to: string };
  'control/long-run': { readonly length: Quantity; readonly basis: Basis };
  /** The other end of a control circuit, for what is said of the circuit itself. */
  'control-end/refused': { readonly circuit: string; readonly reason: NestedReason };
  'control-end/placed': { readonly circuit: string; readonly reason: NestedReason };
  'control-end/waived': None;
  'dc-input/spare': None;
  'dc-input/fed': { readonly by: readonly Kind[] };
  'dc-input/assumed-fed': None;
  'dc-input/service-required': { readonly fed: NestedReason };
  'dc-input/length-not-compared': { readonly fed: NestedReason };
  'dc-input/length-compared': {
    readonly fed: NestedReason;
    readonly length: Quantity;
    readonly critical: Quantity;
    readonly shorter: boolean;
    readonly basis: Basis;
  };
  'exempt/worth-protecting': None;
  'exempt/service': None;
  'exempt/nothing-worth-protecting': None;
  'exempt/diversion-load': None;
  /** The output of a pump drive, at either end of its cable. */
  'drive/switched-pulses': { readonly drive: string };
  'grid-tie/module-branch': None;
  'grid-tie/target-unknown': None;
  'grid-tie/target-bare': { readonly target: string };
  'grid-tie/run-unknown': { readonly target: string };
  'grid-tie/place-unknown': { readonly target: string };
  'grid-tie/other-building': { readonly target: string };
  'grid-tie/reach-unknown': { readonly target: string };
  'grid-tie/no-reach': { readonly target: string; readonly basis: Basis };
  /** `reach`: null where it isn't limited. */
  'grid-tie/within-reach': {
    readonly target: string;
    readonly run: Quantity;
    readonly reach: Quantity | null;
    readonly basis: Basis;
  };
  'grid-tie/beyond-reach': {
    readonly target: string;
    readonly run: Quantity;
    readonly reach: Quantity;
    readonly basis: Basis;
  };
  'inverter-ac/in-use': { readonly port: PortClass; readonly kind: Kind };
  'port/unused': None;
  'port/nothing-named': None;
  'signal/outside-plan': None;
  'wind/tower-base': None;
  'wind/enters': { readonly turbine: string };
  'wind/enters-at-combiner': None;
  'wind/no-run': None;
  'wind-premises/here': None;
  'wind-premises/no-turbine': None;
  'wind-premises/elsewhere': None;
}
