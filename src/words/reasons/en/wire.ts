import type { WireReasons } from '../../../model/reasons/wire.js';
import type { Sayings } from '../sayings.js';

/** How conductors and lights come about, in English. */
export const WIRE: Sayings<WireReasons> = {};
