import type { RateReasons } from '../../../model/reasons/rate.js';
import type { Sayings } from '../sayings.js';

/** What rules ask of a part, and the steps' sources, in English. */
export const RATE: Sayings<RateReasons> = {};
