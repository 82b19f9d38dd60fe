import type { Member } from './equipment.js';

/** One connection of a member: what it names. */
export interface Target {
  readonly member: Member;
  /** DC inputs that are named; empty: none named. */
  readonly inputs: readonly number[];
  /** m; of the cable of this connection; undefined: not stated. */
  readonly length: number | undefined;
}
