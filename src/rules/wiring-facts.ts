import type { Reason } from '../model/reason.js';
import type { RuleCard } from '../model/rule.js';
import type { Basis } from '../model/editions.js';
import type { AcSystem, Conductor, Earthing, SystemGrounding } from '../model/words.js';

/** What a circuit is, for wiring and for its lights. */
export type Circuit = 'power' | 'turbine' | 'control' | 'battery' | 'array';

/** Everything that a wiring rule may declare about one port; plan/ fills it from the site. */
export interface WiringFacts {
  readonly basis: Basis;
  readonly earthing: Earthing;
  readonly circuit: Circuit;
  readonly current: 'ac' | 'dc';
  readonly system: AcSystem | undefined;
  /** The system that it is a part of, or itself; undefined: not known. */
  readonly whole: AcSystem | undefined;
  readonly grounding: SystemGrounding;
  readonly atService: boolean;
  /** True where N is bonded to ground within 0.5 m of this place. */
  readonly bondedHere: boolean;
  /** Lines of the AC system, without N. */
  readonly lines: readonly Conductor[];
  readonly hasNeutral: boolean;
  /** The line that a spare channel doubles first: L1, or the high leg. */
  readonly doubledFirst: Conductor;
  readonly neutralAsked: boolean;
  /** True where the part of this place leads lines to N and N to ground. */
  readonly threePlusOne: boolean;
  /** True where the positive pole of a DC bus or a control circuit is grounded. */
  readonly positiveGround: boolean;
  /** True where the negative pole of a battery's bus is grounded, which is solidly. */
  readonly negativeGround: boolean;
  /** True where a class T1 part is asked for here, or every part is to have the earth lead of one. */
  readonly classOneAsked: boolean;
}

/** A rule that says how something is wired. */
export interface WiringRule<F, D> extends RuleCard {
  readonly facts: readonly (keyof F)[];
  decide(facts: F): D;
}

/** The conductors that must have a channel. */
export interface ConductorsDecision {
  readonly conductors: readonly Conductor[];
  readonly because: Reason;
}

/** Whether N must have a channel, may have one, or isn't there. */
export interface NeutralDecision {
  readonly neutral: 'asked' | 'optional' | 'bonded' | 'none';
  readonly because: Reason;
}

/** In which order spare channels are used; empty: none may be spare. */
export interface SpareDecision {
  readonly uses: readonly { readonly conductor: Conductor; readonly doubled: boolean }[];
  readonly because: Reason;
}

/** Where the ground lead goes, the least lead, and how leads are laid. */
export interface LeadsDecision {
  readonly groundTo: Reason;
  readonly smallest: Reason;
  readonly notes: readonly Reason[];
}

/** By which colours and names of the settings conductors go. */
export interface NamesDecision {
  readonly colours: 'nec' | 'nec480' | 'iec' | 'positiveGround';
  /** The phase or the pole that is solidly grounded; null: none is. */
  readonly grounded: 'L2' | 'negative' | null;
  readonly because: Reason;
}

/** Which line is a high leg; null: none is. */
export interface HighLegDecision {
  readonly highLeg: 'L2' | null;
  readonly because: Reason;
}
