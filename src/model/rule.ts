import type { Part } from './catalogue.js';
import type { Source, SourcesByBasis } from './fact.js';
import type { PlacedNote } from './open-item.js';
import type { Reason } from './reason.js';
import type { Working } from './step.js';
import type { Basis } from './editions.js';
import type { Kind, PortClass, Strength } from './words.js';

/** Facts of `T` that a rule declares: by its type it can read nothing else, and its tests throw where it does. */
export type Given<T, K extends readonly (keyof T)[]> = Pick<T, K[number]>;

/** What every rule says about itself; the rulebook is made of it. */
export interface RuleCard {
  /** Permanent; equals the path of its file under src/rules. */
  readonly id: string;
  readonly title: string;
  /** One sentence that an owner could read. */
  readonly why: string;
  readonly sources: SourcesByBasis;
  /** What it reads of a part of the catalogue; absent: nothing. */
  readonly ofPart?: readonly (keyof Part)[];
}

/** What the rulebook prints of a rule; a placement rule has its strengths and the ports that it looks at. */
export interface PrintedRule extends RuleCard {
  readonly facts: readonly string[];
  readonly strength?: { readonly [B in Basis]: readonly Strength[] | null };
  readonly looksAt?: { readonly kinds: readonly string[]; readonly ports: readonly string[] };
}

/** One run at a port, as a rule sees it. */
export interface RunFacts {
  /** Tag of the row whose `run_length` is asked for where it is missing; `` where every length is stated. */
  readonly unknownRow: string;
  /** True where nobody may ask for the missing length (unreadable already, or its row holds nothing worth protecting). */
  readonly lengthNotAsked: boolean;
  readonly otherTag: string;
  readonly otherKind: Kind;
  /** m; undefined: not stated. */
  readonly length: number | undefined;
  readonly outdoors: boolean;
  readonly outdoorsByDefault: boolean;
  readonly betweenBuildings: boolean;
  readonly betweenByDefault: boolean;
  readonly placesDiffer: boolean;
  /** Tags whose place would say whether it leads to another building; empty: that is known. */
  readonly unplaced: readonly string[];
  /** Tags whose place would say whether it leaves its place; empty: that is known. */
  readonly placeless: readonly string[];
  readonly carries: 'ac' | 'dc' | 'battery' | 'control';
  /** True where this port is the upstream end. */
  readonly upstream: boolean;
  /** True where an array feeds this DC run, by itself or through combiners. */
  readonly fromArray: boolean;
  /** m; summed length of the runs of all arrays on the converter of this run; undefined: not known. */
  readonly arraysLength: number | undefined;
}

/** Clauses of a rule that don't ask where its common practice does. */
export interface Unasked {
  readonly because: Reason;
  readonly cites: readonly Source[];
}

/** A decision of a placement rule about one port. */
export type PlacementDecision =
  | {
      readonly outcome: 'placed';
      readonly strength: Strength;
      readonly because: Reason;
      readonly notes?: readonly PlacedNote[];
      /** Those of the rule's sources that hold here; absent: all of them. */
      readonly cites?: readonly Source[];
      /** Why a clause of the rule doesn't ask here, so that the job's standing to it is that it doesn't apply. */
      readonly unasked?: Unasked;
    }
  | {
      readonly outcome: 'not-placed';
      readonly because: Reason;
      /** True where a fact that decides isn't known: nothing is placed, and it isn't said that nothing is needed. */
      readonly open?: boolean;
      readonly notes?: readonly PlacedNote[];
      /** Those of the rule's sources that would hold here; absent: all of them. */
      readonly cites?: readonly Source[];
    }
  /** The list takes away what isn't required at this port. */
  | { readonly outcome: 'waived'; readonly because: Reason; readonly notes?: readonly PlacedNote[] };

/** A rule that looks at one port and decides whether protection goes there. */
export interface PlacementRule<F> extends RuleCard {
  /** True where its "no" says nothing of its own beside another rule's, unless the list waives. */
  readonly quiet?: true;
  /** True where it follows the list: it is met where nothing stands because the list says so. */
  readonly waives?: true;
  /** Strengths that it can have under each basis; null: the rule doesn't belong to that basis. */
  readonly strength: { readonly [B in Basis]: readonly Strength[] | null };
  /** The ports that it looks at: kinds of equipment and classes of port. */
  readonly looksAt: { readonly kinds: readonly Kind[]; readonly ports: readonly PortClass[] };
  readonly facts: readonly (keyof F)[];
  decide(facts: F): PlacementDecision;
}

/** A figure that a place asks of a part, with its working. */
export type RatingDecision =
  | {
      readonly outcome: 'asks';
      readonly value: number;
      readonly working: Working;
      readonly notes: readonly PlacedNote[];
      /** What has to be said only where this figure is the one that decides. */
      readonly whereItDecides?: readonly PlacedNote[];
      /** V; what the withstand table is entered with, where that is less than the value. */
      readonly withstandEntry?: number;
      /** True where the figure is an assumption. */
      readonly assumed?: boolean;
      /** Why the figure bounds what isn't known; a draft stands on it until that is stated. */
      readonly bound?: Reason;
      /** Those of the rule's sources that hold here; absent: all of them. */
      readonly cites?: readonly Source[];
    }
  | {
      readonly outcome: 'unknown';
      readonly because: Reason;
      readonly notes: readonly PlacedNote[];
      /** The part of the figure that is known: the least that a part must bear. */
      readonly atLeast?: Working;
    }
  | { readonly outcome: 'outside'; readonly because: Reason };

/** A rule that says what a place asks of a part; `A`: the ids of the rules about parts. */
export interface RatingRule<F, A extends string> extends RuleCard {
  /** The rule about parts that answers it: it's met as that one is. */
  readonly answers: A;
  readonly facts: readonly (keyof F)[];
  decide(facts: F): RatingDecision;
}

/** Whether a part meets one requirement. */
export type Fit =
  | { readonly fits: true; readonly shortfall?: Reason }
  /** `gap`: how far it misses, as a share; 1 where it can't be measured. */
  | { readonly fits: false; readonly because: Reason; readonly gap: number };

/** A rule that holds one part against what the place asks; `P`: what it may know of the place without a part, `I`: its id. */
export interface FitRule<F extends P, P, D extends F, I extends string = string> extends RuleCard {
  readonly id: I;
  readonly facts: readonly (keyof F)[];
  /** Why it asks nothing at such a place; undefined: it asks. A rule without it asks everywhere. */
  outside?(place: P): Reason | undefined;
  /** Called only where it asks. */
  accepts(facts: F): Fit;
  /** What of it can't be called met although the part is accepted, as nobody states it; undefined: nothing. */
  doubt?(facts: D): Reason | undefined;
}
