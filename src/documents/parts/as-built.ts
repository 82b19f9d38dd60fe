import type { Plan } from '../../model/plan.js';
import type { Wire } from '../../model/wire.js';
import type { SystemState } from '../../model/words.js';
import type { Changed, Lacked, SeenLook } from '../../words/languages/as-built-words.js';

/** How far the work of a job is; in the words of margins. */
export type Made = 'planned' | 'open' | 'built' | 'deviating';

/** A figure or word of a plan or record, as data. */
export type BuiltValue =
  | { readonly is: 'text'; readonly text: string }
  /** m and V and A; `limit` and `most`: what isn't to be exceeded. Of a reach null is the whole run, else not known. */
  | {
      readonly is: 'lead' | 'limit' | 'reach' | 'volts' | 'level' | 'most' | 'amperes';
      readonly value: number | null;
    }
  | { readonly is: 'band'; readonly low: number | null; readonly high: number | null }
  | { readonly is: 'look'; readonly look: SeenLook }
  | { readonly is: 'outcome'; readonly outcome: Outcome }
  | { readonly is: 'nothing' };

export type Outcome = 'fitted' | 'moved' | 'notFitted' | 'kept' | 'replaced' | 'removed';

/** What is otherwise than it was planned. */
export interface Change {
  /** `` of the whole job. */
  readonly tag: string;
  readonly what: Changed;
  /** Which light by its channel, which assumption by its number; `` where `what` says it. */
  readonly of: string;
  /** Of volts: between what they were found; null: of something else. */
  readonly at: Pick<BuiltVolts, 'wire' | 'to'> | null;
  readonly planned: BuiltValue;
  readonly found: BuiltValue;
  /** What it was held against, of a rating or level. */
  readonly against: BuiltValue;
  readonly result: 'holds' | 'fails' | 'unknown' | 'none';
  readonly accepted: {
    readonly by: string;
    readonly date: string;
    readonly reason: string;
    readonly paper: string;
  } | null;
}

/** What was recorded of one housing, the latest entry of each fact. */
export interface BuiltHousing {
  readonly tag: string;
  readonly outcome: Outcome | null;
  /** Each with its date code; empty: none recorded. */
  readonly serials: readonly { readonly serial: string; readonly dateCode: string }[];
  /** m, line and ground lead together; null: not recorded. */
  readonly lead: number | null;
  /** `` not recorded; so the texts below. */
  readonly gauge: string;
  readonly device: string;
  /** Of the overcurrent device in its panel. */
  readonly position: string;
  readonly torque: string;
  readonly instrument: string;
  readonly groundPoint: string;
  readonly name: string;
  readonly licence: string;
  readonly date: string;
  readonly change: string;
  /** Serial of what hung there before; `` nothing did. */
  readonly replaced: string;
  /** The day on which what hangs there was fitted; `` not known. */
  readonly fittedOn: string;
  /** `YYYY-MM-DD`; `` none. */
  readonly nextCheck: string;
}

/** Volts that were found. */
export interface BuiltVolts {
  readonly tag: string;
  readonly wire: Pick<Wire, 'port' | 'name'>;
  /** Null: ground. */
  readonly to: Pick<Wire, 'port' | 'name'> | null;
  /** V. */
  readonly volts: number;
}

/** A light or flag that was seen. */
export interface BuiltLook {
  readonly tag: string;
  readonly channel: number;
  readonly state: SystemState;
  readonly look: SeenLook;
  /** False where the plan says that it looks otherwise. */
  readonly asPlanned: boolean;
}

/** What is to be looked at later. */
export interface BuiltDue {
  readonly tag: string;
  /** Null: the regular look at the whole housing. */
  readonly reading: { readonly kind: 'volts' | 'light' | 'flag'; readonly state: SystemState | '' } | null;
  /** `YYYY-MM-DD`; `` as soon as it can be seen. */
  readonly on: string;
}

/** What documents show of a job's record. */
export interface AsBuilt {
  readonly made: Made;
  /** How many deviations somebody accepted. */
  readonly deviations: number;
  /** What is missing, and what contradicts something, by tag; `` the whole job. */
  readonly open: readonly {
    readonly tag: string;
    readonly severity: 'missing' | 'conflict';
    readonly what: Lacked;
  }[];
  readonly changes: readonly Change[];
  readonly housings: ReadonlyMap<string, BuiltHousing>;
  readonly volts: readonly BuiltVolts[];
  readonly looks: readonly BuiltLook[];
  readonly due: readonly BuiltDue[];
  /** The plan with what is there in its place: parts, places, leads, serials, lights as they were seen. */
  readonly plan: Plan;
}
