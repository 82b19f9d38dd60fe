import type { SiteEquipment } from '../../model/site.js';

/** What a part of a site has that is on or off while something in it is measured. */
export interface PartAround {
  /** What loads turbines there, with their tags. */
  readonly loading: ReadonlyMap<SiteEquipment, readonly string[]>;
  /** The other converters. */
  readonly others: readonly SiteEquipment[];
  /** Tags of diversion loads, where a turbine turns. */
  readonly diversions: readonly string[];
}
