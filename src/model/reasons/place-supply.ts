import type { Basis } from '../editions.js';
import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { NestedReason } from '../nested-reason.js';
import type { Occupancy } from '../words.js';

/** Why rules place a protector where a site is supplied and along its runs, or don't: code and values. `basis`: its unit of lengths stands first. */
export interface PlaceSupplyReasons {
  'battery/leaves-room': { readonly to: string };
  'battery/may-leave-room': { readonly to: string };
  'battery/longer-than-limit': {
    readonly to: string;
    readonly length: Quantity;
    readonly limit: Quantity;
    readonly basis: Basis;
  };
  'battery/no-cable': None;
  'battery/stays-in-room': None;
  /** Nothing on the list hangs on a DC panel. */
  'battery/nothing-hangs': None;
  'feeder/no-unit': { readonly outside: boolean };
  'feeder/feed-unknown': None;
  'feeder/supplies-unit': {
    readonly from: readonly string[];
    readonly unit: Occupancy;
    readonly outside: boolean;
  };
  'generator/beside': None;
  'generator/far': {
    readonly outdoors: boolean;
    readonly length: Quantity;
    readonly from: string;
    readonly basis: Basis;
  };
  'generator/no-run': None;
  'generator/length-unknown': None;
  'generator/not-longer': { readonly limit: Quantity; readonly basis: Basis };
  'long-run/module-branch': None;
  'long-run/transfer-switch': None;
  'long-run/disconnect': None;
  'long-run/length-unknown': None;
  'long-run/no-run': None;
  'long-run/indoors': None;
  'long-run/not-longer': { readonly limit: Quantity; readonly basis: Basis };
  'long-run/longer-than-limit': {
    /** True where this port is the upstream end. */
    readonly upstream: boolean;
    readonly other: string;
    readonly length: Quantity;
    readonly limit: Quantity;
    /** False: between buildings. */
    readonly outdoors: boolean;
    readonly basis: Basis;
  };
  'outbuilding/no-feeder': None;
  'outbuilding/length-unknown': { readonly from: string };
  'outbuilding/not-longer': { readonly from: string; readonly limit: Quantity; readonly basis: Basis };
  'outbuilding/enters': { readonly from: string };
  'service/here': None;
  /**
   * 230.67 names other occupancies than this one. `units`: what the service feeds by feeders in buildings that hold such a unit; whether
   * the service of another building supplies it in the sense of the clause, the authority having jurisdiction says.
   */
  'service/not-of-clause': { readonly occupancy: Occupancy; readonly units: readonly string[] };
  'service/of-unit': { readonly unit: Occupancy };
  'service/no-single-dwelling': None;
  'service/risk-unknown': None;
  'service/risk-compared': { readonly level: Quantity; readonly limit: Quantity; readonly below: boolean };
  /** A panel that stands at the service: the service's protector is its own. */
  'service-place/shared': { readonly service: string };
  'service-place/reason': { readonly reason: NestedReason; readonly panel: string };
}
