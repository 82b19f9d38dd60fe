import type { Fact } from './fact.js';
import type { AcSystem } from './words.js';

/** One figure that a fault current is made of. */
export interface FaultSource {
  readonly tag: string;
  /** A. */
  readonly fact: Fact<number>;
  /** Of a transformer whose row states no figure: what the bound is made of. */
  readonly by?: TransformerFacts;
}

/** What a transformer states of itself. */
export interface TransformerFacts {
  readonly kva: Fact<number>;
  readonly impedance: Fact<number>;
  /** Of its secondary. */
  readonly system: AcSystem;
}

/** Why it isn't known what comes from a row: it states no figure, or the list doesn't say what it passes on. */
export type Unknown = 'not-stated' | 'passes-on';

/** What feeds a fault on a bus, or why that isn't known. */
export interface Feed {
  readonly tag: string;
  readonly source: FaultSource | Unknown;
}

/** What feeds a fault on a bus, by tag: a source that reaches it over two paths counts once. */
export interface Fed {
  readonly feeds: ReadonlyMap<string, FaultSource>;
  /** What feeds only in place of some of them. */
  readonly apart: ReadonlyMap<string, FaultSource>;
  readonly unknown: ReadonlyMap<string, Unknown>;
}

/** Available fault current at a port, A: what its row says of it, or the sum of what can feed a fault there at one time. */
export interface FaultCurrent {
  readonly value: number;
  /** The stated figures that it is the sum of. */
  readonly from: readonly FaultSource[];
  /** Those that don't add, since they feed only in place of others. */
  readonly apart: readonly FaultSource[];
  /** True where it is the row's own figure. */
  readonly own: boolean;
  /** Tags of what feeds it and states no figure, and of what passes on more than the list says: the figure is the least then. */
  readonly unknown: readonly string[];
  readonly passing: readonly string[];
}
