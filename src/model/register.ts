import type { RecordState } from './record.js';
import type { SystemState } from './words.js';

/** A protector that hangs, or hung, somewhere: one serial of one housing. The register is made of records and never the only place of a fact. */
export interface RegisterLine {
  /** `none`: the part has none; `` not recorded. */
  readonly serial: string;
  readonly dateCode: string;
  readonly part: string;
  readonly maker: string;
  readonly job: string;
  readonly jobName: string;
  readonly address: string;
  readonly place: string;
  /** Its tag in the plan. */
  readonly protector: string;
  readonly equipments: readonly string[];
  readonly ports: readonly string[];
  readonly conductors: readonly string[];
  /** `YYYY-MM-DD`; `` not recorded. */
  readonly dateFitted: string;
  readonly by: string;
  /** m, as fitted; null: not recorded. */
  readonly leadLength: number | null;
  /** V; voltage protection level with that lead; null: not known. */
  readonly level: number | null;
  /** Each light as it was seen on the first day. */
  readonly firstLook: readonly SeenLight[];
  /** `YYYY-MM-DD`; ``: none is due, as of what was replaced or removed. */
  readonly nextCheck: string;
  /** Serials of what hangs there instead; none: it hangs still, or nothing took its place. */
  readonly replacedBy: readonly string[];
  /** `YYYY-MM-DD` of its replacement or removal; ``: it hangs still. */
  readonly replacedOn: string;
  readonly reason: string;
  /** Names of photos. */
  readonly photos: readonly string[];
}

/** A light or flag as it was seen. */
export interface SeenLight {
  readonly conductor: string;
  readonly state: string;
  readonly found: string;
}

/** Something to look at on a day: a reading that couldn't be taken when the protector was fitted, or the next regular look. */
export interface DueCheck {
  /** `YYYY-MM-DD`. */
  readonly due: string;
  readonly job: string;
  readonly jobName: string;
  readonly address: string;
  readonly place: string;
  readonly protector: string;
  readonly part: string;
  readonly serials: readonly string[];
  readonly what: 'reading' | 'look';
  /** Of a reading; `` of a look. */
  readonly kind: 'volts' | 'light' | 'flag' | '';
  readonly state: SystemState | '';
  readonly conductors: readonly string[];
  /** What is expected of each conductor; one where it is the same of all. */
  readonly expected: readonly string[];
}

/** What the register holds of one job. */
export interface RegisteredJob {
  readonly job: string;
  readonly folder: string;
  readonly state: RecordState;
  /** Protectors that hang there. */
  readonly hanging: number;
  /** What hung there once, with what took its place. */
  readonly replaced: readonly RegisterLine[];
  readonly checks: readonly DueCheck[];
}
