import type { PlannedProtector } from '../../model/plan.js';
import type { PortDevice } from './overcurrent.js';
import type { Selected } from '../choose/select.js';

/** A protector of the plan, with what it was made from. */
export interface Made {
  readonly protector: PlannedProtector;
  readonly from: Selected;
  /** The overcurrent device at each port that it serves. */
  readonly devices: readonly PortDevice[];
  /** Rules about wires and lights on which its channels rest. */
  readonly channelRules: ReadonlySet<string>;
}
