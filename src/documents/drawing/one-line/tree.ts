import type { Plan, PlannedEquipment, PlannedProtector } from '../../../model/plan.js';

/** One set of terminals. */
export interface End {
  readonly equipment: string;
  /** `` of a switch that a run passes through. */
  readonly port: string;
}

/** Protectors that hang on a line at one place: of one placement, or alike at alike places. */
export interface Tap {
  readonly protectors: readonly PlannedProtector[];
  /** Housings at one place; more protectors than that are those of alike places. */
  readonly housings: number;
  /** True where the housing is drawn in full on another line, which it guards as well. */
  readonly again: boolean;
}

/** A line that leaves an equipment. */
export interface Branch {
  /** Terminals where it leaves; several where it stands for several alike. */
  readonly near: readonly End[];
  /** Terminals where it ends; none: it ends open. */
  readonly far: readonly End[];
  /** True where what flows in it as a rule comes from its far end. */
  readonly isUpstream: boolean;
  /** m, one for each line that it stands for, or one for all; null: not stated. */
  readonly lengths: readonly (number | null)[];
  /** Where the length is that of a run through other equipment: where that run begins. */
  readonly lengthFrom: string | null;
  /** True where it leaves through the main disconnect of a service, ahead of its other protectors. */
  readonly hasMain: boolean;
  readonly nearTaps: readonly Tap[];
  readonly farTaps: readonly Tap[];
  /** What stands at its end; null: it goes on elsewhere, at `far`, or ends open. */
  readonly child: TreeNode | null;
  /** For how many alike branches it stands. */
  readonly count: number;
}

/** A line that is only drawn: it leaves no terminals, and nothing hangs on it. */
export const BARE_BRANCH = {
  near: [],
  far: [],
  isUpstream: false,
  lengths: [null],
  lengthFrom: null,
  hasMain: false,
  nearTaps: [],
  farTaps: [],
  count: 1,
} as const satisfies Omit<Branch, 'child'>;

/** What a node is drawn as. */
export type NodeForm = 'box' | 'bus' | 'utility' | 'from';

/** An equipment with the lines that leave it, away from what it was reached from. */
export interface TreeNode {
  readonly form: NodeForm;
  /** One, or several alike; none of a bus. */
  readonly equipments: readonly PlannedEquipment[];
  readonly branches: readonly Branch[];
  /** Of an equipment whose lines don't go onto one sheet: which part of it this is. */
  readonly part: 'whole' | 'first' | 'later';
}

/** A run, or a part of one, between two sets of terminals. */
export interface Edge {
  readonly from: End;
  readonly to: End;
  readonly length: number | null;
  readonly lengthFrom: string | null;
}

/** A site as trees: what each begins with stands first. */
export type SiteTrees = readonly TreeNode[];

/** A plan's equipment and protectors by what is asked for. */
export interface SiteParts {
  readonly plan: Plan;
  readonly equipmentOf: ReadonlyMap<string, PlannedEquipment>;
  readonly edgesOf: ReadonlyMap<string, readonly Edge[]>;
}
