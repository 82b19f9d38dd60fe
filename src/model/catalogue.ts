import type { Lead } from './lead.js';
import type { OpenItem } from './open-item.js';

/** A wire of a size: m, mm2 (trade unit) of a solid round conductor, and its name (`14 AWG`, `6 mm2`). */
export interface WireSize {
  readonly name: string;
  readonly diameter: number;
  readonly area: number;
}

/** The wires of one metal that the terminals of a part take. */
export interface WireRange {
  readonly metal: Lead['metal'];
  readonly least: WireSize;
  readonly most: WireSize;
}

export const OVERCURRENT_DEVICES = ['breaker', 'fuse', 'either', 'none'] as const;
/** The overcurrent device that a part needs of its own. */
export type OvercurrentDevice = (typeof OVERCURRENT_DEVICES)[number];

/** One protector of the company's catalogue: V, A, m, mm2; null where the cell is empty. */
export interface Part {
  readonly part: string;
  readonly maker: string;
  readonly description: string;
  readonly channels: number;
  /** V, conductor to ground; null: not for AC. */
  readonly mcovAc: number | null;
  /** V, conductor to ground; null: not for DC. */
  readonly mcovDc: number | null;
  /** V, conductor to ground. */
  readonly up: number | null;
  readonly upBasis: 'VPR' | 'Up' | null;
  /** A (the catalogue has kA). */
  readonly nominalCurrent: number | null;
  readonly maximumCurrent: number | null;
  readonly impulseCurrent: number | null;
  /** A; of the path from neutral to ground of a 3+1 part. */
  readonly neutralNominalCurrent: number | null;
  readonly neutralImpulseCurrent: number | null;
  readonly sccr: number | null;
  readonly sccrDc: number | null;
  readonly type: 1 | 2 | 3 | null;
  readonly iecClass: 'T1' | 'T2' | 'T3' | null;
  readonly connection: 'to-ground' | '3+1';
  /** NEMA type (`4X`) or another code as typed; `` where not stated. */
  readonly enclosure: string;
  readonly listedFor: readonly ('ungrounded' | 'impedance' | 'corner')[];
  readonly listing: string;
  readonly listingFile: string;
  readonly indicator: 'light' | 'flag' | 'none' | null;
  readonly indicatorMinVoltage: number | null;
  readonly indicatorColor: string;
  readonly leakage: number | null;
  /** m, line lead plus ground lead; null: the setting's 0.5 m. */
  readonly leadLength: number | null;
  /** As typed (`10 AWG`, `6 mm2`); ``: 10 AWG. */
  readonly leadGauge: string;
  /** m; diameter of the lead's conductor; null: that of 10 AWG. */
  readonly leadDiameter: number | null;
  /** mm2; cross-section of the lead; null: not stated. */
  readonly leadArea: number | null;
  /** What the catalogue says of the overcurrent device in its own words; `` where it says nothing. */
  readonly overcurrent: string;
  /** A; the largest overcurrent device ahead of it; null: not stated. */
  readonly overcurrentMost: number | null;
  /** A; the least; null: not stated. */
  readonly overcurrentLeast: number | null;
  /** Which device it needs of its own; null (not stated) stands for either. */
  readonly overcurrentDevice: OvercurrentDevice | null;
  /** True where its instructions size its leads; null: not stated. */
  readonly leadByInstructions: boolean | null;
  /** As typed. */
  readonly wireRange: string;
  /** The same as sizes, one a metal; empty: not stated, or not understood. */
  readonly wireRanges: readonly WireRange[];
  readonly torque: string;
  readonly price: number | null;
  readonly currency: string;
  readonly file: string;
  readonly line: number;
}

/** The company's catalogue; parts that can't be used are left out, with an item. */
export interface Catalogue {
  readonly file: string;
  readonly parts: readonly Part[];
  readonly items: readonly OpenItem[];
}
