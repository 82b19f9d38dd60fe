import { reason, type Reason } from '../model/reason.js';
import type { Source } from '../model/fact.js';
import type { PlacementDecision, PlacementRule, RunFacts, Unasked } from '../model/rule.js';
import type { Basis } from '../model/editions.js';
import type { Kind, Occupancy, PortClass, Strength } from '../model/words.js';

/** Everything that a placement rule may declare about one port; plan/ fills it from the site. */
export interface PlacementFacts {
  readonly basis: Basis;
  readonly tag: string;
  readonly kind: Kind;
  readonly port: PortClass;
  /** The job's occupancy. */
  readonly occupancy: Occupancy;
  /** Of a panel or load: what its building holds. */
  readonly unitOccupancy: Occupancy;
  /** Of a service: what it feeds in buildings that are stated to hold a dwelling or sleeping unit. */
  readonly unitsFed: readonly { readonly tag: string; readonly unit: Occupancy }[];
  readonly outdoors: boolean;
  readonly worthProtecting: boolean;
  /** `protect` of the row: true yes, false no, undefined not stated. */
  readonly protect: boolean | undefined;
  /** True for the main port of its kind. */
  readonly mainPort: boolean;
  readonly runs: readonly RunFacts[];
  /** True where a connection of it can't be used as it stands on the list: a run may be missing here. */
  readonly runInDoubt: boolean;
  /** What feeds this AC port, transfer switches passed through; `outside`: from another building or structure. */
  readonly feeders: readonly { readonly tag: string; readonly kind: Kind; readonly outside: boolean }[];
  /** Tag of the service whose place this panel is; ``: it has its own. */
  readonly servicePlaceOf: string;
  /** True for a panel fed by a service in its building over a run whose length isn't stated. */
  readonly servicePlaceUnknown: boolean;
  /** Tags whose place would say whether this panel is its service's place. */
  readonly servicePlaceUnplaced: readonly string[];
  readonly inputUse: 'fed' | 'assumed' | 'spare';
  readonly sourceKinds: readonly Kind[];
  readonly unused: '' | 'stated' | 'nothing-named';
  /** True where a wind turbine is on the list, and the basis knows 694.7(D). */
  readonly hasWind: boolean;
  /** True where this port carries the protector of 694.7(D). */
  readonly windCarrier: boolean;
  /** True on the first turbine of a site without AC equipment. */
  readonly windWithoutAc: boolean;
  readonly controlVolts: number | undefined;
  readonly connected: boolean;
  /** m; of a control circuit whose other end isn't named: its length where the list states one. */
  readonly ownLength: number | undefined;
  /** Tag of the pump drive whose output this port is, or is fed by: it carries switched pulses; ``: none. */
  readonly drive: string;
  /** m; the limit of place/long-run under the basis. */
  readonly longRunLimit: number;
  /** V; above it a control circuit isn't low voltage. */
  readonly controlVoltageLimit: number;
  /** Calculated risk level of the site; undefined: not computed. */
  readonly riskLevel: number | undefined;
  /** m; critical length of the arrays behind this input; undefined: flash density unknown. */
  readonly criticalLength: number | undefined;
  /** m; summed length of the runs of all arrays upstream of this converter; undefined: not known. */
  readonly arraysLength: number | undefined;
  /** True where place/service is required at this site. */
  readonly serviceRequired: boolean;
  /** The protector that place/grid-tie-ac may lean on. */
  readonly nearest: NearestProtector | undefined;
}

/** A protected port that the run of a grid-tie inverter's output leads to. */
export interface NearestProtector {
  /** The equipment whose port is protected. */
  readonly tag: string;
  /** m from that port to the inverter; undefined: not stated. */
  readonly length: number | undefined;
  readonly sameBuilding: boolean;
  /** Tags whose place would say whether it is in the same building. */
  readonly unplaced: readonly string[];
  readonly protected: boolean;
  /** m; Infinity: not limited; undefined: unknown (no part chosen). */
  readonly reach: number | undefined;
}

export type AnyPlacementRule = PlacementRule<PlacementFacts>;

/** One rule's reason for a placement. */
export interface PlacementReason {
  readonly rule: AnyPlacementRule;
  readonly strength: Strength;
  readonly because: Reason;
  /** Those of the rule's sources that hold here; absent: all of them. */
  readonly cites?: readonly Source[];
  /** Why a clause of the rule doesn't ask here. */
  readonly unasked?: Unasked;
}

/** One rule's reason for placing nothing. */
export interface Withheld {
  readonly rule: AnyPlacementRule;
  readonly because: Reason;
  /** True where a fact that decides isn't known. */
  readonly open?: boolean;
  /** Those of the rule's sources that would hold here; absent: all of them. */
  readonly cites?: readonly Source[];
  /** True where the list takes away what a rule would place: that is told even of a quiet rule. */
  readonly waived?: boolean;
  /** True where no rule looks at such a port, and this one speaks for all. */
  readonly outside?: boolean;
}

/** Why a rule about runs can't tell where one may be missing. */
export const RUN_IN_DOUBT: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('run/in-doubt'),
  open: true,
};
