import type { FineFactor, Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** What the inductance of a straight wire is worked out from. */
interface WireInductance {
  readonly perMetre: Quantity;
  readonly length: Quantity;
  readonly diameter: Quantity;
}

/** Protection level, voltage of the leads and withstand. */
interface Levels {
  readonly level: Quantity;
  readonly leads: Quantity;
  readonly withstand: Quantity;
}

/** Steps about the leads of a protector and how far it covers: code and values. */
export interface ReachSteps {
  'leads/length': None;
  'leads/diameter': None;
  'leads/inductance': WireInductance;
  'leads/inductance-in-level': WireInductance;
  /** `rise`: 1/us; steepest rise of a current of peak 1. */
  'leads/current-rise': { readonly rise: FineFactor; readonly peak: Quantity };
  'leads/voltage': { readonly inductance: Quantity; readonly rise: Quantity };
  'leads/voltage-beyond-level': {
    readonly inductance: Quantity;
    readonly inLevel: Quantity;
    readonly rise: Quantity;
  };
  'reach/level': None;
  'reach/leads': None;
  'reach/withstand': None;
  /** Of what a service or panel feeds; `voltage`: to neutral, or of a delta between lines. */
  'reach/fed-withstand': { readonly voltage: Quantity; readonly to: 'neutral' | 'line' };
  /** Between two conductors that each have a channel to ground. */
  'level/between': { readonly level: Quantity; readonly leads: Quantity };
  'reach/none': Levels;
  'reach/unlimited': Levels;
  'reach/metres': Levels & {
    readonly slope: Quantity;
    readonly least: Quantity;
    readonly limit: Quantity;
  };
}
