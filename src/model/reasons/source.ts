import type { Origin } from '../fact.js';
import type { None } from '../none.js';
import type { Basis } from '../editions.js';

/** Where the figure of a step comes from, where no single cell states it: code and values. */
export interface SourceReasons {
  /** A clause that a rule cites; `memory`: its text wasn't at hand. */
  'source/clause': {
    readonly standard: string;
    readonly edition: string;
    readonly clause: string;
    readonly memory: boolean;
  };
  /** Common practice, as the card of a rule has it. */
  'source/practice': { readonly practice: string };
  'source/from-memory': None;
  'source/common-practice': None;
  'source/as-stated': None;
  /** Several cells together. */
  'source/places': { readonly places: readonly Origin[] };
  /** One cell of each equipment. */
  'source/of-each': { readonly each: readonly { readonly tag: string; readonly place: Origin }[] };
  'source/on-this-page': None;
  'source/assumed-on-these-pages': None;
  'source/cold-factor-table': None;
  'source/cold-voltage-annex': None;
  /** The maker's coefficient, by the basis whose clause asks for it. */
  'source/maker-coefficient': { readonly practice: 'nec' | 'iec' };
  'source/string-voltage': None;
  'source/pv-limit': { readonly basis: Basis };
  'source/array-current': { readonly practice: 'nec' | 'iec' };
  'source/rectifier': None;
  'source/pole-pairs': None;
  'source/voltage-range': None;
  'source/continuous-voltage-table': None;
  /** The clause on uses that aren't permitted, in the cycle of the basis. */
  'source/uses-not-permitted': { readonly basis: Basis; readonly clause: string };
  'source/inverter-link': None;
  'source/parallel-sources': None;
  'source/one-at-a-time': None;
  'source/transformer-impedance': None;
  'source/feeding-source-not-stated': None;
  'source/nominal-current-iec': None;
  'source/nominal-current-lightning': None;
  'source/nominal-current-service': None;
  'source/nominal-current-feeder': { readonly outside: boolean };
  'source/withstand-table': None;
  'source/withstand-entry': None;
  'source/critical-length': { readonly read: boolean };
  'source/risk-level': None;
  'source/surroundings-factor': None;
  'source/thunderstorm-days': None;
  'source/thunderstorm-days-power': None;
  'source/lightning-annex': None;
  'source/lightning-table': { readonly table: 'A.1' | 'A.2' | 'A.3' | 'A.4' };
  'source/wire-inductance': None;
  'source/lead-in-level': None;
  'source/current-wave': None;
  'source/lead-voltage': None;
  'source/reach': None;
  'source/effective-level': None;
  'source/level-between': None;
  'source/smallest-lead-nec': None;
  'source/smallest-lead-iec': None;
}
