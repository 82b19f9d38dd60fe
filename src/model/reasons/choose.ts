import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';
import type { NestedReason } from '../nested-reason.js';

/** The rating that a placement asks of a part. */
export interface AskedRating {
  readonly current: 'ac' | 'dc';
  readonly mcov: Quantity;
  readonly nominalCurrent: Quantity;
  /** Null: not asked. */
  readonly sccr: Quantity | null;
  readonly listedFor: 'ungrounded' | 'impedance' | 'corner' | null;
  readonly outdoors: boolean;
  readonly aheadOfDisconnect: boolean;
}

/** A rating of a part and what is asked of it. */
interface Compared {
  readonly has: Quantity;
  readonly asked: Quantity;
}

/** A part's level with its leads. */
interface Level {
  readonly basis: 'VPR' | 'Up';
  readonly up: Quantity;
  readonly leads: Quantity;
  readonly withstand: Quantity;
}

/** Why a part fits a place, or doesn't, and why one part goes before another. */
export interface ChooseReasons {
  'mcov/no-rating': { readonly current: 'ac' | 'dc' };
  'mcov/below': Compared;
  'level/not-stated': None;
  'level/above-withstand': Level;
  /** `share`: of the withstand, %; null: it is above the whole. */
  'level/near-withstand': Level & { readonly share: number | null; readonly assumed: boolean };
  'withstand/not-known': None;
  'discharge/not-stated': None;
  'discharge/below': Compared;
  'short-circuit/control-circuit': None;
  'short-circuit/not-stated': None;
  'short-circuit/not-stated-and-asked': { readonly current: 'ac' | 'dc'; readonly asked: Quantity };
  'short-circuit/below': Compared & { readonly current: 'ac' | 'dc' };
  'type/control-circuit': None;
  'type/third-class': None;
  /** `type`: null is not stated. */
  'type/ahead-of-disconnect': { readonly type: number | null };
  'type/third': None;
  'type/not-stated': None;
  'class/not-stated': None;
  'enclosure/indoors': None;
  'enclosure/not-stated': None;
  'enclosure/other-scale': { readonly enclosure: string };
  'enclosure/not-for-outdoors': { readonly enclosure: string };
  'listing/not-stated': None;
  'listing/iec-alone': None;
  'listing/other-system': { readonly system: 'ungrounded' | 'impedance' | 'corner' };
  'listing/is-for': { readonly system: 'ungrounded' | 'impedance' | 'corner' };
  'listing/turbine-floats': None;
  'indication/not-asked': None;
  'indication/none': None;
  'indication/not-stated': None;
  'connection/not-3-plus-1': None;
  'connection/3-plus-1': None;
  'neutral-path/nec': None;
  'neutral-path/no-tt': None;
  'neutral-path/not-stated': {
    readonly each: readonly { readonly rating: 'In' | 'Iimp'; readonly asked: Quantity }[];
  };
  'neutral-path/below': Compared & { readonly rating: 'In' | 'Iimp' };
  'lightning/nec': None;
  'lightning/no-system': None;
  'lightning/control-circuit': None;
  'lightning/elsewhere': None;
  /** `iecClass`: null is not stated. */
  'lightning/class': { readonly iecClass: string | null };
  'impulse/not-stated': None;
  'impulse/below': Compared;
  'channels/too-few': { readonly channels: number; readonly conductors: number };
  'channels/unwired': { readonly channels: number; readonly conductors: number; readonly unwired: number };

  'choice/other-first': { readonly part: string; readonly by: NestedReason };
  'choice/no-shortfall': None;
  'choice/strong-outdoors': None;
  'choice/lower-mcov': None;
  'choice/enclosure-4x': None;
  'choice/lower-level': None;
  'choice/higher-discharge': None;
  'choice/fewer-housings': None;
  'choice/lower-price': None;
  'choice/part-number': None;
  'choice/first': None;
  /** The part that misses least, and on what. */
  'choice/nearest': { readonly part: string; readonly failures: readonly NestedReason[] };
  /** What a part of a range fails at the circuit that it comes nearest to. */
  'range/nearest': { readonly circuit: string; readonly failures: readonly NestedReason[] };
  'asks/rating': AskedRating;
  'asks/not-known': None;
  'holds/up-to': { readonly rating: Quantity };
  'holds/not-stated': None;
}
