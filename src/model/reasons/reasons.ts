import type { PlaceReasons } from './place.js';
import type { PlaceSupplyReasons } from './place-supply.js';
import type { RateReasons } from './rate.js';
import type { ChooseReasons } from './choose.js';
import type { OvercurrentReasons } from './overcurrent.js';
import type { WireReasons } from './wire.js';
import type { MakeReasons } from './make.js';
import type { MeasureReasons } from './measure.js';
import type { IsolateReasons } from './isolate.js';
import type { DefaultReasons } from './defaults.js';
import type { StandingReasons } from './standing.js';

/** Every reason by its permanent code, with what its sentence is made of. */
export interface Reasons
  extends
    PlaceReasons,
    PlaceSupplyReasons,
    RateReasons,
    ChooseReasons,
    WireReasons,
    OvercurrentReasons,
    MakeReasons,
    MeasureReasons,
    IsolateReasons,
    DefaultReasons,
    StandingReasons {
  /** A sentence of a plan that an earlier shuntbook wrote. */
  'earlier/as-written': { readonly text: string };
}
