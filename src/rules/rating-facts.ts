import type { Fact } from '../model/fact.js';
import type { VoltageCoefficient, ControlVoltage } from '../model/list.js';
import type { RatingRuleId } from '../model/reasons/calculation.js';
import type { RatingRule } from '../model/rule.js';
import type { Thresholds } from '../model/settings.js';
import type { Basis } from '../model/editions.js';
import type {
  AcSystem,
  Earthing,
  Kind,
  LightningProtection,
  Occupancy,
  OvervoltageCategory,
  PortClass,
  SystemGrounding,
} from '../model/words.js';
import type { FitRuleId } from './fit-facts.js';

/** An array behind a port, as the list states it. */
export interface ArrayFacts {
  readonly tag: string;
  readonly vocStc: Fact<number> | undefined;
  readonly iscStc: Fact<number> | undefined;
  readonly modulesInSeries: Fact<number> | undefined;
  readonly stringsInParallel: Fact<number> | undefined;
  readonly coefficient: Fact<VoltageCoefficient> | undefined;
  readonly cells: Fact<number> | undefined;
  readonly technology: Fact<string> | undefined;
  readonly optimizers: boolean;
  readonly openCircuitVoltage: Fact<number> | undefined;
  /** On the ground, and its circuits are nowhere on or in a building. */
  readonly offBuildings: boolean;
  /** A building that its circuits are on or in is stated to be a dwelling. */
  readonly atDwelling: boolean;
  /** Fields whose cell couldn't be understood: an item stands already. */
  readonly unreadable: ReadonlySet<string>;
}

/** A turbine behind a port. */
export interface TurbineFacts {
  readonly tag: string;
  readonly kind: Kind;
  readonly output: 'three-phase' | 'dc' | undefined;
  readonly openCircuitVoltage: Fact<number> | undefined;
  readonly unreadable: ReadonlySet<string>;
}

/** A converter that a DC port leads to. */
export interface ConverterFacts {
  readonly tag: string;
  readonly kind: Kind;
  readonly maxDcVoltage: Fact<number> | undefined;
  readonly isolated: boolean | undefined;
  /** AC system of a grid-tie inverter's output. */
  readonly acOut: AcSystem | undefined;
  readonly unreadable: ReadonlySet<string>;
}

/** A battery on a bus. */
export interface BatteryFacts {
  readonly tag: string;
  readonly voltage: Fact<number> | undefined;
  readonly chemistry: Fact<string> | undefined;
  readonly cells: Fact<number> | undefined;
  /** The highest voltage that the maker states. */
  readonly highest: Fact<number> | undefined;
  readonly unreadable: ReadonlySet<string>;
}

/** One figure that a fault current is made of. */
interface FaultSourceFacts {
  readonly tag: string;
  readonly fact: Fact<number>;
  /** Of a transformer whose row states no figure. */
  readonly by?: {
    readonly kva: Fact<number>;
    readonly impedance: Fact<number>;
    readonly system: AcSystem;
  };
}

/** Fault current available at a port. */
export interface FaultCurrentFacts {
  /** A; the sum of `from`. */
  readonly value: number;
  readonly own: boolean;
  /** What can feed a fault there at one time. */
  readonly from: readonly FaultSourceFacts[];
  /** What feeds only in place of that. */
  readonly apart: readonly FaultSourceFacts[];
  /** Tags of what feeds it and states no figure, and of what passes on more than the list says: the value is the least then. */
  readonly unknown: readonly string[];
  readonly passing: readonly string[];
}

/** What feeds a fault at a DC port beside the arrays that feed the port itself. */
export interface DcJoinedFacts {
  /** Where the arrays are joined: `CC-1 dc-in-1`. */
  readonly at: string;
  /** How many other arrays are on the circuit. */
  readonly others: number;
  /** A at standard test conditions; Isc x strings of those that state it. */
  readonly othersCurrent: number;
  /** How many of them don't. */
  readonly othersUnknown: number;
  /** What converters on the circuit send back out of each input, where it is known, A. */
  readonly backfeed: readonly {
    readonly tag: string;
    readonly inputs: number;
    readonly fact: Fact<number>;
  }[];
}

/** Everything that a rating rule may declare about one port; plan/ fills it from the site. */
export interface RatingFacts {
  readonly basis: Basis;
  readonly earthing: Earthing;
  readonly occupancy: Occupancy;
  readonly tag: string;
  readonly kind: Kind;
  readonly port: PortClass;
  /** Undefined: not known (the output of a turbine isn't stated). */
  readonly current: 'ac' | 'dc' | undefined;
  readonly inputUse: 'fed' | 'assumed' | 'spare';
  readonly arrays: readonly ArrayFacts[];
  /** Tags of the arrays that feed this port at once; several groups: one of them does, and which isn't stated. */
  readonly arrayGroups: readonly (readonly string[])[];
  /** Of a DC port: what else feeds a fault there; undefined: it is none. */
  readonly joined: DcJoinedFacts | undefined;
  readonly turbines: readonly TurbineFacts[];
  readonly converters: readonly ConverterFacts[];
  readonly batteries: readonly BatteryFacts[];
  readonly lowestTemp: Fact<number> | undefined;
  readonly lowestTempUnreadable: boolean;
  /** Of an AC power port: its system; undefined: not stated. */
  readonly system: AcSystem | undefined;
  /** The system that it is a part of, or itself; undefined: not known. */
  readonly whole: AcSystem | undefined;
  /**
   * Systems that the port bears beside its own: at the other end of a run those that can't be joined to this one (an item says so,
   * and the draft is rated for both), and both sides of an autotransformer ahead of it.
   */
  readonly alsoBorne: readonly {
    readonly system: AcSystem;
    readonly whole: AcSystem | undefined;
    readonly grounding: SystemGrounding;
  }[];
  /** The field that would state the system. */
  readonly systemField: 'ac_in' | 'ac_in_2' | 'ac_out';
  readonly grounding: SystemGrounding;
  readonly controlVoltage: Fact<ControlVoltage> | undefined;
  readonly regulated: boolean;
  readonly impulseWithstand: Fact<number> | undefined;
  readonly overvoltageCategory: OvervoltageCategory | undefined;
  readonly faultCurrent: FaultCurrentFacts | undefined;
  /** Whether place/feeder asked for this placement, and whether the panel is fed from another building or structure. */
  readonly feederPlace: '' | 'inside' | 'outside';
  readonly lightning: LightningProtection;
  readonly inverterDcLink: boolean;
  readonly unreadable: ReadonlySet<string>;
  readonly thresholds: Thresholds;
  /** V; what the withstand table is entered with; undefined: not known. */
  readonly withstandVoltage: number | undefined;
}

export type AnyRatingRule = RatingRule<RatingFacts, FitRuleId> & { readonly id: RatingRuleId };
