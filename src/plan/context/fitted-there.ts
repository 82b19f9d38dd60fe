import type { Fact } from '../../model/fact.js';

/** What hangs at a place, where that is otherwise than it would be planned. */
export interface Fitted {
  /** Name of the part; undefined: as planned. */
  readonly part?: string | undefined;
  /** m, line and ground lead together, as the record of the work states it; undefined: as planned. */
  readonly lead?: Fact<number> | undefined;
  /** Undefined: as the equipment. */
  readonly outdoors?: boolean | undefined;
}

/** What hangs at a port; undefined: what is planned. */
export type FittedAt = (equipment: string, port: string) => Fitted | undefined;
