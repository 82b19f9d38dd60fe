import type { AcSteps } from './ac.js';
import type { DcSteps } from './dc.js';
import type { ExposureSteps } from './exposure.js';
import type { OvercurrentSteps } from './overcurrent.js';
import type { ReachSteps } from './reach.js';

/** Every step of a calculation by its permanent code, with what its words are made of. */
export interface Steps extends AcSteps, DcSteps, ExposureSteps, ReachSteps, OvercurrentSteps {
  /** A step of a plan that an earlier shuntbook wrote. */
  'earlier/as-written': { readonly says: string; readonly formula: string; readonly substituted: string };
}
