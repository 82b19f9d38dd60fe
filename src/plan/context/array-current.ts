import type { SiteEquipment } from '../../model/site.js';
import type { Step } from '../../model/step.js';

/** What all that arrays and converters can send through a port comes to. */
export interface ArrayCurrent {
  /** A. */
  readonly value: number;
  readonly steps: readonly Step[];
  /** Grid-tie inverters whose `backfeed_a` is blank and taken as none. */
  readonly assumed: readonly SiteEquipment[];
}

/** Sums over the arrays of one DC circuit. */
export interface ArraySums {
  /** A at standard test conditions: Isc x strings. */
  readonly current: number;
  /** Arrays that don't state it. */
  readonly unknown: ReadonlySet<SiteEquipment>;
}
